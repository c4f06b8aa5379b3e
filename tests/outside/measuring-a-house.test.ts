import { describe, expect, it } from 'vitest';
import { usualHeights } from '../../ui/elements/as-found/usual-heights.ts';
import { readLengthMm } from '../../ui/elements/fields/read-length.ts';
import { sharedOut, walked } from '../../ui/house/room-walk.ts';
import { squareTo } from '../../ui/house/straighten.ts';
import type { Vector } from '../../ui/house/vector.ts';

const turning = (lengthsMm: readonly number[]) => lengthsMm.map((lengthMm) => ({ lengthMm, turnDeg: 90 }));

describe('lengths as they are read off a tape or an old drawing', () => {
  // Weights and Measures Act 1985, Schedule 1, Part I: 1 yard = 0.9144 m exactly, 1 foot = 1/3 yard, 1 inch = 1/36 yard.
  it.each([
    ['3 ft', 914.4],
    ['36"', 914.4],
    ["1'", 304.8],
    ['1 in', 25.4],
    ['10 ft 6 in', 3200.4],
    ['0.9144 m', 914.4],
  ])('%s is %s mm', (typed, mm) => {
    expect(readLengthMm(typed)).toBe(mm);
  });

  // By the same Act half an inch is 12.7 mm.
  it('keeps a fraction of an inch to a tenth of a millimetre', () => {
    expect(readLengthMm('8 1/2"')).toBe(215.9);
    expect(readLengthMm('1/2"')).toBe(12.7);
  });
});

describe('a room that does not close', () => {
  // Closing error and its relation to the perimeter, as traverse surveying has it ("relative precision"): the root of the squares of
  // what is missing along both axes, to the sum of the sides. Textbook practice, from memory.
  it('misses by the root of squares, and the misclosure is told beside the perimeter', () => {
    const walk = walked(turning([4000, 3000, 3988, 2995]));
    expect(walk.missingMm).toBeCloseTo(Math.hypot(12, 5), 9);
    expect(walk.missingMm).toBe(13);
    expect(walk.roundMm).toBe(13_983);
  });

  // The transit rule worked by hand for this room: along x −12 shared 4000 : 3988, along y −5 shared 3000 : 2995.
  it('is closed by the transit rule, each side by its share', () => {
    const [, second, third, fourth] = sharedOut(turning([4000, 3000, 3988, 2995]));
    expect(second?.[0]).toBeCloseTo(3993.991, 3);
    expect(third?.[1]).toBeCloseTo(2997.498, 3);
    expect(fourth?.[0]).toBeCloseTo(0, 6);
    expect(fourth?.[1]).toBeCloseTo(2997.498, 3);
  });
});

describe('a picture that was taken at a slant', () => {
  // A projection keeps the cross-ratio of four points on a line: Pappus; any text on projective geometry.
  it('keeps the cross-ratio along every line', () => {
    const corners = [
      [12, 40],
      [610, 8],
      [700, 505],
      [35, 430],
    ] as const satisfies readonly Vector[];
    const project = squareTo(corners);
    if (project === null) throw new Error('these corners are of a seen rectangle');
    const [a, b, c, d] = [0.1, 0.35, 0.6, 0.9].map((u) => project(u, 0.4)) as [
      Vector,
      Vector,
      Vector,
      Vector,
    ];
    const apart = (p: Vector, q: Vector): number => Math.hypot(p[0] - q[0], p[1] - q[1]);
    const seen = (apart(a, c) * apart(b, d)) / (apart(b, c) * apart(a, d));
    expect(seen).toBeCloseTo((0.5 * 0.55) / (0.25 * 0.8), 9);
  });
});

describe('the heights that are offered first', () => {
  // Approved Document M (England) 2015 with 2016 amendments, volume 1, 1.18 and its diagram: switches and socket-outlets of new
  // dwellings between 450 and 1200 mm above floor level.
  it.each(['socket-single', 'socket-twin', 'fused-unit', 'dp-switch', 'flex-outlet'] as const)(
    'of a %s lies within what new dwellings ask for',
    (kind) => {
      const [first] = usualHeights(kind);
      expect(first?.heightMm).toBeGreaterThanOrEqual(450);
      expect(first?.heightMm).toBeLessThanOrEqual(1200);
    },
  );
});
