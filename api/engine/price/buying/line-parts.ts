import type { Price } from '#model/library.ts';
import type { TakeoffLine } from '../../takeoff/line.ts';
import { QUANTITY_PLACES } from '../bought.ts';
import { decimalOf, exactOf, exactZero, over, plus, times } from '../exact.ts';
import { roundHalfUpPence } from '../money.ts';
import type { BoughtPacks, Offer, Proof } from './purchase.ts';

/** Offers of what is sold by the metre are in mm. */
export const MM_A_METRE = 1000;

/** What a line of the plan says that the take-off and the price list say. */
export function headOf({ item, description, group, unit, causes }: TakeoffLine, price: Price | undefined) {
  return {
    item,
    description,
    group,
    unit,
    causes,
    counter: price?.counter ?? '',
    priced: price !== undefined,
  };
}

/** What causes an item in any of the cases that it is bought for, sorted. */
export const causesOf = (lines: readonly TakeoffLine[]): readonly string[] =>
  lines.length === 1
    ? (lines[0]?.causes ?? [])
    : [...new Set(lines.flatMap(({ causes }) => causes))].toSorted();

/** What is bought with its pence, and how much it is in the line's unit. */
export function boughtPacks(
  bought: readonly { readonly offer: Offer; readonly count: number }[],
  perUnit: number,
) {
  const packs = bought.map(
    ({ offer, count }): BoughtPacks => ({ offer, count, pence: penceOf(offer.millipence * count) }),
  );
  const quantity = packs.reduce(
    (sum, { offer, count }) => plus(sum, times(exactOf(offer.quantity), exactOf(count))),
    exactZero,
  );
  return {
    packs,
    boughtQuantity: decimalOf(over(quantity, exactOf(perUnit)), QUANTITY_PLACES),
    pence: packs.reduce((sum, { pence }) => sum + pence, 0),
  };
}

/** What an offer costs, rounded half up to whole pence. */
export const penceOf = (millipence: number): number =>
  roundHalfUpPence(over(exactOf(millipence), exactOf(1000)));

/** What is proved of a line's cost, to whole pence. */
export function proofOf(
  { millipence, boundMillipence }: { readonly millipence: number; readonly boundMillipence: number },
  price: Price | undefined,
): Proof {
  if (price === undefined) return { optimal: false, boundPence: 0, gap: null };
  if (boundMillipence >= millipence) return { optimal: true, boundPence: penceOf(millipence), gap: 0 };
  const gap = boundMillipence === 0 ? null : (millipence - boundMillipence) / boundMillipence;
  return { optimal: false, boundPence: penceOf(boundMillipence), gap };
}
