import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildPlan } from '#engine/plan/build-plan.ts';
import { cornerDistances } from '#engine/plan/corners.ts';
import { planPoint } from '#engine/plan/plane.ts';
import { positionOfPlace } from '#engine/plan/position-of-place.ts';
import type { Place } from '#model/installation.ts';
import { demoEstimate, demoJob, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import {
  movedAlong,
  movedByKey,
  placeAt,
  placeInWords,
  placeName,
} from '../../../ui/elements/plan/point-movement.ts';

const job = demoJob('saltglass-row');
const plan = buildPlan(job);
const placed = job.points.flatMap(({ place }) => (place !== undefined && 'wall' in place ? [place] : []));
const anyPlace = fc.constantFrom(...placed);

const leftOf = (place: (typeof placed)[number]): number | null =>
  cornerDistances(plan, { wallId: place.wall, side: place.side, alongMm: place.alongMm }).leftMm;

function at(place: Place): readonly [number, number] {
  const position = positionOfPlace(plan, place);
  if (position === null) throw new Error('a place that is not on the plan');
  return position.at;
}

describe('a point moved along its wall', () => {
  it('goes to the right as seen from the room, and keeps its height', () => {
    fc.assert(
      fc.property(anyPlace, fc.integer({ min: 10, max: 400 }), (place, byMm) => {
        const moved = movedAlong(plan, place, byMm);
        expect(moved).toMatchObject({ wall: place.wall, side: place.side, heightMm: place.heightMm });
        if (!('wall' in moved)) return;
        const [before, after] = [leftOf(place), leftOf(moved)];
        if (before === null || after === null) return;
        // Past a chimney breast the next corner counts.
        const isPast = cornerDistances(plan, {
          wallId: moved.wall,
          side: moved.side,
          alongMm: moved.alongMm,
        }).rightMm;
        if (isPast !== null && after < before) expect(after).toBeLessThanOrEqual(400);
        else expect(after).toBeGreaterThanOrEqual(before - 1);
      }),
    );
  });

  it('stops at the corners', () => {
    for (const place of placed) {
      const [low, high] = [movedAlong(plan, place, -1e6), movedAlong(plan, place, 1e6)];
      expect(movedAlong(plan, low, -50)).toEqual(low);
      expect(movedAlong(plan, high, 50)).toEqual(high);
    }
  });
});

describe('a point moved by keys', () => {
  it('goes on screen the way that the arrow points, along its wall', () => {
    const arrows = fc.constantFrom(
      { key: 'ArrowLeft', x: -1, y: 0 },
      { key: 'ArrowRight', x: 1, y: 0 },
      { key: 'ArrowUp', x: 0, y: 1 },
      { key: 'ArrowDown', x: 0, y: -1 },
    );
    fc.assert(
      fc.property(anyPlace, arrows, fc.boolean(), (place, { key, x, y }, isFine) => {
        const moved = movedByKey(plan, place, key, isFine);
        if (moved === null) throw new Error('arrows move');
        const [from, to] = [at(place), at(moved)];
        const direction = plan.wallById.get(place.wall)?.direction ?? [0, 0];
        if (Math.abs(direction[0] * x + direction[1] * y) < 0.3) return;
        expect((to[0] - from[0]) * x + (to[1] - from[1]) * y).toBeGreaterThanOrEqual(-1e-6);
      }),
    );
  });

  it('goes 50 mm, and 10 mm with Shift, where nothing is in the way', () => {
    const place: Place = { wall: 'gf-left-02', side: 'left', alongMm: 1500, heightMm: 450 };
    const step = (isFine: boolean): number => {
      const moved = movedByKey(plan, place, 'ArrowUp', isFine);
      return moved === null ? Number.NaN : at(moved)[1] - at(place)[1];
    };
    expect(step(false)).toBe(50);
    expect(step(true)).toBe(10);
  });

  it('comes to the corner on the left hand with Home, on the right hand with End', () => {
    const place: Place = { wall: 'gf-left-02', side: 'left', alongMm: 1500, heightMm: 450 };
    const distances = (key: string) => {
      const moved = movedByKey(plan, place, key, false);
      if (moved === null || !('wall' in moved)) throw new Error('the point left its wall');
      return cornerDistances(plan, { wallId: moved.wall, side: moved.side, alongMm: moved.alongMm });
    };
    expect(distances('Home').leftMm).toBe(75);
    expect(distances('End').rightMm).toBe(75);
  });

  it('goes on to other walls with brackets, and back', () => {
    const place: Place = { wall: 'gf-left-02', side: 'left', alongMm: 1500, heightMm: 450 };
    const there = movedByKey(plan, place, ']', false);
    expect(there).not.toMatchObject({ wall: 'gf-left-02' });
    expect(there && movedByKey(plan, there, '[', false)).toMatchObject({ wall: 'gf-left-02', side: 'left' });
  });

  it('does not answer to other keys', () => {
    for (const key of ['a', 'Enter', 'Tab', 'PageDown'])
      expect(
        movedByKey(plan, { wall: 'gf-left-02', side: 'left', alongMm: 1500, heightMm: 450 }, key, false),
      ).toBeNull();
  });

  it('moves a free place over the plan', () => {
    const free: Place = { storey: 'ground-flr', at: [100, 200], heightMm: 450 };
    expect(movedByKey(plan, free, 'ArrowUp', false)).toEqual({ ...free, at: [100, 250] });
    expect(movedByKey(plan, free, ']', false)).toBeNull();
  });
});

describe('a place in words', () => {
  it('is told from its corners and its height', () => {
    const place: Place = { wall: 'gf-left-02', side: 'left', alongMm: 1575, heightMm: 450 };
    // The wall goes down the plan from y 7150; the room's corners are at y 3800, on the left hand, and at y 7000.
    expect(placeInWords(plan, place)).toBe(
      '1775 mm from the left corner, 1425 mm from the right corner, 450 mm above floor',
    );
  });

  it('names the point and the room that it looks into', () => {
    const { worked } = schemeOf(demoEstimate('saltglass-row'), 'spurs-rcbo');
    const place: Place = { wall: 'gf-left-02', side: 'left', alongMm: 1575, heightMm: 450 };
    expect(placeName(worked, place, 'w1-living1')).toBe('W1, Dining room');
    expect(placeName(worked, place, null)).toBe('New point, Dining room');
  });

  it('is a free place where the storey has no walls', () => {
    expect(placeAt(plan, 'no-such-storey', planPoint(12.4, 30.6), 300)).toEqual({
      storey: 'no-such-storey',
      at: [12, 31],
      heightMm: 300,
    });
  });
});
