import type { Stock } from '#model/job.ts';
import type { Price } from '#model/library.ts';
import type { TakeoffLine } from '../../takeoff/line.ts';
import { QUANTITY_PLACES } from '../bought.ts';
import { ceiling, decimalOf, exactOf, exactZero, minus, plus, times } from '../exact.ts';
import { boughtPacks, causesOf, headOf, MM_A_METRE, proofOf } from './line-parts.ts';
import { offersOf } from './offers-of.ts';
import { packMix } from './pack-mix.ts';
import type { Offer, PurchaseLine } from './purchase.ts';

/** Quantities that are no lengths are reckoned in thousandths. */
const SHARES = 1000;

/**
 * What is counted, weighed or used by the metre in any pieces: the van's stock as a sum, the rest in packs; for several
 * cases the most that any of them asks for.
 *
 * @param lines the same item in every case that is bought for, at least one.
 */
export function countedLine(
  lines: readonly [TakeoffLine, ...TakeoffLine[]],
  price: Price | undefined,
  held: readonly Stock[],
): PurchaseLine {
  const line = lines.reduce((most, one) => (one.quantity > most.quantity ? one : most));
  const inVan = held.reduce((sum, { quantity }) => plus(sum, exactOf(quantity)), exactZero);
  const fromVan = Math.min(decimalOf(inVan, QUANTITY_PLACES), line.quantity);
  const needed = ceiling(times(minus(exactOf(line.quantity), exactOf(fromVan)), exactOf(SHARES)));
  const listed = price === undefined ? [] : offersOf(price);
  const mix = packMix(
    needed,
    listed.map((offer) => inShares(offer, line.unit)),
  );
  const bought = mix.bought.map(({ offer, count }) => ({
    offer: listed.find(({ key }) => key === offer.key) ?? offer,
    count,
  }));
  const packs = boughtPacks(bought, line.unit === 'm' ? MM_A_METRE : 1);
  return {
    ...headOf(line, price),
    causes: causesOf(lines),
    needed: line.quantity,
    fromVan,
    ...packs,
    leftOver: price === undefined ? 0 : leftOver(packs.boughtQuantity, fromVan, line.quantity),
    cuts: [],
    unserved: [],
    nearMisses: [],
    proof: proofOf(mix, price),
  };
}

const leftOver = (bought: number, fromVan: number, needed: number): number =>
  decimalOf(minus(plus(exactOf(bought), exactOf(fromVan)), exactOf(needed)), QUANTITY_PLACES);

/** An offer in thousandths of its unit; what is sold by the metre is in mm as it is. */
function inShares(offer: Offer, unit: TakeoffLine['unit']): Offer {
  if (unit === 'm') return offer;
  const shares = (quantity: number) => Math.max(1, Math.round(quantity * SHARES));
  return {
    ...offer,
    quantity: shares(offer.quantity),
    least: offer.least === null ? null : shares(offer.least),
  };
}
