import type { Stock } from '#model/job.ts';
import type { Prices } from '#model/library.ts';
import type { TakeoffLine } from '../../takeoff/line.ts';
import { pricesByItem } from '../prices-by-item.ts';
import { countedLine } from './counted-line.ts';
import { cutLine } from './cut-line.ts';
import type { PurchaseLine, PurchasePlan } from './purchase.ts';

/** What is bought for, and of what. */
export interface ToBuy {
  readonly takeoff: readonly TakeoffLine[];
  readonly prices: Prices;
  readonly stock: readonly Stock[];
  /** `quick`: for a screen while something moves, the first plan that serves, with its bound. */
  readonly depth: 'whole' | 'quick';
}

/**
 * What the firm buys for a take-off, item by item at least cost: what is cut to length so that every piece is one unbroken
 * length, all else in the cheapest mix of packs. What the van holds comes first, and of what is cut only where a length
 * of it is long enough. This is the firm's outlay; what the job is charged is the bill's (`bill.ts`).
 *
 * @returns lines by counter, then in the take-off's order; none for what may only turn out to be needed.
 */
export function planPurchase({ takeoff, prices, stock, depth }: ToBuy): PurchasePlan {
  const rows = pricesByItem(prices);
  const lines = takeoff
    .filter(({ quantity }) => quantity > 0)
    .map((line): PurchaseLine => {
      const row = rows.get(line.item);
      const price = row?.unit === line.unit ? row : undefined;
      const held = stock.filter(({ item }) => item === line.item);
      const isCut = line.unit === 'm' && line.pieces.length > 0;
      return isCut ? cutLine(line, price, held, depth === 'quick') : countedLine(line, price, held);
    });
  return {
    lines: lines.toSorted(byCounter),
    pence: lines.reduce((sum, { pence }) => sum + pence, 0),
    proved: lines.every(({ priced, proof }) => !priced || proof.optimal),
  };
}

/** Lines without a counter come last. */
const byCounter = (a: PurchaseLine, b: PurchaseLine): number => {
  if (a.counter === b.counter) return 0;
  if (a.counter === '' || b.counter === '') return a.counter === '' ? 1 : -1;
  return a.counter < b.counter ? -1 : 1;
};
