import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { marginOfMarkup, markupOfMargin } from '#engine/price/markup.ts';
import { atMarginPence, withMarkupPence } from '#engine/price/money.ts';

/** Mark-up on cost and the margin of the selling price that it gives, as printed on trade newsletters' pages. */
const published = [
  { markupPercent: 20, marginPercent: 16.7, printedTo: 0.1 },
  { markupPercent: 25, marginPercent: 20, printedTo: 1 },
  { markupPercent: 50, marginPercent: 33.3, printedTo: 0.1 },
] as const;

describe('mark-up and margin', () => {
  // Source: thesmartcontractor.uk, "Markup vs margin: the pricing trap that catches out construction businesses".
  it.each(published)(
    'of $markupPercent % mark-up is $marginPercent % margin',
    ({ markupPercent, marginPercent, printedTo }) => {
      expect(Math.abs(marginOfMarkup(markupPercent) - marginPercent)).toBeLessThanOrEqual(printedTo / 2);
    },
  );

  // Source: profitablecontractor.co.uk, "Why confusing markup and margin could cost you": £400,000 × 1.15 = £460,000, 13.04 %.
  it('of £400,000 at 15 % mark-up is £460,000, a margin of 13.04 %', () => {
    expect(withMarkupPence(40_000_000, 15)).toBe(46_000_000);
    expect(Math.abs(marginOfMarkup(15) - 13.04)).toBeLessThanOrEqual(0.005);
  });

  // Source: the first page again: £100 at 20 % mark-up sells at £120.
  it('of £100 at 20 % mark-up is £120', () => {
    expect(withMarkupPence(10_000, 20)).toBe(12_000);
  });

  it('sells at the same price by a margin as by the mark-up that it amounts to', () => {
    expect(atMarginPence(10_000, 20)).toBe(withMarkupPence(10_000, markupOfMargin(20)));
    expect(atMarginPence(10_000, 20)).toBe(12_500);
  });

  it('turn into each other and back', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 95, noNaN: true }), (marginPercent) => {
        expect(marginOfMarkup(markupOfMargin(marginPercent))).toBeCloseTo(marginPercent, 9);
      }),
    );
  });
});
