import type { AgreedTerms } from './agreed-terms.ts';
import { percentOfPence } from './money.ts';

/** What is asked for before the work, whole pence, of the sum with VAT and never more than it; null: no deposit. */
export function depositPence(grossPence: number, { deposit }: Pick<AgreedTerms, 'deposit'>): number | null {
  if (deposit === null) return null;
  const pence =
    'percent' in deposit ? percentOfPence(grossPence, deposit.percent) : Math.min(deposit.pence, grossPence);
  return pence === 0 ? null : pence;
}
