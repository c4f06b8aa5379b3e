import {
  type CutAnswer,
  type CutList,
  type CutQuestion,
  cheapestSet,
  lengthsOf,
  mostUsed,
} from './cheapest-set.ts';
import type { Filled, SameLengths } from './fill-coils.ts';
import { isOneLength } from './offers-of.ts';
import type { CutPiece } from './pieces-of.ts';
import type { CutFrom, Offer } from './purchase.ts';
import { type Sold, soldLengths } from './sold-lengths.ts';
import { type HeldBack, MOST_WAYS, type VanLength, waysHeldBack } from './van-lengths.ts';

/** What one list of pieces is cut from. */
export interface ListCut {
  /** The van's lengths, then coils, then cut ones. */
  readonly cuts: readonly CutFrom[];
  /** Too long for the list and the van. */
  readonly unserved: readonly CutPiece[];
}

/** What is bought for the pieces of one item, and what it costs. */
interface Outlay {
  readonly bought: readonly { readonly offer: Offer; readonly count: number }[];
  readonly millipence: number;
  readonly boundMillipence: number;
}

/** How the pieces of one item are bought and cut. */
export interface CutPlan extends ListCut, Outlay {}

/** How one item is bought for several lists of pieces of which only one will be cut, and how each of them is. */
export interface CutPlans extends Outlay {
  /** By the order of the lists. */
  readonly lists: readonly ListCut[];
}

/** What pieces are cut from. */
export interface CutMaterial {
  readonly offers: readonly Offer[];
  /** Unbroken lengths in the van. */
  readonly vanMm: readonly number[];
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
  const { lists, ...outlay } = cutPlans([pieces], { offers, vanMm }, mostSteps);
  return { ...outlay, cuts: lists[0]?.cuts ?? [], unserved: lists[0]?.unserved ?? [] };
}

/**
 * The same for several lists of which any one may come true: the cheapest lengths from which each of them could be cut,
 * each with all of the lengths and of the van for itself. For one list it is the plan of that list.
 *
 * @param lists at least one.
 */
export function cutPlans(
  lists: readonly (readonly CutPiece[])[],
  { offers, vanMm }: CutMaterial,
  mostSteps: number,
): CutPlans {
  const sold = soldLengths(offers);
  const longestMm =
    sold.cuts.length > 0
      ? Number.POSITIVE_INFINITY
      : Math.max(0, ...sold.wholes.map(({ lengthMm }) => lengthMm));
  const rests = lists.map((pieces) => pieces.filter(({ lengthMm }) => lengthMm <= longestMm));
  const held = lists.map((pieces) =>
    waysHeldBack(
      pieces.filter(({ lengthMm }) => lengthMm > longestMm),
      vanMm,
    ),
  );
  const { choices, areAll } = oneWayEach(held);
  const plans = choices.map((ways) => {
    const question = questionOf(
      rests,
      sold,
      ways.map(({ van }) => van.map(({ roomMm }) => roomMm)),
    );
    const answer = cheapestSet(question, mostSteps);
    return planOf({ rests, ways, sold, question, answer });
  });
  const [best] = plans.toSorted((a, b) => a.millipence - b.millipence);
  if (best === undefined) throw new Error(`No way to cut ${lists.length} lists was looked at.`);
  const wholeVan = lists.map(() => vanMm);
  // Where not every way was looked at, none pays less than with the whole van free for the rest.
  const bounds = areAll ? plans : [cheapestSet(questionOf(rests, sold, wholeVan), mostSteps)];
  const boundMillipence = Math.min(best.millipence, ...bounds.map((one) => one.boundMillipence));
  return { ...best, boundMillipence };
}

/** Every choice of one way to hold back for each list; where those are too many, the first of each alone. */
function oneWayEach(held: readonly ReturnType<typeof waysHeldBack>[]): {
  readonly choices: readonly (readonly HeldBack[])[];
  readonly areAll: boolean;
} {
  const count = held.reduce((product, { ways }) => product * ways.length, 1);
  const areAll = count <= MOST_WAYS && held.every((one) => one.areAll);
  const chosen = areAll ? held.map(({ ways }) => ways) : held.map(({ ways }) => ways.slice(0, 1));
  const choices = chosen.reduce<readonly (readonly HeldBack[])[]>(
    (before, ways) => before.flatMap((some) => ways.map((way) => [...some, way])),
    [[]],
  );
  return { choices, areAll };
}

