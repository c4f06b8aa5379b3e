import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { alongWallMm, offWallMm, placeByWall } from '#engine/plan/along-wall.ts';
import { BREAST_DEPTH_MM, breastsOf } from '#engine/plan/breast.ts';
import type { PlanWall } from '#engine/plan/plan.ts';
import { pointOnFace } from '#engine/plan/position-of-place.ts';
import type { Opening } from '#model/building.ts';
import { planOf, storey, wall } from './small-house.ts';

function planWall(from: [number, number], to: [number, number], openings: Opening[] = []): PlanWall {
  const plan = planOf([storey('gf', { walls: [wall('w', from, to, { thicknessMm: 200, openings })] })]);
  const found = plan.wallById.get('w');
  if (found === undefined) throw new Error('no wall');
  return found;
}

describe('a place by a wall', () => {
  it('is told by how far along and how far off the centre line, to the left more than nought', () => {
    const north = planWall([1000, 0], [1000, 4000]);
    expect(alongWallMm(north, [700, 2500])).toBe(2500);
    expect(offWallMm(north, [700, 2500])).toBe(300);
    expect(offWallMm(north, [1300, 2500])).toBe(-300);
    expect(alongWallMm(north, [1000, -50])).toBe(-50);
  });

  it('comes back from its two distances, by any wall; faces are half the thickness off', () => {
    const mm = fc.integer({ min: -5000, max: 5000 });
    fc.assert(
      fc.property(mm, mm, mm, mm, mm, mm, (x1, y1, x2, y2, x, y) => {
        fc.pre(Math.hypot(x2 - x1, y2 - y1) > 10);
        const any = planWall([x1, y1], [x2, y2]);
        const place = placeByWall(any, alongWallMm(any, [x, y]), offWallMm(any, [x, y]));
        expect(Math.hypot(place[0] - x, place[1] - y)).toBeLessThan(1e-6);
        for (const side of ['left', 'right'] as const) {
          const onFace = pointOnFace(any, side, 700);
          expect(alongWallMm(any, onFace)).toBeCloseTo(700, 6);
          expect(offWallMm(any, onFace)).toBeCloseTo(side === 'left' ? 100 : -100, 6);
        }
      }),
    );
  });
});

describe('a chimney breast', () => {
  const breast = (side?: 'left' | 'right'): Opening => ({
    id: 'b',
    kind: 'breast',
    alongMm: 1000,
    widthMm: 1500,
    sillMm: 0,
    headMm: 2400,
    ...(side === undefined ? {} : { side }),
  });

  it('stands out from its face; on both where nobody recorded the side', () => {
    const bands = (side?: 'left' | 'right') => breastsOf(planWall([0, 0], [5000, 0], [breast(side)]));
    expect(bands('left')).toEqual([{ along: [1000, 2500], off: [100, 100 + BREAST_DEPTH_MM] }]);
    expect(bands('right')).toEqual([{ along: [1000, 2500], off: [-100 - BREAST_DEPTH_MM, -100] }]);
    expect(bands()).toEqual([...bands('left'), ...bands('right')]);
    expect(breastsOf(planWall([0, 0], [5000, 0], [{ ...breast(), kind: 'door' }]))).toEqual([]);
  });
});
