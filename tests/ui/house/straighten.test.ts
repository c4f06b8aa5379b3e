import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Corners,
  isSeenRectangle,
  MARGIN,
  type Pixels,
  seenRatio,
  squareTo,
  straightenRows,
  straightSize,
} from '../../../ui/house/straighten.ts';
import type { Vector } from '../../../ui/house/vector.ts';

/** Solves linear equations by elimination with pivoting: nothing of the closed form is in it. */
function solved(rows: readonly (readonly number[])[]): number[] {
  const matrix = rows.map((row) => [...row]);
  const n = matrix.length;
  for (let i = 0; i < n; i++) {
    let pivot = i;
    for (let r = i + 1; r < n; r++)
      if (Math.abs(matrix[r]?.[i] ?? 0) > Math.abs(matrix[pivot]?.[i] ?? 0)) pivot = r;
    const [a, b] = [matrix[i] ?? [], matrix[pivot] ?? []];
    matrix[i] = b;
    matrix[pivot] = a;
    for (let r = 0; r < n; r++) {
      if (r === i) continue;
      const factor = (matrix[r]?.[i] ?? 0) / (b[i] ?? 1);
      matrix[r] = (matrix[r] ?? []).map((value, c) => value - factor * (b[c] ?? 0));
    }
  }
  return matrix.map((row, i) => (row[n] ?? 0) / (row[i] ?? 1));
}

/** The projection from the unit square by its eight equations. */
function byEquations(corners: Corners): (u: number, v: number) => Vector {
  const square: readonly Vector[] = [
    [0, 0],
    [1, 0],
    [1, 1],
    [0, 1],
  ];
  const rows = square.flatMap(([u, v], i) => {
    const [x, y] = corners[i] ?? [0, 0];
    return [
      [u, v, 1, 0, 0, 0, -u * x, -v * x, x],
      [0, 0, 0, u, v, 1, -u * y, -v * y, y],
    ];
  });
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = solved(rows);
  return (u, v) => {
    const w = g * u + h * v + 1;
    return [(a * u + b * v + c) / w, (d * u + e * v + f) / w];
  };
}

const PICTURE: Vector = [1600, 1200];

/** A rectangle in front of a pinhole camera, turned every way, as it falls on the picture. */
const seen = fc
  .record({
    ratio: fc.double({ min: 0.4, max: 2.5, noNaN: true }),
    lens: fc.double({ min: 0.8, max: 1.6, noNaN: true }),
    tilt: fc.double({ min: 0.2, max: 0.6, noNaN: true }),
    pan: fc.double({ min: 0.2, max: 0.6, noNaN: true }),
    roll: fc.double({ min: -0.3, max: 0.3, noNaN: true }),
    away: fc.double({ min: 2.6, max: 4, noNaN: true }),
  })
  .map(({ ratio, lens, tilt, pan, roll, away }) => {
    const [w, h] = ratio > 1 ? [1, 1 / ratio] : [ratio, 1];
    const corners = (
      [
        [-w, -h],
        [w, -h],
        [w, h],
        [-w, h],
      ] as const
    ).map(([x0, y0]): Vector => {
      const [x1, y1] = [x0 * Math.cos(roll) - y0 * Math.sin(roll), x0 * Math.sin(roll) + y0 * Math.cos(roll)];
      const [y2, z2] = [y1 * Math.cos(tilt), y1 * Math.sin(tilt)];
      const [x3, z3] = [x1 * Math.cos(pan) + z2 * Math.sin(pan), z2 * Math.cos(pan) - x1 * Math.sin(pan)];
      const px = (lens * PICTURE[0]) / (z3 + away);
      return [PICTURE[0] / 2 + x3 * px, PICTURE[1] / 2 + y2 * px];
    });
    // How much deeper a side of the rectangle ends than it begins, of how far it is away: where it is nothing, the side's picture runs beside
    // that of the one across from it, and no picture tells the lens.
    const [sinRoll, cosRoll, down, right] = [
      Math.sin(roll),
      Math.cos(roll),
      Math.sin(tilt) * Math.cos(pan),
      Math.sin(pan),
    ];
    const deepens = Math.min(
      Math.abs(2 * w * (sinRoll * down - cosRoll * right)),
      Math.abs(2 * h * (cosRoll * down + sinRoll * right)),
    );
    return { ratio, corners: corners as unknown as Corners, converges: deepens / away };
  });

