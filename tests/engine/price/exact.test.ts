import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  ceiling,
  decimalOf,
  type Exact,
  exactOf,
  minus,
  over,
  plus,
  roundHalfUp,
  times,
} from '#engine/price/exact.ts';

const number = ({ num, den }: Exact): number => Number(num) / Number(den);

/** The same sums with big whole numbers alone: an oracle for the plain ones. */
const big = ({ num, den }: Exact) => ({ num: BigInt(num), den: BigInt(den) });
const isSame = (a: Exact, b: Exact): boolean =>
  BigInt(a.num) * BigInt(b.den) === BigInt(b.num) * BigInt(a.den);
const written = (value: number): Exact => {
  const [mantissa = '0', exponent = '0'] = String(value).split('e');
  const [whole = '0', decimals = ''] = mantissa.split('.');
  const shift = Number(exponent) - decimals.length;
  const digits = BigInt(whole + decimals);
  return shift >= 0
    ? { num: digits * 10n ** BigInt(shift), den: 1n }
    : { num: digits, den: 10n ** BigInt(-shift) };
};
const anyNumber = fc.oneof(
  fc.integer({ min: -1e6, max: 1e6 }),
  fc.integer({ min: -1e9, max: 1e9 }).map((hundredths) => hundredths / 100),
  fc.integer({ min: -1e12, max: 1e12 }).map((millionths) => millionths / 1e6),
  fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e18, max: 1e18 }),
);

describe('exact numbers', () => {
  it.each([
    [0, 0, 1],
    [-0, 0, 1],
    [12, 12, 1],
    [0.1, 1, 10],
    [-2.5, -25, 10],
    [1e21, 10n ** 21n, 1n],
    [1.5e-7, 15n, 10n ** 8n],
  ])('read %d as it is written', (value, num, den) => {
    expect(exactOf(value)).toEqual({ num, den });
  });

  it('read back as the same number', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e9, max: 1e9 }), (value) => {
        const { num, den } = exactOf(value);
        expect(Number(`${num}e-${den.toString().length - 1}`)).toBe(value === 0 ? 0 : value);
      }),
    );
  });

  it('add without the error of binary fractions', () => {
    expect(0.1 + 0.2).not.toBe(0.3);
    expect(decimalOf(plus(exactOf(0.1), exactOf(0.2)), 6)).toBe(0.3);
    expect(decimalOf(minus(exactOf(12.3), exactOf(0.1)), 6)).toBe(12.2);
  });

  it('multiply and divide as fractions', () => {
    expect(number(times(exactOf(1.5), exactOf(-4)))).toBe(-6);
    expect(number(over(exactOf(3), exactOf(8)))).toBe(0.375);
  });

  it('refuse to divide by nought or less', () => {
    expect(() => over(exactOf(1), exactOf(0))).toThrow(/above nought/);
  });

  it.each([
    [2.5, 3],
    [2.4999, 2],
    [-2.5, -2],
    [-2.51, -3],
    [7, 7],
  ])('round %d half up to %d', (value, rounded) => {
    expect(roundHalfUp(exactOf(value))).toBe(rounded);
  });

  it.each([
    [2.0001, 3],
    [2, 2],
    [-2.9, -2],
  ])('have %d below the whole number %d', (value, above) => {
    expect(ceiling(exactOf(value))).toBe(above);
  });

  it('round a half that binary fractions hide', () => {
    expect(Math.round(1.005 * 100)).toBe(100);
    expect(roundHalfUp(times(exactOf(1.005), exactOf(100)))).toBe(101);
  });

  it('are read as they are written, whichever way they are kept', () => {
    fc.assert(
      fc.property(anyNumber, (value) => {
        expect(isSame(exactOf(value), written(value))).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });

  it('come to the same with plain whole numbers as with big ones', () => {
    fc.assert(
      fc.property(anyNumber, anyNumber, (x, y) => {
        const [a, b] = [exactOf(x), exactOf(y)];
        expect(isSame(plus(a, b), plus(big(a), big(b)))).toBe(true);
        expect(isSame(minus(a, b), minus(big(a), big(b)))).toBe(true);
        expect(isSame(times(a, b), times(big(a), big(b)))).toBe(true);
        if (y > 0) expect(isSame(over(a, b), over(big(a), big(b)))).toBe(true);
        expect(roundHalfUp(times(a, b))).toBe(roundHalfUp(times(big(a), big(b))));
        expect(ceiling(times(a, b))).toBe(ceiling(times(big(a), big(b))));
        expect(decimalOf(plus(a, b), 3)).toBe(decimalOf(plus(big(a), big(b)), 3));
      }),
      { numRuns: 2000 },
    );
  });

  it('round just below a whole number down, however near', () => {
    expect(roundHalfUp(over(exactOf(9007199254740990), exactOf(9007199254740991)))).toBe(1);
    expect(ceiling(minus(exactOf(2), over(exactOf(1), exactOf(9007199254740991))))).toBe(2);
    expect(decimalOf(minus(exactOf(0.5), over(exactOf(1), exactOf(4503599627370495))), 0)).toBe(0);
  });
});
