import { ceiling, decimalOf, type Exact, exactOf, minus, over, times } from './exact.ts';
import type { BillLine } from './totals.ts';

/** Quantities are kept to a millionth; a smaller remainder does not open another pack. */
export const QUANTITY_PLACES = 6;

/** How many whole packs hold a quantity. */
export function packsFor(wanted: Exact, packQuantity: number): number {
  return ceiling(exactOf(decimalOf(over(wanted, exactOf(packQuantity)), QUANTITY_PLACES)));
}

/** What is carried out of the merchant's for a line of the bill, whatever of it the job is charged. */
export interface Bought {
  /** Null where it is sold in any quantity. */
  readonly packs: number | null;
  /** In the line's unit. */
  readonly quantity: number;
  /** What the job does not use of it: it stays in the van. */
  readonly leftOver: number;
}

/** What a line has to be bought of after the van's stock: whole packs where it is sold in packs. */
export function boughtOf({
  quantity,
  fromStock,
  packQuantity,
}: Pick<BillLine, 'quantity' | 'fromStock' | 'packQuantity'>): Bought {
  const wanted = minus(exactOf(quantity), exactOf(fromStock));
  if (packQuantity === null)
    return { packs: null, quantity: decimalOf(wanted, QUANTITY_PLACES), leftOver: 0 };
  const packs = packsFor(wanted, packQuantity);
  const bought = times(exactOf(packs), exactOf(packQuantity));
  return {
    packs,
    quantity: decimalOf(bought, QUANTITY_PLACES),
    leftOver: decimalOf(minus(bought, wanted), QUANTITY_PLACES),
  };
}