describe('what a camera makes of a rectangle', () => {
  it('is undone with every corner exactly where it belongs, and as the eight equations have it everywhere', () => {
    fc.assert(
      fc.property(
        seen,
        fc.double({ min: -0.1, max: 1.1, noNaN: true }),
        fc.double({ min: -0.1, max: 1.1, noNaN: true }),
        ({ corners }, u, v) => {
          const project = squareTo(corners);
          if (project === null) throw new Error('A rectangle was not known again.');
          const oracle = byEquations(corners);
          const places: readonly Vector[] = [
            [0, 0],
            [1, 0],
            [1, 1],
            [0, 1],
          ];
          for (const [i, [x, y]] of places.entries()) {
            expect(project(x, y)[0]).toBeCloseTo(corners[i]?.[0] ?? 0, 7);
            expect(project(x, y)[1]).toBeCloseTo(corners[i]?.[1] ?? 0, 7);
          }
          expect(project(u, v)[0]).toBeCloseTo(oracle(u, v)[0], 4);
          expect(project(u, v)[1]).toBeCloseTo(oracle(u, v)[1], 4);
        },
      ),
    );
  });

  it('tells how wide it is to its height, whatever the lens and however it is held, where both pairs of sides are seen to converge', () => {
    fc.assert(
      fc.property(seen, ({ ratio, corners, converges }) => {
        fc.pre(converges > 0.04);
        expect(seenRatio(corners, PICTURE) / ratio).toBeCloseTo(1, 4);
      }),
      { numRuns: 1000 },
    );
  });

  it('seen straight on is as wide to its height as in the picture', () => {
    const corners: Corners = [
      [100, 100],
      [700, 100],
      [700, 500],
      [100, 500],
    ];
    expect(seenRatio(corners, PICTURE)).toBeCloseTo(1.5, 9);
    expect(straightSize(corners, 1.5, 10_000)).toEqual([744, 496]);
    expect(straightSize(corners, 1.5, 300)).toEqual([300, 200]);
    expect(straightSize(corners, 0.5, 300)).toEqual([150, 300]);
  });

  it('is none where the corners cross, have a dent or lie in a line', () => {
    const bad: readonly Corners[] = [
      [
        [0, 0],
        [100, 100],
        [100, 0],
        [0, 100],
      ],
      [
        [0, 0],
        [100, 0],
        [30, 30],
        [0, 100],
      ],
      [
        [0, 0],
        [50, 0],
        [100, 0],
        [150, 0],
      ],
      [
        [0, 0],
        [0, 100],
        [100, 100],
        [100, 0],
      ],
    ];
    for (const corners of bad) {
      expect(isSeenRectangle(corners)).toBe(false);
      expect(squareTo(corners)).toBeNull();
    }
  });
});

describe('a straightened picture', () => {
  /** Red grows to the right, green downwards. */
  const slope = (width: number, height: number): Pixels => {
    const data = new Uint8ClampedArray(width * height * 4);
    for (let y = 0; y < height; y++)
      for (let x = 0; x < width; x++) data.set([x + 0.5, y + 0.5, 7, 255], 4 * (y * width + x));
    return { width, height, data };
  };

  it('has at each place what the picture has where that is seen, and white where it has nothing', () => {
    const from = slope(200, 160);
    const corners: Corners = [
      [60, 40],
      [150, 55],
      [140, 120],
      [50, 100],
    ];
    const project = squareTo(corners);
    if (project === null) throw new Error('A rectangle was not known again.');
    const to: Pixels = { width: 124, height: 93, data: new Uint8ClampedArray(124 * 93 * 4) };
    straightenRows(from, to, project, [0, 40]);
    straightenRows(from, to, project, [40, 93]);
    for (const [x, y] of [
      [20, 20],
      [62, 46],
      [100, 70],
      [3, 3],
    ] as const) {
      const u = ((x + 0.5) / 124) * (1 + 2 * MARGIN) - MARGIN;
      const v = ((y + 0.5) / 93) * (1 + 2 * MARGIN) - MARGIN;
      const [px, py] = project(u, v);
      const at = 4 * (y * 124 + x);
      expect(Math.abs((to.data[at] ?? 0) - px)).toBeLessThanOrEqual(1);
      expect(Math.abs((to.data[at + 1] ?? 0) - py)).toBeLessThanOrEqual(1);
      expect([to.data[at + 2], to.data[at + 3]]).toEqual([7, 255]);
    }
    const outside: Corners = [
      [0, 0],
      [199, 0],
      [199, 159],
      [0, 159],
    ];
    const wide: Pixels = { width: 20, height: 20, data: new Uint8ClampedArray(1600) };
    const all = squareTo(outside);
    if (all === null) throw new Error('A rectangle was not known again.');
    straightenRows(from, wide, all, [0, 20]);
    expect([...wide.data.slice(0, 4)]).toEqual([255, 255, 255, 255]);
  });

  it('of a square-on view is the picture itself', () => {
    const from = slope(100, 100);
    // So that the margin is the picture's own edge.
    const inset = (MARGIN / (1 + 2 * MARGIN)) * 100;
    const far = 100 - inset;
    const project = squareTo([
      [inset, inset],
      [far, inset],
      [far, far],
      [inset, far],
    ]);
    if (project === null) throw new Error('A rectangle was not known again.');
    const to: Pixels = { width: 100, height: 100, data: new Uint8ClampedArray(40_000) };
    straightenRows(from, to, project, [0, 100]);
    const off = to.data.map((value, i) => Math.abs(value - (from.data[i] ?? 0)));
    expect(Math.max(...off)).toBeLessThanOrEqual(1);
  });
});
