import type { Terms } from '#model/job.ts';
import type { Prices } from '#model/library.ts';
import { type Exact, exactOf, over, plus } from './exact.ts';

/** How a job is charged for value added tax. */
export type VatTerms = Terms['vat'];

/**
 * The rates of value added tax, percent; a firm that is not registered charges none.
 * Source: Value Added Tax Act 1994 section 2 (standard rate, 20 % since 4 January 2011), section 29A with
 * Schedule 7A (5 %), section 30 with Schedule 8 (nought).
 */
export const vatPercentOf: Readonly<Record<VatTerms, number>> = {
  standard: 20,
  reduced: 5,
  zero: 0,
  'not-registered': 0,
};

/**
 * What a price of the list is multiplied by to give what the material costs the firm. A registered firm
 * recovers the tax it pays at the merchant's, so it bears the price without tax; one that is not registered
 * bears the price with tax, at the standard rate, at which wiring materials are sold over the counter.
 */
export function costVatFactor(listed: Prices['vat'], terms: VatTerms): Exact {
  const withTax = over(plus(exactOf(100), exactOf(vatPercentOf.standard)), exactOf(100));
  const one = exactOf(1);
  const bearsTax = terms === 'not-registered';
  if (listed === 'excluded') return bearsTax ? withTax : one;
  return bearsTax ? one : over(one, withTax);
}
