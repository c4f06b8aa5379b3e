import type { PriceBuildUp } from '#engine/price/totals.ts';
import type { Terms } from '#model/job.ts';

/** To a hundredth, without idle noughts. */
const percent = (value: number): string => `${Math.round(value * 100) / 100} %`;

/** How VAT is charged in a price, and on whose word. */
export function vatWords({ vat, vatPercent }: Pick<PriceBuildUp, 'vat' | 'vatPercent'>, firm: Terms): string {
  if (firm.vat === 'not-registered') return 'none: the firm is not registered';
  if (vat === 'not-registered') return 'none, by this job’s terms, though the firm is registered';
  return `${percent(vatPercent)}: the firm is registered`;
}
