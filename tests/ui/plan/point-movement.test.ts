import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildPlan } from '#engine/plan/build-plan.ts';
import { cornerDistances } from '#engine/plan/corners.ts';
import { planPoint } from '#engine/plan/plane.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { panned, wholeWindow, zoomed } from '../../../ui/elements/plan/plan-window.ts';
import { movedAlong, placeInWords } from '../../../ui/elements/plan/point-movement.ts';

const job = demoJob('saltglass-row');
const plan = buildPlan(job);
const placed = job.points.flatMap(({ place }) => (place !== undefined && 'wall' in place ? [place] : []));

const leftOf = (place: (typeof placed)[number]): number | null =>
  cornerDistances(plan, { wallId: place.wall, side: place.side, alongMm: place.alongMm }).leftMm;

describe('a point moved along its wall', () => {
  it('goes to the right as seen from the room, and back', () => {
    fc.assert(
      fc.property(fc.constantFrom(...placed), fc.integer({ min: 10, max: 400 }), (place, byMm) => {
        const moved = movedAlong(plan, place, byMm);
        expect('wall' in moved && moved.wall === place.wall && moved.side === place.side).toBe(true);
        if (!('wall' in moved)) return;
        const [before, after] = [leftOf(place), leftOf(moved)];
        if (before === null || after === null) return;
        expect(after).toBeGreaterThanOrEqual(before - 1);
        expect(moved.heightMm).toBe(place.heightMm);
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

  it('is told from its corners and its height', () => {
    const [place] = placed;
    if (place === undefined) throw new Error('the demo job has no placed point');
    expect(placeInWords(plan, place)).toContain(`${place.heightMm} mm above floor`);
  });
});

describe('the window on the plan', () => {
  const extent = [planPoint(0, 0), planPoint(4000, 10_000)] as const;

  it('shows the whole house and no more than it must', () => {
    const { scale, middle } = wholeWindow(extent, 800, 600);
    expect(middle).toEqual([2000, 5000]);
    const mmPerPx = scale / 5;
    expect(10_000 / mmPerPx).toBeLessThanOrEqual(600);
    expect(10_000 / mmPerPx).toBeGreaterThan(450);
  });

  it('keeps the place under the hand where it is while zooming, and comes back', () => {
    const coordinate = fc.integer({ min: -5000, max: 15_000 });
    fc.assert(
      fc.property(coordinate, coordinate, fc.double({ min: 0.5, max: 2, noNaN: true }), (x, y, factor) => {
        const start = wholeWindow(extent, 800, 600);
        const about = planPoint(x, y);
        const near = zoomed(start, factor, about);
        const offPx = (window: typeof start): number => ((about[0] - window.middle[0]) / window.scale) * 5;
        expect(offPx(near)).toBeCloseTo(offPx(start), 6);
        const back = zoomed(near, 1 / factor, about);
        expect(back.middle[0]).toBeCloseTo(start.middle[0], 6);
      }),
    );
  });

  it('follows the hand when it is pulled', () => {
    const start = wholeWindow(extent, 800, 600);
    const moved = panned(start, 10, 20);
    expect(moved.middle[0]).toBeLessThan(start.middle[0]);
    expect(moved.middle[1]).toBeGreaterThan(start.middle[1]);
  });
});
