import type { Stock } from '#model/job.ts';
import type { Price } from '#model/library.ts';
import type { TakeoffLine } from '../../takeoff/line.ts';
import { QUANTITY_PLACES } from '../bought.ts';
import { decimalOf, exactOf, minus } from '../exact.ts';
import { type CutPlan, cutPlans } from './cut-plan.ts';
import { boughtPacks, causesOf, headOf, MM_A_METRE, proofOf } from './line-parts.ts';
import { type BoughtLength, nearMisses } from './near-misses.ts';
import { isOneLength, offersOf } from './offers-of.ts';
import { type CutPiece, piecesToCut } from './pieces-of.ts';
import type { Offer, PurchaseLine } from './purchase.ts';

/** So many pieces of one item are promised to be cut at least cost; the search takes steps in plenty for them. */
export const PROVED_PIECES = 20;
const STEPS_FOR_PROOF = 5_000_000;
const STEPS_BEYOND = 1_000_000;
const STEPS_IF_QUICK = 2000;

/**
 * What is cut to length: every piece in one, from the van first; for several cases so that each of them could be cut.
 *
 * @param lines the same item in every case that is bought for, at least one; the cut list is of the first.
 */
export function cutLine(
  lines: readonly [TakeoffLine, ...TakeoffLine[]],
  price: Price | undefined,
  held: readonly Stock[],
  isQuick: boolean,
): PurchaseLine {
  const [line] = lines;
  const offers = price === undefined ? [] : offersOf(price);
  const longestMm = longestSoldMm(offers);
  const all = lines.map((one) => piecesToCut(one, longestMm));
  const lists = listsToCut(all, longestToHaveMm(offers));
  const most = Math.max(...lists.map((pieces) => pieces.length));
  const plans = cutPlans(lists, { offers, vanMm: vanLengthsMm(held) }, stepsFor(most, isQuick));
  const { cuts, unserved } = plans.lists[0] ?? { cuts: [], unserved: [] };
  const ofVan = cuts.filter(({ from }) => isOfVan(from));
  const packs = boughtPacks(plans.bought, MM_A_METRE);
  const fromBought = metres(cuts.filter(({ from }) => !isOfVan(from)).flatMap((length) => length.cuts));
  return {
    ...headOf(line, price),
    causes: causesOf(lines),
    needed: Math.max(...all.map(metres)),
    fromVan: metres(ofVan.flatMap((length) => length.cuts)),
    ...packs,
    leftOver: decimalOf(minus(exactOf(packs.boughtQuantity), exactOf(fromBought)), QUANTITY_PLACES),
    cuts,
    unserved,
    // What a shorter length would have saved is told where there is one list to shorten.
    nearMisses: lists.length === 1 ? nearMisses(pricedLengths({ cuts, bought: plans.bought }), offers) : [],
    proof: proofOf(plans, price),
  };
}

/**
 * The lists that are worth asking about: the first, whose cut list is shown, and those that no other makes needless. What
 * a list with the longer piece in every place is cut from, the other can be cut from.
 */
function listsToCut(
  all: readonly (readonly CutPiece[])[],
  longestMm: number,
): readonly (readonly CutPiece[])[] {
  const [first = [], ...others] = all;
  const asked = others.filter(
    (list, i) =>
      !isWithin(list, first, longestMm) &&
      !others.some(
        (other, k) =>
          k !== i && isWithin(list, other, longestMm) && (k < i || !isWithin(other, list, longestMm)),
      ),
  );
  return [first, ...asked];
}

/** Whether a list is no harder to cut than another: piece by piece no longer. Pieces are in order of length. */
function isWithin(list: readonly CutPiece[], other: readonly CutPiece[], longestMm: number): boolean {
  // What is too long to be bought leaves its place to nothing.
  if (other.some(({ lengthMm }) => lengthMm > longestMm)) return false;
  return (
    list.length <= other.length && list.every(({ lengthMm }, i) => lengthMm <= (other[i]?.lengthMm ?? 0))
  );
}

/** Steps that a search of so many pieces may take. */
function stepsFor(pieces: number, isQuick: boolean): number {
  if (isQuick) return STEPS_IF_QUICK;
  return pieces <= PROVED_PIECES ? STEPS_FOR_PROOF : STEPS_BEYOND;
}

/** What may be put together is only cut up where nothing on the list is as long. */
export function longestSoldMm(offers: readonly Offer[]): number {
  const lengths = offers.filter(isOneLength).map(({ quantity }) => quantity);
  const isCutToMeasure = offers.some(({ kind }) => kind === 'cut');
  return isCutToMeasure || lengths.length === 0 ? Number.POSITIVE_INFINITY : Math.max(...lengths);
}

/** The longest piece that can be bought. */
const longestToHaveMm = (offers: readonly Offer[]): number =>
  Math.max(0, ...offers.map(({ kind, quantity }) => (kind === 'cut' ? Number.POSITIVE_INFINITY : quantity)));

/** The unbroken lengths that the van holds; a quantity of which no lengths are told is one. */
export function vanLengthsMm(held: readonly Stock[]): readonly number[] {
  return held
    .flatMap(({ quantity, lengthsM }) => lengthsM ?? [quantity])
    .map((lengthM) => Math.floor(lengthM * MM_A_METRE + 1e-6))
    .filter((lengthMm) => lengthMm > 0);
}

/** Whether a length that something is cut from is the van's. */
export const isOfVan = (from: string): boolean => from.startsWith('van/');

/** Lengths together, m. */
export const metres = (pieces: readonly { readonly lengthMm: number }[]): number =>
  pieces.reduce((sum, { lengthMm }) => sum + lengthMm, 0) / MM_A_METRE;

/** The lengths of a plan that are bought, each with its price. */
function pricedLengths({ cuts, bought }: Pick<CutPlan, 'cuts' | 'bought'>): readonly BoughtLength[] {
  return cuts.flatMap(({ from, lengthMm, leftMm }): BoughtLength[] => {
    const of = bought.find(({ offer }) => from.startsWith(`${offer.key}/`));
    if (of === undefined) return [];
    const count = of.offer.kind === 'cut' ? of.count : 1;
    return [{ lengthMm, leftMm, millipence: of.offer.millipence * count }];
  });
}