function questionOf(
  lists: readonly (readonly CutPiece[])[],
  forSale: Sold,
  vansMm: readonly (readonly number[])[],
): CutQuestion {
  return {
    lists: lists.map((pieces, i) => ({
      pieces: sameLengths(pieces.map(({ lengthMm }) => lengthMm)).toReversed(),
      van: sameLengths(vansMm[i] ?? []),
    })),
    forSale,
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
  /** The pieces of each list that are not held back for. */
  readonly rests: readonly (readonly CutPiece[])[];
  readonly ways: readonly HeldBack[];
  readonly sold: Sold;
  readonly question: CutQuestion;
  readonly answer: CutAnswer;
}

function planOf(answered: Answered): CutPlans {
  const { rests, ways, sold, question, answer } = answered;
  const bought = boughtOf(answered);
  const keys = [...sold.wholes, ...sold.cuts].map(({ offer }) => offer.key);
  return {
    bought: bought.map(({ offer, count }) => ({ offer, count })),
    millipence: bought.reduce((sum, { millipence }) => sum + millipence, 0),
    boundMillipence: answer.boundMillipence,
    lists: question.lists.map((list, i) => {
      const filled = (answer.filled[i] ?? []).toSorted((a, b) => a.length - b.length);
      const lengths = lengthsOf(list, question.forSale, answer.set);
      const way = ways[i] ?? { van: [], unserved: [] };
      const cut: CutByHand = { list, pieces: rests[i] ?? [], filled, lengths, keys, van: way.van };
      return { cuts: cutsOf(cut), unserved: way.unserved };
    }),
  };
}

/** One list with what is cut from which length. */
interface CutByHand {
  readonly list: CutList;
  readonly pieces: readonly CutPiece[];
  /** The van's first. */
  readonly filled: readonly Filled[];
  readonly lengths: readonly SameLengths[];
  /** Of what is sold. */
  readonly keys: readonly string[];
  readonly van: readonly VanLength[];
}

function cutsOf(cut: CutByHand): readonly CutFrom[] {
  const { list, filled, lengths, keys } = cut;
  const taken = withCauses(cut);
  const fromVan = filled.filter(({ length }) => length < list.van.length).length;
  const used = new Map<number, number>();
  const ofBought = filled.slice(fromVan).map(({ length }, i): CutFrom => {
    const nth = (used.get(length) ?? 0) + 1;
    used.set(length, nth);
    const from = `${keys[length - list.van.length] ?? ''}/${nth}`;
    return cutFrom(from, lengths[length]?.lengthMm ?? 0, taken[fromVan + i] ?? []);
  });
  return [...vanCuts(cut, filled.slice(0, fromVan), taken), ...ofBought];
}

const cutFrom = (from: string, lengthMm: number, cuts: readonly CutPiece[]): CutFrom => ({
  from,
  lengthMm,
  cuts,
  leftMm: cuts.reduce((restMm, cut) => restMm - cut.lengthMm, lengthMm),
});

/** The pieces by name that each length gives. */
function withCauses({ pieces, list, filled }: CutByHand): readonly (readonly CutPiece[])[] {
  const waiting = list.pieces.map(({ lengthMm }) => pieces.filter((piece) => piece.lengthMm === lengthMm));
  return filled.map(({ takes }) => takes.flatMap((count, i) => waiting[i]?.splice(0, count) ?? []));
}

/** What is bought: a length that nothing is cut from is not; of a cut one the steps are. */
function boughtOf({ sold, question, answer }: Answered) {
  return [...sold.wholes, ...sold.cuts].flatMap(({ offer, millipence }, i) => {
    const used = mostUsed(question.lists, answer.filled, i);
    const steps = isOneLength(offer) ? 1 : (answer.set.steps[i - sold.wholes.length] ?? 0);
    const count = used * steps;
    return count === 0 ? [] : [{ offer, count, millipence: millipence * count }];
  });
}

/** What is cut from the van's lengths, in the van's order: what was held back for them, and what the plan adds. */
function vanCuts(
  { van, list }: CutByHand,
  filled: readonly Filled[],
  taken: readonly (readonly CutPiece[])[],
): readonly CutFrom[] {
  const added = new Map<VanLength, readonly CutPiece[]>();
  filled.forEach(({ length }, i) => {
    const free = van.find((one) => one.roomMm === list.van[length]?.lengthMm && !added.has(one));
    if (free !== undefined) added.set(free, taken[i] ?? []);
  });
  return van.flatMap((one, place) => {
    const cuts = [...one.cuts, ...(added.get(one) ?? [])];
    return cuts.length === 0 ? [] : [cutFrom(`van/${place + 1}`, one.lengthMm, cuts)];
  });
}
