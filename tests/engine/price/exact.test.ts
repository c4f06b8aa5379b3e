import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ceiling, decimalOf, exactOf, minus, over, plus, roundHalfUp, times } from '#engine/price/exact.ts';

const number = (value: { num: bigint; den: bigint }): number => Number(value.num) / Number(value.den);

describe('exact numbers', () => {
  it.each([
    [0, 0n, 1n],
    [12, 12n, 1n],
    [0.1, 1n, 10n],
    [-2.5, -25n, 10n],
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
});
