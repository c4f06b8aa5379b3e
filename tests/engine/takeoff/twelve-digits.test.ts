import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { twelveDigits } from '#engine/takeoff/twelve-digits.ts';

/** The number written out to twelve significant digits, which is what the function means. */
const writtenOut = (value: number): number => Number(value.toPrecision(12));

describe('twelve digits', () => {
  it('takes the dust off sums of decimals', () => {
    expect(0.1 + 0.2).not.toBe(0.3);
    expect(twelveDigits(0.1 + 0.2)).toBe(0.3);
    expect(twelveDigits(10.979999999999999)).toBe(10.98);
    expect(twelveDigits(1.005 * 100)).toBe(100.5);
  });

  it('are the number written out, for sums of decimals', () => {
    const decimal = fc.integer({ min: -1e7, max: 1e7 }).map((tenThousandths) => tenThousandths / 1e4);
    fc.assert(
      fc.property(fc.array(decimal, { maxLength: 40 }), (parts) => {
        const sum = parts.reduce((total, part) => total + part, 0);
        expect(twelveDigits(sum)).toBe(writtenOut(sum));
      }),
    );
  });

  it('are the number written out, for products and for any number', () => {
    const any = fc.oneof(
      fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e12, max: 1e12 }),
      fc.tuple(fc.integer({ max: 1e9 }), fc.integer({ min: 1, max: 1e6 })).map(([a, b]) => a / b),
      fc.integer({ min: -1e9, max: 1e9 }).map((whole) => whole / 1e4 + 1e-11),
    );
    fc.assert(
      fc.property(any, (value) => {
        expect(twelveDigits(value)).toBe(writtenOut(value));
      }),
      { numRuns: 2000 },
    );
  });
});
