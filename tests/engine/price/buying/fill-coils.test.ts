import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bestFit } from '#engine/price/buying/best-fit.ts';
import { cutBound } from '#engine/price/buying/cut-bound.ts';
import { type Filled, fillLengths, type SameLengths } from '#engine/price/buying/fill-coils.ts';

const same = (...lengths: readonly (readonly [number, number])[]): readonly SameLengths[] =>
  lengths.map(([lengthMm, count]) => ({ lengthMm, count }));
const plenty = () => ({ left: 100_000 });

/** Whether pieces can be cut from lengths, by trying each piece in each of them. */
function byForce(pieces: readonly number[], lengths: readonly number[]): boolean {
  const [first, ...others] = pieces;
  if (first === undefined) return true;
  return lengths.some((mm, i) => mm >= first && byForce(others, lengths.with(i, mm - first)));
}

function expectCut(
  pieces: readonly SameLengths[],
  lengths: readonly SameLengths[],
  filled: readonly Filled[],
) {
  const cut = pieces.map((_, i) => filled.reduce((sum, { takes }) => sum + (takes[i] ?? 0), 0));
  expect(cut).toEqual(pieces.map(({ count }) => count));
  lengths.forEach(({ lengthMm, count }, length) => {
    const ofLength = filled.filter((one) => one.length === length);
    expect(ofLength.length).toBeLessThanOrEqual(count);
    for (const { takes } of ofLength)
      expect(takes.reduce((sum, many, i) => sum + many * (pieces[i]?.lengthMm ?? 0), 0)).toBeLessThanOrEqual(
        lengthMm,
      );
  });
}

const anyPieces = fc
  .uniqueArray(fc.integer({ min: 1, max: 60 }), { minLength: 1, maxLength: 5 })
  .chain((tens) =>
    fc.tuple(
      ...tens
        .toSorted((a, b) => b - a)
        .map((ten) => fc.tuple(fc.constant(ten * 10), fc.integer({ min: 1, max: 2 }))),
    ),
  )
  .map((pieces) => same(...pieces));
const anyLengths = fc
  .uniqueArray(fc.integer({ min: 5, max: 150 }), { minLength: 1, maxLength: 3 })
  .chain((tens) =>
    fc.tuple(
      ...tens
        .toSorted((a, b) => a - b)
        .map((ten) => fc.tuple(fc.constant(ten * 10), fc.integer({ min: 1, max: 2 }))),
    ),
  )
  .map((lengths) => same(...lengths));
const each = (list: readonly SameLengths[]) =>
  list.flatMap(({ lengthMm, count }) => Array.from({ length: count }, () => lengthMm));

describe('cutting pieces from lengths at hand', () => {
  it('finds the one way there is', () => {
    const pieces = same([700, 1], [600, 1], [500, 1], [400, 1], [300, 2]);
    const filled = fillLengths(pieces, same([1000, 1], [1800, 1]), plenty());
    expect(filled).not.toBeNull();
    expectCut(pieces, same([1000, 1], [1800, 1]), filled as readonly Filled[]);
  });

  it('says that it cannot be done where the sum would fit and the pieces do not', () => {
    expect(fillLengths(same([8000, 5]), same([7000, 6]), plenty())).toBeNull();
    expect(fillLengths(same([1600, 3]), same([3000, 2]), plenty())).toBeNull();
  });

  it('says that it cannot tell where its steps are spent', () => {
    const pieces = same(...Array.from({ length: 12 }, (_, i) => [1390 - i * 10, 1] as const));
    expect(fillLengths(pieces, same([3000, 6]), { left: 0 })).toBe('spent');
  });

  it('agrees with trying every piece everywhere, and what is quickly cut is cut', () => {
    fc.assert(
      fc.property(anyPieces, anyLengths, (pieces, lengths) => {
        const filled = fillLengths(pieces, lengths, plenty());
        expect(filled !== null).toBe(byForce(each(pieces), each(lengths)));
        if (filled !== null && filled !== 'spent') expectCut(pieces, lengths, filled);
        const quick = bestFit(pieces, lengths);
        expectCut(
          pieces.map((piece, i) => ({ ...piece, count: piece.count - (quick.left[i] ?? 0) })),
          lengths,
          quick.filled,
        );
        if (quick.left.every((count) => count === 0)) expect(filled).not.toBeNull();
      }),
      { seed: 31, numRuns: 400 },
    );
  });
});

describe('the most that pieces fill of a length', () => {
  it('counts three pieces of 8 m for 24 m of a coil of 25 m', () => {
    const { filledMm, fittingMm } = cutBound(same([8000, 5]));
    expect([filledMm(25_000), filledMm(7999), filledMm(100_000)]).toEqual([24_000, 0, 40_000]);
    expect([fittingMm(8000), fittingMm(7990)]).toEqual([40_000, 0]);
  });

  it('is the greatest sum of some of them that is no longer', () => {
    fc.assert(
      fc.property(anyPieces, fc.integer({ min: 0, max: 2000 }), (pieces, lengthMm) => {
        const all = each(pieces);
        const sums = Array.from({ length: 2 ** all.length }, (_, some) =>
          all.reduce((sum, mm, i) => sum + (some & (1 << i) ? mm : 0), 0),
        );
        const greatest = Math.max(...sums.filter((sum) => sum <= lengthMm));
        expect(cutBound(pieces).filledMm(lengthMm)).toBe(greatest);
      }),
      { seed: 32, numRuns: 300 },
    );
  });
});
