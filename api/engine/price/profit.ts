import type { Norms } from '#model/library.ts';
import type { AgreedTerms } from './agreed-terms.ts';
import { atMarginPence, withMarkupPence } from './money.ts';

/** Why a mark-up or a margin is not put on labour. */
export const PROFIT_REFUSED =
  'No mark-up or margin is put on labour: the hourly rate is what the customer is charged, so its profit is in it already.';

/** What a mark-up or a margin is put on: as agreed, else materials, or all where the rate is what an hour costs the firm. */
export function profitOn(
  { profitOn: agreed }: Pick<AgreedTerms, 'profitOn'>,
  { rateBasis }: Pick<Norms, 'rateBasis'>,
): 'materials' | 'all' {
  return rateBasis === 'cost' ? (agreed ?? 'all') : 'materials';
}

/** True where it is asked for on all, and labour has it already. */
export const profitIsRefused = (
  { profitOn: agreed }: Pick<AgreedTerms, 'profitOn'>,
  { rateBasis }: Pick<Norms, 'rateBasis'>,
): boolean => agreed === 'all' && rateBasis !== 'cost';

/** A cost as it is sold, by the mark-up or the margin, whole pence. */
export function soldPence(
  costPence: number,
  { markupPercent, marginPercent }: Pick<AgreedTerms, 'markupPercent' | 'marginPercent'>,
): number {
  return marginPercent === null
    ? withMarkupPence(costPence, markupPercent ?? 0)
    : atMarginPence(costPence, marginPercent);
}
