import type { TakeoffLine } from '../../takeoff/line.ts';
import { lineForAll, type Supplies } from './line-for-all.ts';
import type { PurchaseLine, PurchasePlan } from './purchase.ts';

/** What is bought for, and of what. */
export interface ToBuy extends Supplies {
  readonly takeoff: readonly TakeoffLine[];
}

/**
 * What the firm buys for a take-off, item by item at least cost: what is cut to length so that every piece is one unbroken
 * length, all else in the cheapest mix of packs. What the van holds comes first, and of what is cut only where a length
 * of it is long enough. This is the firm's outlay; what the job is charged is the bill's (`bill.ts`).
 *
 * @returns lines by counter, then in the take-off's order; none for what may only turn out to be needed.
 */
export function planPurchase({ takeoff, ...supplies }: ToBuy): PurchasePlan {
  return planOf(
    takeoff.filter(({ quantity }) => quantity > 0).map((line): PurchaseLine => lineForAll([line], supplies)),
  );
}

/** Lines as a plan: by counter, else in their order; what they come to, and whether all of it is proved. */
export function planOf(lines: readonly PurchaseLine[]): PurchasePlan {
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
