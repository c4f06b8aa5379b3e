import type { CutBound } from './cut-bound.ts';

/** A length that is sold whole. */
export interface WholeLength {
  readonly lengthMm: number;
  readonly millipence: number;
}

/** A length that is cut to measure: whole steps, at least so many where any are cut. */
export interface CutLength {
  readonly stepMm: number;
  readonly leastSteps: number;
  readonly millipence: number;
}

/** What may be bought, in the order of the list. */
export interface ForSale {
  readonly wholes: readonly WholeLength[];
  readonly cuts: readonly CutLength[];
}

/** Lengths that are bought together: so many of each whole one, and of each cut one so many steps (0: none). */
export interface CoilSet {
  readonly counts: readonly number[];
  readonly steps: readonly number[];
  readonly millipence: number;
}

/** Beyond so many sets none is proved to be the cheapest. */
const MOST_SETS = 20_000;

/** What the sets must hold. */
export interface ToHold {
  /** After what the van's lengths can take. */
  readonly neededMm: number;
  /** So many of a kind of length are tried at most. */
  readonly pieces: number;
  /** No cut length is tried that is longer than this asks for. */
  readonly totalMm: number;
  readonly bound: CutBound;
  /** Nothing dearer is wanted. */
  readonly mostMillipence: number;
}

/** The order in which sets are tried: the cheapest, then the one of fewest lengths, then more of what is listed first. */
export function bySet(a: CoilSet, b: CoilSet): number {
  return a.millipence - b.millipence || lengthCount(a) - lengthCount(b) || moreOfFirst(a, b);
}

function lengthCount({ counts, steps }: CoilSet): number {
  return counts.reduce((sum, count) => sum + count, 0) + steps.filter((count) => count > 0).length;
}

function moreOfFirst(a: CoilSet, b: CoilSet): number {
  const [ofA, ofB] = [a, b].map(({ counts, steps }) => [...counts, ...steps]);
  const at = (ofA ?? []).findIndex((count, i) => count !== ofB?.[i]);
  return at < 0 ? 0 : (ofB?.[at] ?? 0) - (ofA?.[at] ?? 0);
}

/** What steps of a cut length cost; none cost nothing. */
export const cutMillipence = ({ millipence }: CutLength, steps: number): number => millipence * steps;

/** Steps of a cut length that hold so much. */
export const stepsFor = ({ stepMm, leastSteps }: CutLength, neededMm: number): number =>
  neededMm <= 0 ? 0 : Math.max(leastSteps, Math.ceil(neededMm / stepMm));

/** The same set with the first cut length a step longer; null where nothing is cut. */
export function stepLonger(set: CoilSet, { cuts }: ForSale): CoilSet | null {
  const [cut] = cuts;
  if (cut === undefined) return null;
  const so = set.steps[0] ?? 0;
  const steps = Math.max(cut.leastSteps, so + 1);
  const millipence = set.millipence + cutMillipence(cut, steps) - cutMillipence(cut, so);
  return { ...set, steps: [steps, ...set.steps.slice(1)], millipence };
}

/**
 * Every set that could hold the pieces by their sum, each with the first cut length no longer than that asks for, in the
 * order in which they are tried. One of each cut length is enough: two cost no less than one as long as both.
 *
 * @returns null where there are too many.
 */
export function coilSets(forSale: ForSale, toHold: ToHold): readonly CoilSet[] | null {
  const choice = choiceOf(forSale, toHold);
  return choose(choice, 0, { millipence: 0, heldMm: 0, otherMm: 0 }) ? choice.sets.toSorted(bySet) : null;
}

/** What one kind of length can be bought of. */
interface Kind {
  /** Its place among the whole lengths, or among the cut ones after the first. */
  readonly place: number;
  readonly cut: CutLength | null;
  readonly millipence: number;
  /** The most that pieces fill of it, and what of all pieces fits it; of a cut length a step. */
  readonly filledMm: number;
  readonly fittingMm: number;
  /** The least that a mm can cost from this kind on, thousandths of a penny. */
  readonly leastRate: number;
}

/** Sets while they are chosen kind by kind. The lists of counts and steps change as it goes. */
interface Choice {
  readonly kinds: readonly Kind[];
  readonly cut: CutLength | undefined;
  readonly toHold: ToHold;
  readonly counts: number[];
  readonly otherSteps: number[];
  readonly sets: CoilSet[];
}

/** What was chosen so far: its price, what its whole lengths can hold and what its cut ones can. */
interface Chosen {
  readonly millipence: number;
  readonly heldMm: number;
  readonly otherMm: number;
}

function choiceOf(forSale: ForSale, toHold: ToHold): Choice {
  const [cut, ...otherCuts] = forSale.cuts;
  return {
    kinds: kindsOf(forSale, toHold.bound),
    cut,
    toHold,
    counts: forSale.wholes.map(() => 0),
    otherSteps: otherCuts.map(() => 0),
    sets: [],
  };
}

