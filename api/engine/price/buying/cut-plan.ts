import { type CutAnswer, type CutQuestion, cheapestSet, lengthsOf } from './cheapest-set.ts';
import type { CutLength, WholeLength } from './coil-sets.ts';
import type { Filled, SameLengths } from './fill-coils.ts';
import { isOneLength } from './offers-of.ts';
import { CUT_STEP_MM, type CutPiece } from './pieces-of.ts';
import type { CutFrom, Offer } from './purchase.ts';

/** How the pieces of one item are bought and cut. */
export interface CutPlan {
  readonly bought: readonly { readonly offer: Offer; readonly count: number }[];
  readonly cuts: readonly CutFrom[];
  readonly unserved: readonly CutPiece[];
  readonly millipence: number;
  readonly boundMillipence: number;
}

/** What a cut length that nobody sells stands in for: a piece that is longer than anything on the list. */
const NOT_SOLD = null;

type Sold<T> = T & { readonly offer: Offer | typeof NOT_SOLD };

/**
 * The cheapest lengths from which every piece is cut in one, after the van's lengths, which cost nothing. Pieces that
 * nothing is long enough for are named, and as few mm of them as can be.
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
  const wholes = wholeLengths(offers);
  const cuts = withStandIn(cutLengths(offers), wholes, pieces);
  const question = {
    pieces: sameLengths(pieces.map(({ lengthMm }) => lengthMm)).toReversed(),
    van: sameLengths(vanMm),
    forSale: { wholes, cuts },
  };
  if (pieces.length === 0) return { bought: [], cuts: [], unserved: [], millipence: 0, boundMillipence: 0 };
  const answer = cheapestSet(question, mostSteps);
  return planOf({ pieces, vanMm, wholes, cuts, question, answer });
}

function wholeLengths(offers: readonly Offer[]): readonly Sold<WholeLength>[] {
  const sold = offers
    .filter(isOneLength)
    .map((offer) => ({ offer, lengthMm: offer.quantity, millipence: offer.millipence }));
  // One that is no longer than another and no cheaper is never the better buy.
  return sold.filter((one, i) =>
    sold.every(
      (other, k) =>
        k === i ||
        other.lengthMm < one.lengthMm ||
        other.millipence > one.millipence ||
        (other.lengthMm === one.lengthMm && other.millipence === one.millipence && k > i),
    ),
  );
}

function cutLengths(offers: readonly Offer[]): readonly Sold<CutLength>[] {
  return offers.flatMap((offer) =>
    offer.least === null
      ? []
      : [
          {
            offer,
            stepMm: offer.quantity,
            leastSteps: offer.least / offer.quantity,
            millipence: offer.millipence,
          },
        ],
  );
}

/** With what stands for pieces that nobody sells: dearer than all the rest, so that it is the last that is taken. */
function withStandIn(
  cuts: readonly Sold<CutLength>[],
  wholes: readonly Sold<WholeLength>[],
  pieces: readonly CutPiece[],
): readonly Sold<CutLength>[] {
  const longestMm = Math.max(0, ...wholes.map(({ lengthMm }) => lengthMm));
  if (cuts.length > 0 || pieces.every(({ lengthMm }) => lengthMm <= longestMm)) return cuts;
  const dearest = Math.max(0, ...wholes.map(({ millipence }) => millipence));
  const millipence = dearest * pieces.length + 1;
  return [{ offer: NOT_SOLD, stepMm: CUT_STEP_MM, leastSteps: 1, millipence }];
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
  readonly vanMm: readonly number[];
  readonly wholes: readonly Sold<WholeLength>[];
  readonly cuts: readonly Sold<CutLength>[];
  readonly question: CutQuestion;
  readonly answer: CutAnswer;
}

function planOf(answered: Answered): CutPlan {
  const { wholes, cuts, question, answer } = answered;
  const sold = [...wholes, ...cuts];
  const filled = answer.filled.toSorted((a, b) => a.length - b.length);
  const taken = withCauses(answered, filled);
  const isServed = ({ length }: Filled): boolean => {
    const place = length - question.van.length;
    return place < 0 || sold[place]?.offer !== NOT_SOLD;
  };
  const lengths = lengthsOf(question, answer.set);
  const names = nameGiver(answered);
  const bought = sold.flatMap(({ offer, millipence }, i) => {
    const used = filled.filter(({ length }) => length === question.van.length + i).length;
    // A length that nothing is cut from is not bought; of a cut length it is the steps that are paid.
    const count = i < wholes.length ? used : used * (answer.set.steps[i - wholes.length] ?? 0);
    return count === 0 ? [] : [{ offer, count, millipence: millipence * count }];
  });
  const paid = (isSold: boolean) =>
    bought
      .filter(({ offer }) => (offer !== NOT_SOLD) === isSold)
      .reduce((sum, { millipence }) => sum + millipence, 0);
  return {
    bought: bought.flatMap(({ offer, count }) => (offer === NOT_SOLD ? [] : [{ offer, count }])),
    cuts: filled.flatMap((one, i): CutFrom[] => {
      if (!isServed(one)) return [];
      const lengthMm = lengths[one.length]?.lengthMm ?? 0;
      const cut = taken[i] ?? [];
      const leftMm = cut.reduce((restMm, piece) => restMm - piece.lengthMm, lengthMm);
      return [{ from: names(one.length), lengthMm, cuts: cut, leftMm }];
    }),
    unserved: filled.flatMap((one, i) => (isServed(one) ? [] : (taken[i] ?? []))),
    millipence: paid(true),
    boundMillipence: Math.max(0, answer.boundMillipence - paid(false)),
  };
}

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

/** Gives each length its name: the van's by their place in the van, all others by the offer and a number. */
function nameGiver({ vanMm, wholes, cuts, question }: Answered): (length: number) => string {
  const sold = [...wholes, ...cuts];
  const used = new Map<number, number>();
  return (length) => {
    const nth = used.get(length) ?? 0;
    used.set(length, nth + 1);
    const held = question.van[length];
    if (held === undefined) return `${sold[length - question.van.length]?.offer?.key ?? ''}/${nth + 1}`;
    const places = vanMm.flatMap((lengthMm, i) => (lengthMm === held.lengthMm ? [i] : []));
    return `van/${(places[nth] ?? 0) + 1}`;
  };
}
