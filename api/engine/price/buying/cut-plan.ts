import { type CutAnswer, type CutQuestion, cheapestSet, lengthsOf } from './cheapest-set.ts';
import type { Filled, SameLengths } from './fill-coils.ts';
import { isOneLength } from './offers-of.ts';
import type { CutPiece } from './pieces-of.ts';
import type { CutFrom, Offer } from './purchase.ts';
import { type Sold, soldLengths } from './sold-lengths.ts';
import { type VanLength, waysHeldBack } from './van-lengths.ts';

/** How the pieces of one item are bought and cut. */
export interface CutPlan {
  readonly bought: readonly { readonly offer: Offer; readonly count: number }[];
  /** The van's lengths, then coils, then cut ones. */
  readonly cuts: readonly CutFrom[];
  readonly unserved: readonly CutPiece[];
  readonly millipence: number;
  readonly boundMillipence: number;
}

/**
 * The cheapest lengths from which every piece is cut in one, after the van's lengths, which cost nothing. Pieces that
 * nothing on the list is long enough for come from the van as far as they fit there; the rest are named.
 *
 * @param pieces as `piecesToCut` gives them.
 * @param vanMm unbroken lengths in the van.
 * @param mostSteps how many steps the search may take.
 */
export function cutPlan(
  pieces: readonly CutPiece[],
  offers: readonly Offer[],
  vanMm: readonly number[],
  mostSteps: number,
): CutPlan {
  const sold = soldLengths(offers);
  const longestMm =
    sold.cuts.length > 0
      ? Number.POSITIVE_INFINITY
      : Math.max(0, ...sold.wholes.map(({ lengthMm }) => lengthMm));
  const tooLong = pieces.filter(({ lengthMm }) => lengthMm > longestMm);
  const rest = pieces.filter(({ lengthMm }) => lengthMm <= longestMm);
  const { ways, areAll } = waysHeldBack(tooLong, vanMm);
  const plans = ways.map(({ van, unserved }) => {
    const question = questionOf(
      rest,
      sold,
      van.map(({ roomMm }) => roomMm),
    );
    const answer = cheapestSet(question, mostSteps);
    const { boundMillipence } = answer;
    return { ...planOf({ pieces: rest, van, sold, question, answer }), unserved, boundMillipence };
  });
  const [best] = plans.toSorted((a, b) => a.millipence - b.millipence);
  if (best === undefined) throw new Error(`No way to cut ${pieces.length} pieces was looked at.`);
  // Where not every way was looked at, none pays less than with the whole van free for the rest.
  const bounds = areAll ? plans : [cheapestSet(questionOf(rest, sold, vanMm), mostSteps)];
  const boundMillipence = Math.min(best.millipence, ...bounds.map((one) => one.boundMillipence));
  return { ...best, boundMillipence };
}

function questionOf(pieces: readonly CutPiece[], sold: Sold, vanMm: readonly number[]): CutQuestion {
  return {
    pieces: sameLengths(pieces.map(({ lengthMm }) => lengthMm)).toReversed(),
    van: sameLengths(vanMm),
    forSale: sold,
  };
}

/** Lengths counted, the shortest first. */
function sameLengths(lengthsMm: readonly number[]): readonly SameLengths[] {
  const counts = new Map<number, number>();
  for (const lengthMm of lengthsMm) counts.set(lengthMm, (counts.get(lengthMm) ?? 0) + 1);
  return [...counts]
    .map(([lengthMm, count]) => ({ lengthMm, count }))
    .toSorted((a, b) => a.lengthMm - b.lengthMm);
}

interface Answered {
  readonly pieces: readonly CutPiece[];
  readonly van: readonly VanLength[];
  readonly sold: Sold;
  readonly question: CutQuestion;
  readonly answer: CutAnswer;
}

function planOf(answered: Answered): Pick<CutPlan, 'bought' | 'cuts' | 'millipence'> {
  const { sold, question, answer } = answered;
  const filled = answer.filled.toSorted((a, b) => a.length - b.length);
  const taken = withCauses(answered, filled);
  const fromVan = filled.filter(({ length }) => length < question.van.length).length;
  const bought = boughtOf(answered, filled);
  const lengths = lengthsOf(question, answer.set);
  const keys = [...sold.wholes, ...sold.cuts].map(({ offer }) => offer.key);
  const used = new Map<number, number>();
  const ofBought = filled.slice(fromVan).map(({ length }, i): CutFrom => {
    const nth = (used.get(length) ?? 0) + 1;
    used.set(length, nth);
    const from = `${keys[length - question.van.length] ?? ''}/${nth}`;
    return cutFrom(from, lengths[length]?.lengthMm ?? 0, taken[fromVan + i] ?? []);
  });
  return {
    bought: bought.map(({ offer, count }) => ({ offer, count })),
    cuts: [...vanCuts(answered, filled.slice(0, fromVan), taken), ...ofBought],
    millipence: bought.reduce((sum, { millipence }) => sum + millipence, 0),
  };
}

const cutFrom = (from: string, lengthMm: number, cuts: readonly CutPiece[]): CutFrom => ({
  from,
  lengthMm,
  cuts,
  leftMm: cuts.reduce((restMm, cut) => restMm - cut.lengthMm, lengthMm),
});

/** The pieces by name that each length gives. */
function withCauses(
  { pieces, question }: Answered,
  filled: readonly Filled[],
): readonly (readonly CutPiece[])[] {
  const waiting = question.pieces.map(({ lengthMm }) =>
    pieces.filter((piece) => piece.lengthMm === lengthMm),
  );
  return filled.map(({ takes }) => takes.flatMap((count, i) => waiting[i]?.splice(0, count) ?? []));
}

/** What is bought: a length that nothing is cut from is not; of a cut one the steps are. */
function boughtOf({ sold, question, answer }: Answered, filled: readonly Filled[]) {
  return [...sold.wholes, ...sold.cuts].flatMap(({ offer, millipence }, i) => {
    const used = filled.filter(({ length }) => length === question.van.length + i).length;
    const steps = isOneLength(offer) ? 1 : (answer.set.steps[i - sold.wholes.length] ?? 0);
    const count = used * steps;
    return count === 0 ? [] : [{ offer, count, millipence: millipence * count }];
  });
}

/** What is cut from the van's lengths, in the van's order: what was held back for them, and what the plan adds. */
function vanCuts(
  { van, question }: Answered,
  filled: readonly Filled[],
  taken: readonly (readonly CutPiece[])[],
): readonly CutFrom[] {
  const added = new Map<VanLength, readonly CutPiece[]>();
  filled.forEach(({ length }, i) => {
    const free = van.find((one) => one.roomMm === question.van[length]?.lengthMm && !added.has(one));
    if (free !== undefined) added.set(free, taken[i] ?? []);
  });
  return van.flatMap((one, place) => {
    const cuts = [...one.cuts, ...(added.get(one) ?? [])];
    return cuts.length === 0 ? [] : [cutFrom(`van/${place + 1}`, one.lengthMm, cuts)];
  });
}
