import type { Stock } from '#model/job.ts';
import type { Price } from '#model/library.ts';
import type { TakeoffLine } from '../../takeoff/line.ts';
import { type CutPlan, cutPlan } from './cut-plan.ts';
import { boughtPacks, headOf, MM_A_METRE, proofOf } from './line-parts.ts';
import { type BoughtLength, nearMisses } from './near-misses.ts';
import { isOneLength, offersOf } from './offers-of.ts';
import { piecesToCut } from './pieces-of.ts';
import type { Offer, PurchaseLine } from './purchase.ts';

/** So many pieces of one item are promised to be cut at least cost; the search takes steps in plenty for them. */
export const PROVED_PIECES = 20;
const STEPS_FOR_PROOF = 5_000_000;
const STEPS_BEYOND = 1_000_000;
const STEPS_IF_QUICK = 2000;

/** What is cut to length: every piece in one, from the van first. */
export function cutLine(
  line: TakeoffLine,
  price: Price | undefined,
  held: readonly Stock[],
  isQuick: boolean,
): PurchaseLine {
  const offers = price === undefined ? [] : offersOf(price);
  const pieces = piecesToCut(line, longestSoldMm(offers));
  const plan = cutPlan(pieces, offers, vanLengthsMm(held), stepsFor(pieces.length, isQuick));
  const ofVan = plan.cuts.filter(({ from }) => isOfVan(from));
  const bought = plan.cuts.filter(({ from }) => !isOfVan(from));
  return {
    ...headOf(line, price),
    needed: metres(pieces),
    fromVan: metres(ofVan.flatMap(({ cuts }) => cuts)),
    ...boughtPacks(plan.bought, MM_A_METRE),
    leftOver: bought.reduce((sum, { leftMm }) => sum + leftMm, 0) / MM_A_METRE,
    cuts: plan.cuts,
    unserved: plan.unserved,
    nearMisses: nearMisses(pricedLengths(plan), offers),
    proof: proofOf(plan, price),
  };
}

/** Steps that a search of so many pieces may take. */
function stepsFor(pieces: number, isQuick: boolean): number {
  if (isQuick) return STEPS_IF_QUICK;
  return pieces <= PROVED_PIECES ? STEPS_FOR_PROOF : STEPS_BEYOND;
}

/** What may be put together is only cut up where nothing on the list is as long. */
function longestSoldMm(offers: readonly Offer[]): number {
  const lengths = offers.filter(isOneLength).map(({ quantity }) => quantity);
  const isCutToMeasure = offers.some(({ kind }) => kind === 'cut');
  return isCutToMeasure || lengths.length === 0 ? Number.POSITIVE_INFINITY : Math.max(...lengths);
}

/** The unbroken lengths that the van holds; a quantity of which no lengths are told is one. */
function vanLengthsMm(held: readonly Stock[]): readonly number[] {
  return held
    .flatMap(({ quantity, lengthsM }) => lengthsM ?? [quantity])
    .map((lengthM) => Math.floor(lengthM * MM_A_METRE + 1e-6))
    .filter((lengthMm) => lengthMm > 0);
}

const isOfVan = (from: string): boolean => from.startsWith('van/');

const metres = (pieces: readonly { readonly lengthMm: number }[]): number =>
  pieces.reduce((sum, { lengthMm }) => sum + lengthMm, 0) / MM_A_METRE;

/** The lengths of a plan that are bought, each with its price. */
function pricedLengths({ cuts, bought }: CutPlan): readonly BoughtLength[] {
  return cuts.flatMap(({ from, lengthMm, leftMm }): BoughtLength[] => {
    const of = bought.find(({ offer }) => from.startsWith(`${offer.key}/`));
    if (of === undefined) return [];
    const count = of.offer.kind === 'cut' ? of.count : 1;
    return [{ lengthMm, leftMm, millipence: of.offer.millipence * count }];
  });
}
