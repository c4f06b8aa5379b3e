import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anticlockwise, closingSide, heading, sharedOut, walked } from '../../../ui/house/room-walk.ts';
import type { Vector } from '../../../ui/house/vector.ts';

const turning = (lengthsMm: readonly number[], turnDeg = 90) =>
  lengthsMm.map((lengthMm) => ({ lengthMm, turnDeg }));

describe('a room walked round', () => {
  it('comes back to its beginning where opposite walls are alike', () => {
    const { corners, missingMm, roundMm } = walked(turning([3600, 4200, 3600, 4200]));
    expect(corners.slice(0, 4)).toEqual([
      [0, 0],
      [3600, 0],
      [3600, 4200],
      [0, 4200],
    ]);
    expect([missingMm, roundMm]).toEqual([0, 15_600]);
  });

  it('misses it by what was measured too much or too little', () => {
    const { missing, missingMm } = walked(turning([3600, 4200, 3570, 4240]));
    expect(missing).toEqual([-30, 40]);
    expect(missingMm).toBe(50);
  });

  it('turns off at any angle, to either hand', () => {
    expect(heading(90)).toEqual([0, 1]);
    expect(heading(-90)).toEqual([0, -1]);
    expect(heading(45)[0]).toBeCloseTo(Math.SQRT1_2, 12);
    const bay = walked([
      { lengthMm: 1000, turnDeg: 45 },
      { lengthMm: 1000, turnDeg: -45 },
      { lengthMm: 1000, turnDeg: 90 },
    ]);
    expect(bay.corners.at(-1)?.map(Math.round)).toEqual([2707, 707]);
  });

  it('closes with one more side', () => {
    expect(closingSide(turning([3000, 4000]))?.lengthMm).toBe(5000);
    expect(closingSide(turning([3600, 4200, 3600, 4200]))).toBeNull();
    expect(closingSide(turning([3600]))).toBeNull();
  });

  // The transit rule of traverse surveying, as textbooks give it (from memory): the correction of a line's departure is the
  // closing error in departure × that departure ÷ the sum of all departures, signs left out; of its latitude alike.
  it('shares the closing error out by the transit rule', () => {
    const lengths = [3600, 4200, 3570, 4240];
    const corners = sharedOut(turning(lengths));
    const [dx, dy] = [-30, 40];
    const alongX = 3600 + 3570;
    const alongY = 4200 + 4240;
    expect(corners[1]?.[0]).toBeCloseTo(3600 + (dx * 3600) / alongX, 9);
    expect(corners[2]?.[1]).toBeCloseTo(4200 + (dy * 4200) / alongY, 9);
    expect(corners[3]?.[0]).toBeCloseTo(0, 9);
    expect(corners[2]?.[0]).toBeCloseTo(corners[1]?.[0] ?? 0, 9);
  });

  it('closes after it is shared out, and right angles stay right (random)', () => {
    const lengths = fc.array(fc.integer({ min: 300, max: 9000 }), { minLength: 4, maxLength: 12 });
    fc.assert(
      fc.property(
        lengths,
        fc.array(fc.constantFrom(90, -90), { minLength: 12, maxLength: 12 }),
        (mm, turns) => {
          const sides = mm.map((lengthMm, i) => ({ lengthMm, turnDeg: turns[i] ?? 90 }));
          fc.pre(
            new Set(
              sides.map((_, i) => sides.slice(0, i).reduce((deg, { turnDeg }) => deg + turnDeg, 0) % 180),
            ).size === 2,
          );
          const corners = sharedOut(sides);
          expect(corners).toHaveLength(sides.length);
          corners.forEach((from, i) => {
            const to = corners[(i + 1) % corners.length] ?? from;
            const off = Math.min(Math.abs(to[0] - from[0]), Math.abs(to[1] - from[1]));
            expect(off).toBeLessThan(1e-6);
          });
        },
      ),
    );
  });

  it('goes round anticlockwise whichever way it was walked', () => {
    const round: readonly Vector[] = [
      [0, 0],
      [0, 4],
      [3, 4],
    ];
    expect(anticlockwise(round)).toEqual(round.toReversed());
    expect(anticlockwise(round.toReversed())).toEqual(round.toReversed());
  });
});
