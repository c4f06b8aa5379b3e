import type { PriceBuildUp, PriceRange } from '../price/totals.ts';
import type { QuotationDocument, QuotedPrice, QuotedSum } from './document.ts';
import { pounds, wholePounds } from './said.ts';
import { vatSaid } from './vat-said.ts';

const hoursWords = (hours: number): string => `${Math.round(hours * 10) / 10} hours`;

/** Sums of the price list as a customer reads them; others by their own words. */
const sumSaid: Readonly<Record<string, string>> = {
  notification: 'Telling building control',
  'call-out': 'Coming out',
  'minimum-charge': 'Up to our least charge',
};

/** The lines that the firm keeps to itself: they are in what an hour costs the customer. */
const inTheHours: readonly string[] = ['overhead', 'profit'];

/** What an hour costs the customer: the rate, or where that is the firm's own cost, what it comes to with all on top. */
function rateWords({ totals, ratePencePerHour, rateBasis }: PriceBuildUp, workPence: number): string {
  if (rateBasis === 'charged') return ` at ${pounds(ratePencePerHour)} an hour`;
  return totals.hours === 0 ? '' : ` at about ${wholePounds(workPence / totals.hours)} an hour`;
}

/** What the net sum is made of, in the customer's words; sums of nothing are left out. */
function partsOf(price: PriceBuildUp): readonly QuotedSum[] {
  const { totals, other } = price;
  const within = other.filter(({ sum }) => inTheHours.includes(sum));
  const workPence = within.reduce((sum, { pence }) => sum + pence, totals.labourPence);
  return [
    { words: `Work: about ${hoursWords(totals.hours)}${rateWords(price, workPence)}`, pence: workPence },
    { words: 'Materials', pence: totals.materialsPence },
    ...other
      .filter(({ sum }) => !inTheHours.includes(sum))
      .map(({ sum, description, pence }) => ({ words: sumSaid[sum] ?? description, pence })),
    { words: 'Set aside for what may turn up; charged only if it does', pence: totals.contingencyPence },
  ].filter(({ pence }) => pence !== 0);
}

/**
 * The price of a scheme as the customer reads it; every sum is the estimate's own, to the penny.
 *
 * @param registered whether the firm is registered for VAT.
 */
export function quotedPrice(
  kind: QuotationDocument['kind'],
  { price, range }: { readonly price: PriceBuildUp; readonly range: PriceRange },
  registered: boolean,
): QuotedPrice {
  const { netPence, vatPence, grossPence } = price.totals;
  const { depositPence } = price;
  return {
    netPence,
    vatPercent: price.vatPercent,
    vatPence,
    grossPence,
    withoutVat: price.vat === 'not-registered',
    parts: kind === 'estimate' ? partsOf(price) : [],
    vatWords: vatSaid(price, registered),
    depositPence: depositPence === 0 ? null : depositPence,
    balancePence: grossPence - (depositPence ?? 0),
    range: kind === 'estimate' ? { lowPence: range.lowPence, highPence: range.highPence } : null,
  };
}
