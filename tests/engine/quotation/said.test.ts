import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pounds, wholePounds } from '#engine/quotation/said.ts';

// The oracle is the runtime's own writing of British money (Unicode CLDR, en-GB, by Intl).
const british = new Intl.NumberFormat('en-GB', { style: 'currency', currency: 'GBP' });
const whole = new Intl.NumberFormat('en-GB', {
  style: 'currency',
  currency: 'GBP',
  maximumFractionDigits: 0,
});

describe('money in words', () => {
  it('is written as en-GB writes it, in groups of three digits, with a true minus', () => {
    fc.assert(
      fc.property(fc.integer({ min: -2_000_000_000, max: 2_000_000_000 }), (pence) => {
        expect(pounds(pence)).toBe(british.format(pence / 100).replace('-', '−'));
      }),
    );
    expect(pounds(113_791)).toBe('£1,137.91');
  });

  it('to the nearest pound has no pence', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 2_000_000_000 }), (pence) => {
        expect(wholePounds(pence)).toBe(whole.format(Math.round(pence / 100)));
      }),
    );
  });
});
