import { percentOfPence } from '../price/money.ts';
import type { PriceBuildUp } from '../price/totals.ts';
import { vatPercentOf } from '../price/vat.ts';
import { claimWords, type VatClaim } from '../price/vat-claim.ts';
import type { QuotedPrice } from './document.ts';
import { pounds } from './said.ts';

/** What stands under a price that is to be paid: the VAT in it, which does not come on top. */
export const vatWithin = ({ vatPercent, vatPence }: Pick<QuotedPrice, 'vatPercent' | 'vatPence'>): string =>
  vatPercent > 0 ? `including ${pounds(vatPence)} VAT` : 'no VAT is charged';

/** What a customer pays at the standard rate, where a lower one is charged. */
const standardPence = (netPence: number): number =>
  netPence + percentOfPence(netPence, vatPercentOf.standard);

const lowered = (rate: string, { condition }: VatClaim, netPence: number): string =>
  `VAT at ${rate}, because: ${condition?.words ?? ''} We need to see and keep ${condition?.keep ?? 'proof of it'}. If this turns out not to hold, VAT is 20 % and the price ${pounds(standardPence(netPence))}.`;

/**
 * The VAT of a price in the customer's words: its rate, the condition it hangs on, and the price if that does not hold.
 *
 * @param registered whether the firm is registered for VAT.
 */
export function vatSaid(
  { vat, vatPercent, vatClaim, totals }: Pick<PriceBuildUp, 'vat' | 'vatPercent' | 'vatClaim' | 'totals'>,
  registered: boolean,
): string {
  if (!registered) return 'No VAT: we are not registered for it, so none is added now or later.';
  if (vat === 'not-registered') return 'No VAT is charged on this work.';
  if (vat === 'standard') return 'VAT at 20 %, the usual rate for work on a home that is lived in.';
  if (vatClaim.verdict !== 'claimed')
    return `VAT at ${vatPercent} %, which hangs on a condition not shown yet. ${claimWords(vatClaim)} At 20 % the price is ${pounds(standardPence(totals.netPence))}.`;
  return lowered(`${vatPercent} %`, vatClaim, totals.netPence);
}
