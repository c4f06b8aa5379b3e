import type { Totals } from '#engine/price/totals.ts';

/** One stretch of the bar of money. */
export interface PricePart {
  readonly words: string;
  readonly pence: number;
}

/** A price as the stretches of its bar; they add up to what is to be paid, to the penny. */
export const partsOfPrice = (totals: Totals): readonly PricePart[] => [
  { words: 'Materials', pence: totals.materialsPence },
  { words: 'Labour', pence: totals.labourPence },
  { words: 'Other sums', pence: totals.otherPence },
  { words: 'Contingency', pence: totals.contingencyPence },
  { words: 'VAT', pence: totals.vatPence },
];
