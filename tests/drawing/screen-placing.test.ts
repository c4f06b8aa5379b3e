import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { overlapMm2 } from '#drawing/label-placer.ts';
import { ghostShapes, letteringRoom, movingLabel, placeDimensions } from '#drawing/plan/screen-placing.ts';
import type { Shape } from '#drawing/scene.ts';
import { buildPlan } from '#engine/plan/build-plan.ts';
import { nearestFace } from '#engine/plan/nearest-face.ts';
import { planPoint } from '#engine/plan/plane.ts';
import { sheetPoint } from '#engine/plan/sheet-frame.ts';
import type { Place } from '#model/installation.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';

const plan = buildPlan(demoJob('saltglass-row'));
const twin = { symbol: 'socket-twin', state: 'new' } as const;
const frameAt = (scale: number) => ({ scale, origin: planPoint(0, 0), at: sheetPoint(14, 200) });

/** A place on a wall of the ground floor, wherever the hand is. */
const anyPlace = fc
  .tuple(fc.integer({ min: 100, max: 4100 }), fc.integer({ min: 100, max: 10_000 }))
  .map(([x, y]): Place => {
    const spot = nearestFace(plan, 'ground-flr', planPoint(x, y), { heightMm: 450 });
    if (spot === null) throw new Error('no face found');
    return { wall: spot.wallId, side: spot.side, alongMm: spot.alongMm, heightMm: 450 };
  });

/** The dimension lines: the level or upright strokes between two corners that run along the wall. */
const figures = (shapes: readonly Shape[]): number[] =>
  shapes.flatMap((shape) => (shape.kind === 'text' ? [Number(shape.text)] : []));
const lengths = (shapes: readonly Shape[]): number[] =>
  shapes.flatMap((shape) => {
    const [a, b] = shape.kind === 'line' ? shape.points : [];
    return a === undefined || b === undefined ? [] : [Math.hypot(b[0] - a[0], b[1] - a[1])];
  });

describe('dimensions of a place', () => {
  it('are drawn as long as they say, at any scale', () => {
    fc.assert(
      fc.property(anyPlace, fc.integer({ min: 10, max: 200 }), (place, scale) => {
        const shapes = placeDimensions(frameAt(scale), plan, place);
        for (const mm of figures(shapes)) {
          const nearest = Math.min(...lengths(shapes).map((length) => Math.abs(length * scale - mm)));
          expect(nearest).toBeLessThanOrEqual(0.51);
        }
      }),
    );
  });

  it('add up to the room’s own width', () => {
    // Left wall of the kitchen, 2900 mm between its inside corners.
    const place: Place = { wall: 'gf-left-03', side: 'left', alongMm: 1200, heightMm: 450 };
    const [left = 0, right = 0, ...more] = figures(placeDimensions(frameAt(50), plan, place));
    expect(left + right).toBe(2900);
    expect(more).toEqual([]);
  });

  it('never write one figure over the other: the nearer corner’s stays', () => {
    fc.assert(
      fc.property(anyPlace, fc.integer({ min: 10, max: 400 }), (place, scale) => {
        const shapes = placeDimensions(frameAt(scale), plan, place);
        const [one, other] = letteringRoom(shapes);
        if (one !== undefined && other !== undefined) expect(overlapMm2(one, other)).toBe(0);
        const all = figures(placeDimensions(frameAt(5), plan, place));
        expect(figures(shapes)).toContain(Math.min(...all));
      }),
    );
  });

  it('are none for a place that is on no wall', () => {
    expect(placeDimensions(frameAt(50), plan, { storey: 'ground-flr', at: [0, 0], heightMm: 450 })).toEqual(
      [],
    );
    const lost: Place = { wall: 'no-such-wall', side: 'left', alongMm: 10, heightMm: 450 };
    expect(placeDimensions(frameAt(50), plan, lost)).toEqual([]);
    expect(ghostShapes(frameAt(50), plan, lost, twin)).toEqual([]);
  });
});

describe('the ghost of a new point', () => {
  it('stands with its foot on the wall and its body in the room', () => {
    // The kitchen lies to the right of its left wall: its face is at x = 0.
    const place: Place = { wall: 'gf-left-03', side: 'left', alongMm: 1200, heightMm: 450 };
    const xs = ghostShapes(frameAt(50), plan, place, twin).flatMap((shape) =>
      shape.kind === 'line' ? shape.points.map(([x]) => x) : shape.kind === 'arc' ? [shape.at[0]] : [],
    );
    expect(Math.min(...xs)).toBeCloseTo(14, 6);
    expect(Math.max(...xs)).toBeGreaterThan(16);
  });
});

describe('the label of a point that moves', () => {
  const labelAt = (place: Place) =>
    movingLabel(frameAt(50), plan, place, 'W1').filter((shape) => shape.kind === 'text');

  it('keeps clear of the figures of its dimensions, wherever the hand is', () => {
    fc.assert(
      fc.property(anyPlace, (place) => {
        const [label] = labelAt(place);
        if (label === undefined) throw new Error('no label drawn');
        for (const shape of placeDimensions(frameAt(50), plan, place))
          if (shape.kind === 'text')
            expect(Math.hypot(shape.at[0] - label.at[0], shape.at[1] - label.at[1])).toBeGreaterThan(3);
      }),
    );
  });

  it('is none for a place that is not on the plan', () => {
    expect(labelAt({ wall: 'no-such-wall', side: 'left', alongMm: 10, heightMm: 450 })).toEqual([]);
  });

  it('is there for a place that is on no wall', () => {
    expect(labelAt({ storey: 'ground-flr', at: [1000, 1000], heightMm: 450 })).toHaveLength(1);
  });
});
