import type { PriceBuildUp } from '#engine/price/totals.ts';
import type { Terms } from '#model/job.ts';
import { percent } from '../../written.ts';

/** What a sum is told with. */
export const withVatWords = ({ vat }: Pick<PriceBuildUp, 'vat'>): string =>
  vat === 'not-registered' ? 'no VAT charged' : 'with VAT';

/** What the sums beside open questions are; of a scheme that charges no VAT they have none in them. */
export const worthWords = ({ vat }: Pick<PriceBuildUp, 'vat'>): string =>
  `How much of the price’s range each accounts for, ${vat === 'not-registered' ? 'no VAT charged' : 'VAT included'}.`;

/** How VAT is charged in a price, and on whose word. */
export function vatWords({ vat, vatPercent }: Pick<PriceBuildUp, 'vat' | 'vatPercent'>, firm: Terms): string {
  if (firm.vat === 'not-registered') return 'none: the firm is not registered';
  if (vat === 'not-registered') return 'none, by this job’s terms, though the firm is registered';
  return `${percent(vatPercent)}: the firm is registered`;
}