/** Whole lengths, the shorter first, so that what all up to one can hold is known; then the cut ones after the first. */
function kindsOf({ wholes, cuts }: ForSale, bound: CutBound): readonly Kind[] {
  const [cut, ...otherCuts] = cuts;
  const ofWholes = wholes
    .map(({ lengthMm, millipence }, place) => ({
      place,
      cut: null,
      millipence,
      filledMm: bound.filledMm(lengthMm),
      fittingMm: bound.fittingMm(lengthMm),
      lengthMm,
    }))
    .toSorted((a, b) => a.lengthMm - b.lengthMm);
  const ofCuts = otherCuts.map((other, place) => ({
    place,
    cut: other,
    millipence: other.millipence,
    filledMm: other.stepMm,
    fittingMm: 0,
  }));
  let leastRate = cut === undefined ? Number.POSITIVE_INFINITY : cut.millipence / cut.stepMm;
  return [...ofWholes, ...ofCuts]
    .toReversed()
    .map((kind) => {
      leastRate = Math.min(leastRate, kind.millipence / Math.max(1, kind.filledMm));
      return { ...kind, leastRate };
    })
    .toReversed();
}

/** Adds every set that begins with what was chosen of the kinds before this one; false where there are too many. */
function choose(choice: Choice, place: number, chosen: Chosen): boolean {
  const { kinds, toHold } = choice;
  const kind = kinds[place];
  if (kind === undefined) return close(choice, chosen);
  const restMm = toHold.neededMm - chosen.heldMm - chosen.otherMm;
  const leastRest = restMm > 0 ? Math.floor(restMm * kind.leastRate) : 0;
  if (chosen.millipence + leastRest > toHold.mostMillipence) return true;
  return kind.cut === null
    ? chooseWholes(choice, place, kind, chosen)
    : chooseCut(choice, place, kind, chosen);
}

function chooseWholes(choice: Choice, place: number, kind: Kind, chosen: Chosen): boolean {
  const { toHold, counts } = choice;
  for (let count = 0; count <= toHold.pieces; count++) {
    const millipence = chosen.millipence + count * kind.millipence;
    if (millipence > toHold.mostMillipence) break;
    counts[kind.place] = count;
    const heldMm = Math.min(chosen.heldMm + count * kind.filledMm, kind.fittingMm);
    if (!choose(choice, place + 1, { ...chosen, millipence, heldMm })) return false;
  }
  counts[kind.place] = 0;
  return true;
}

function chooseCut(choice: Choice, place: number, kind: Kind, chosen: Chosen): boolean {
  const { toHold, otherSteps } = choice;
  const cut = kind.cut as CutLength;
  // The van may take less than it could: so as many steps as all pieces would ask for.
  const most = stepsFor(cut, toHold.totalMm);
  for (let steps = 0; steps <= most; steps = Math.max(steps + 1, cut.leastSteps)) {
    const millipence = chosen.millipence + cutMillipence(cut, steps);
    if (millipence > toHold.mostMillipence) break;
    otherSteps[kind.place] = steps;
    const otherMm = chosen.otherMm + toHold.bound.filledMm(steps * cut.stepMm);
    if (!choose(choice, place + 1, { ...chosen, millipence, otherMm })) return false;
  }
  otherSteps[kind.place] = 0;
  return true;
}

/** Adds a set with the first cut length as long as the rest asks for, where it is not too dear. */
function close({ cut, toHold, counts, otherSteps, sets }: Choice, chosen: Chosen): boolean {
  const restMm = Math.max(0, toHold.neededMm - chosen.heldMm - chosen.otherMm);
  if (cut === undefined) {
    if (restMm === 0) sets.push({ counts: [...counts], steps: [], millipence: chosen.millipence });
    return sets.length <= MOST_SETS;
  }
  const steps = stepsFor(cut, restMm);
  const millipence = chosen.millipence + cutMillipence(cut, steps);
  if (millipence <= toHold.mostMillipence)
    sets.push({ counts: [...counts], steps: [steps, ...otherSteps], millipence });
  return sets.length <= MOST_SETS;
}

/** What no set that holds so much can cost less than, thousandths of a penny. */
export function leastMillipence(
  forSale: ForSale,
  { neededMm, bound }: Pick<ToHold, 'neededMm' | 'bound'>,
): number {
  const [first] = kindsOf(forSale, bound);
  const {
    cuts: [cut],
  } = forSale;
  const rate = first?.leastRate ?? (cut === undefined ? 0 : cut.millipence / cut.stepMm);
  return neededMm <= 0 || !Number.isFinite(rate) ? 0 : Math.floor(neededMm * rate);
}
