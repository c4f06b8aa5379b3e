import type { CutLength, ForSale, WholeLength } from './coil-sets.ts';
import { isOneLength } from './offers-of.ts';
import type { Offer } from './purchase.ts';

/** The lengths that are on offer, each with its offer, in the list's order. */
export interface Sold extends ForSale {
  readonly wholes: readonly (WholeLength & { readonly offer: Offer })[];
  readonly cuts: readonly (CutLength & { readonly offer: Offer })[];
}

/** What pieces can be cut from; left out is what another offer gives for no more. */
export function soldLengths(offers: readonly Offer[]): Sold {
  const wholes = offers
    .filter(isOneLength)
    .map((offer) => ({ offer, lengthMm: offer.quantity, millipence: offer.millipence }));
  const cuts = offers.flatMap((offer) => {
    const { quantity, least, millipence } = offer;
    return least === null ? [] : [{ offer, stepMm: quantity, leastSteps: least / quantity, millipence }];
  });
  return { wholes: withoutWorse(wholes, isBetterWhole), cuts: withoutWorse(cuts, isBetterCut) };
}

/** Of two that are each as good as the other, the first listed stays. */
function withoutWorse<T>(list: readonly T[], isBetter: (one: T, other: T) => boolean): readonly T[] {
  return list.filter((one, i) =>
    list.every((other, k) => k === i || !isBetter(other, one) || (isBetter(one, other) && k > i)),
  );
}

const isBetterWhole = (one: WholeLength, other: WholeLength): boolean =>
  one.lengthMm >= other.lengthMm && one.millipence <= other.millipence;

/** Whether every length can be cut of one for no more than of the other: by steps that make up the other's. */
function isBetterCut(one: CutLength, other: CutLength): boolean {
  const inOther = other.stepMm / one.stepMm;
  return (
    Number.isInteger(inOther) &&
    one.millipence * inOther <= other.millipence &&
    one.leastSteps * one.stepMm <= other.leastSteps * other.stepMm
  );
}
