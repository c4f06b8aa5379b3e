import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cornerDistances } from '#engine/plan/corners.ts';
import { door, fourWalls, movedStoreys, planOf, storey, wall } from './small-house.ts';

const box = storey('gf', { walls: fourWalls(4000, 3000).walls });

describe('cornerDistances', () => {
  it('measures to the near faces of the walls at both ends, left and right as seen from the room', () => {
    // The south wall's left face looks north into the room; who faces it has east on the left hand.
    const spot = { wallId: 's', side: 'left', alongMm: 1050 } as const;
    expect(cornerDistances(planOf([box]), spot)).toEqual({ leftMm: 3000, rightMm: 1000 });
  });

  it('has no inside corner on the outside of a box', () => {
    const spot = { wallId: 's', side: 'right', alongMm: 1050 } as const;
    expect(cornerDistances(planOf([box]), spot)).toEqual({ leftMm: null, rightMm: null });
  });

  it('swaps left and right in a mirror', () => {
    const places = fc.integer({ min: 60, max: 4040 });
    fc.assert(
      fc.property(places, (alongMm) => {
        const seen = cornerDistances(planOf([box]), { wallId: 's', side: 'left', alongMm });
        const mirrored = planOf(movedStoreys([box], { mirror: true, byMm: [321, -77] }));
        const there = cornerDistances(mirrored, { wallId: 's', side: 'right', alongMm });
        expect(there.leftMm).toBeCloseTo(seen.rightMm ?? -1, 6);
        expect(there.rightMm).toBeCloseTo(seen.leftMm ?? -1, 6);
        expect((seen.leftMm ?? 0) + (seen.rightMm ?? 0)).toBeCloseTo(4000, 6);
      }),
    );
  });

  /** A wall along x in two pieces (the second drawn backwards), a partition going north where they meet. */
  const split = storey('gf', {
    walls: [
      wall('a', [0, 0], [2000, 0]),
      wall('b', [5000, 0], [2000, 0]),
      wall('part', [2000, 0], [2000, 3000]),
      wall('end', [5000, 0], [5000, -3000]),
    ],
  });

  it('stops at a partition on its own side and goes on past one on the other', () => {
    const plan = planOf([split]);
    expect(cornerDistances(plan, { wallId: 'a', side: 'left', alongMm: 500 })).toEqual({
      leftMm: 1450,
      rightMm: null,
    });
    expect(cornerDistances(plan, { wallId: 'a', side: 'right', alongMm: 500 })).toEqual({
      leftMm: null,
      rightMm: 4450,
    });
    // The south face of b, drawn backwards, is its left.
    expect(cornerDistances(plan, { wallId: 'b', side: 'left', alongMm: 1000 })).toEqual({
      leftMm: null,
      rightMm: 950,
    });
  });

  it('goes on past a partition of nothing', () => {
    const opened = {
      ...split,
      walls: split.walls.map((each) => (each.id === 'part' ? { ...each, core: 'open' as const } : each)),
    };
    expect(cornerDistances(planOf([opened]), { wallId: 'a', side: 'left', alongMm: 500 })).toEqual({
      leftMm: null,
      rightMm: null,
    });
  });

  it('takes a chimney breast on this side for a corner, and has none on the breast itself', () => {
    const breast = door('b', 2000, { kind: 'breast', widthMm: 1500, side: 'left' });
    const walls = box.walls.map((each) => (each.id === 's' ? { ...each, openings: [breast] } : each));
    const plan = planOf([{ ...box, walls }]);
    expect(cornerDistances(plan, { wallId: 's', side: 'left', alongMm: 1050 })).toEqual({
      leftMm: 950,
      rightMm: 1000,
    });
    expect(cornerDistances(plan, { wallId: 's', side: 'left', alongMm: 2500 })).toEqual({
      leftMm: null,
      rightMm: null,
    });
  });

  it('measures to the face of a wall that leans in', () => {
    const leaning = storey('gf', {
      walls: [wall('a', [0, 0], [2000, 0]), wall('lean', [2000, 0], [1000, 1000])],
    });
    // Half thicknesses of 50: the near face passes 50√2 before the junction on the centre line, 50 more on the face.
    const { leftMm } = cornerDistances(planOf([leaning]), { wallId: 'a', side: 'left', alongMm: 500 });
    expect(leftMm).toBeCloseTo(1500 - 50 * Math.SQRT2 - 50, 6);
  });

  it('knows no corners of a wall that is not there', () => {
    expect(cornerDistances(planOf([]), { wallId: 'x', side: 'left', alongMm: 0 })).toEqual({
      leftMm: null,
      rightMm: null,
    });
  });
});
