import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addTo,
  factorInPlace,
  newEnvelope,
  solveBackward,
  solveForward,
} from '#engine/proof/flow/envelope-cholesky.ts';
import { eliminated } from './dense-flow.ts';
import { randomFrom } from './random-network.ts';

/** A matrix that is positive definite, since each entry of the diagonal outweighs the rest of its row. */
function randomMatrix(size: number, random: () => number): { first: Int32Array; full: number[][] } {
  const first = Int32Array.from({ length: size }, (_, row) => Math.floor(random() * (row + 1)));
  const full = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const put = (row: number, column: number, value: number): void => {
    const entries = full[row];
    if (entries !== undefined) entries[column] = value;
  };
  for (let row = 0; row < size; row += 1) {
    put(row, row, size + random());
    for (let column = first[row] ?? row; column < row; column += 1) {
      const value = random() * 2 - 1;
      put(row, column, value);
      put(column, row, value);
    }
  }
  return { first, full };
}

describe('the factor of an envelope', () => {
  it('solves what elimination solves', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 20 }), fc.nat(), (size, seed) => {
        const random = randomFrom(seed);
        const { first, full } = randomMatrix(size, random);
        const right = full.map(() => random() * 10 - 5);
        const matrix = newEnvelope(first);
        for (let row = 0; row < size; row += 1)
          for (let column = first[row] ?? row; column <= row; column += 1)
            addTo(matrix, row, column, full[row]?.[column] ?? 0);
        factorInPlace(matrix);
        const x = Float64Array.from(right);
        solveForward(matrix, x);
        solveBackward(matrix, x);
        const meant = eliminated(full, right);
        for (const [row, value] of x.entries()) expect(value).toBeCloseTo(meant[row] ?? Number.NaN, 11);
      }),
      { numRuns: 200 },
    );
  });

  it('may start where the right side has its first entry', () => {
    const matrix = newEnvelope(Int32Array.of(0, 0, 1));
    for (const row of [0, 1, 2]) addTo(matrix, row, row, 4);
    addTo(matrix, 1, 0, -1);
    addTo(matrix, 2, 1, -1);
    factorInPlace(matrix);
    const [late, whole] = [Float64Array.of(0, 2, 3), Float64Array.of(0, 2, 3)];
    solveForward(matrix, late, 1);
    solveForward(matrix, whole);
    expect(late).toEqual(whole);
  });

  it('keeps only what is inside the envelope', () => {
    expect(newEnvelope(Int32Array.of(0, 0, 2, 1)).value).toHaveLength(1 + 2 + 1 + 3);
  });
});
