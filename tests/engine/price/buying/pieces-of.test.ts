import { describe, expect, it } from 'vitest';
import { piecesToCut } from '#engine/price/buying/pieces-of.ts';
import type { Piece } from '#engine/takeoff/line.ts';
import { takeoffLine } from '../price-material.ts';

const piece = (cause: string, lengthMm: number, unbroken = true): Piece => ({
  cause,
  lengthMm,
  lowMm: lengthMm,
  highMm: lengthMm,
  unbroken,
});
const cut = (pieces: readonly Piece[], wastePercent: number, longestMm = Number.POSITIVE_INFINITY) =>
  piecesToCut(takeoffLine('thing', 1, { unit: 'm', pieces, wastePercent }), longestMm).map(
    ({ cause, lengthMm }) => `${cause} ${lengthMm}`,
  );

describe('pieces as they are cut', () => {
  it('have the waste in them, up to a centimetre, the longest first, then by cause', () => {
    expect(cut([piece('b', 2000), piece('a', 2000), piece('c', 5023.5)], 5)).toEqual([
      'c 5280',
      'a 2100',
      'b 2100',
    ]);
  });

  it('are not rounded up for the noise of binary fractions', () => {
    expect(100 * 1.1).toBeGreaterThan(110);
    expect(cut([piece('a', 100 * 1.1)], 0)).toEqual(['a 110']);
  });

  it('of what may be put together take no waste, and are sawn where they are longer than what is sold', () => {
    expect(cut([piece('a', 7150, false), piece('b', 2995, false)], 10, 3000)).toEqual([
      'a 3000',
      'a 3000',
      'b 3000',
      'a 1150',
    ]);
    expect(cut([piece('a', 6000, false)], 10, 3000)).toEqual(['a 3000', 'a 3000']);
  });

  it('are never sawn where they must be unbroken, and nothing is no piece', () => {
    expect(cut([piece('a', 27_000), piece('b', 0)], 0, 25_000)).toEqual(['a 27000']);
  });
});
