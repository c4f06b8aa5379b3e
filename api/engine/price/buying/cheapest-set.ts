import { bestFit } from './best-fit.ts';
import {
  bySet,
  type CoilSet,
  coilSets,
  cutMillipence,
  type ForSale,
  leastMillipence,
  stepLonger,
  stepsFor,
} from './coil-sets.ts';
import { type CutBound, cutBound } from './cut-bound.ts';
import { type Filled, fillLengths, type SameLengths, type Steps } from './fill-coils.ts';

/** Pieces that are cut at one time, and the van's lengths for them. */
export interface CutList {
  /** The longest first, no length twice. */
  readonly pieces: readonly SameLengths[];
  /** Lengths in the van: they cost nothing. */
  readonly van: readonly SameLengths[];
}

/** Lists of which any one may be what is cut in the end, and what they may be cut from. */
export interface CutQuestion {
  /** At least one. */
  readonly lists: readonly CutList[];
  /** Every piece must fit something of it. */
  readonly forSale: ForSale;
}

/** A set with the ways in which the pieces of each list are cut from it and from the van. */
export interface CutAnswer {
  readonly set: CoilSet;
  /** List by list, by the order of `lengthsOf`. */
  readonly filled: readonly (readonly Filled[])[];
  /** No set costs less than this, thousandths of a penny. */
  readonly boundMillipence: number;
}

/** All lengths that a set and the van give for a list, in this order: the van's, the whole ones, the cut ones. */
export function lengthsOf(
  { van }: CutList,
  forSale: ForSale,
  { counts, steps }: CoilSet,
): readonly SameLengths[] {
  return [
    ...van,
    ...forSale.wholes.map(({ lengthMm }, i) => ({ lengthMm, count: counts[i] ?? 0 })),
    ...forSale.cuts.map(({ stepMm }, i) => ({
      lengthMm: stepMm * (steps[i] ?? 0),
      count: (steps[i] ?? 0) > 0 ? 1 : 0,
    })),
  ];
}

/** How hard one set is tried at most, of all the steps that there are. */
const SHARE_OF_STEPS = 1 / 4;
/** So many sets at most are tried that the steps do not suffice to decide. */
const MOST_UNDECIDED = 60;

/** Where there are too many sets up to what is known, only those are tried that exceed the least by so much of the rest. */
const SHARES_OF_EXCESS = [1, 1 / 8, 1 / 64, 1 / 512];

/** A list with what can be told of it before anything is cut. */
interface Bounded {
  readonly list: CutList;
  /** Its place among the lists. */
  readonly place: number;
  readonly bound: CutBound;
  /** What must be bought for it at least, mm. */
  readonly neededMm: number;
  /** What nothing that serves it costs less than. */
  readonly millipence: number;
}

/**
 * The cheapest set from which every piece of every list is cut in one, by `bySet` the first of them; each list has the set
 * for itself, for only one of them comes true. Sets are tried in that order, one cut length a step longer each time, so
 * the first from which all can be cut is it, and what was tried before bounds it.
 *
 * One cut length of a kind is enough for several lists as it is for one: two cost no less than one as long as both, from
 * which whatever is cut from them can be cut.
 *
 * @param mostSteps how many steps the search may take; where they run out, the best that is known, and a bound below it.
 */
export function cheapestSet(question: CutQuestion, mostSteps: number): CutAnswer {
  const { forSale, lists } = question;
  const pieces = Math.max(...lists.map(pieceCount));
  // The hardest comes first: what serves it not serves none.
  const bounded = lists
    .map((list, place) => boundedList(list, place, forSale))
    .toSorted((a, b) => b.millipence - a.millipence || b.neededMm - a.neededMm || a.place - b.place);
  const [hardest] = bounded;
  if (hardest === undefined) throw new Error('No list of pieces to cut was asked about.');
  const totalMm = Math.max(...bounded.map(({ bound }) => bound.fittingMm(Number.POSITIVE_INFINITY)));
  const { neededMm, bound } = hardest;
  const toHold = { neededMm, pieces, totalMm, bound };
  const known = quickAnswer(question, pieces);
  const least = hardest.millipence;
  for (const share of SHARES_OF_EXCESS) {
    const mostMillipence = least + Math.floor((known.set.millipence - least) * share);
    const sets = coilSets(forSale, { ...toHold, mostMillipence });
    if (sets !== null) return firstThatServes(question, { sets, mostMillipence, known, bounded, mostSteps });
  }
  return { ...known, boundMillipence: least };
}

function boundedList(list: CutList, place: number, forSale: ForSale): Bounded {
  const { pieces, van } = list;
  const bound = cutBound(pieces);
  const fillMm = van.reduce((sum, { lengthMm, count }) => sum + bound.filledMm(lengthMm) * count, 0);
  const vanMm = Math.min(fillMm, bound.fittingMm(van.at(-1)?.lengthMm ?? 0));
  const neededMm = bound.fittingMm(Number.POSITIVE_INFINITY) - vanMm;
  return { list, place, bound, neededMm, millipence: leastMillipence(forSale, { neededMm, bound }) };
}

const pieceCount = ({ pieces }: CutList): number => pieces.reduce((sum, { count }) => sum + count, 0);

/** Sets to be tried, in order. */
interface ToTry {
  readonly sets: readonly CoilSet[];
  /** All sets up to this cost are there. */
  readonly mostMillipence: number;
  readonly known: Answer;
  /** The hardest list first. */
  readonly bounded: readonly Bounded[];
  readonly mostSteps: number;
}

function firstThatServes(
  question: CutQuestion,
  { sets, mostMillipence, known, bounded, mostSteps }: ToTry,
): CutAnswer {
  const steps: Steps = { left: mostSteps };
  const queue = [...sets];
  let best = known;
  let undecided = Number.POSITIVE_INFINITY;
  let spent = 0;
  for (let at = 0; at < queue.length && spent <= MOST_UNDECIDED; at++) {
    const set = queue[at] as CoilSet;
    const quick = withCutAfter(question, set);
    if (quick !== null && bySet(quick.set, best.set) < 0) best = quick;
    if (bySet(set, best.set) >= 0 || set.millipence > mostMillipence) break;
    const filled = fillAll(question, set, bounded, steps);
    if (filled !== null && filled !== 'spent') return answered({ set, filled }, undecided);
    if (filled === 'spent') {
      undecided = Math.min(undecided, set.millipence);
      spent += 1;
    }
    const longer = stepLonger(set, question.forSale);
    if (longer !== null) insert(queue, longer, at + 1);
  }
  // What costs more than all that was tried is not decided either.
  return answered(best, Math.min(undecided, mostMillipence));
}

const answered = (answer: Answer, undecided: number): CutAnswer => ({
  ...answer,
  boundMillipence: Math.min(undecided, answer.set.millipence),
});

type Answer = Omit<CutAnswer, 'boundMillipence'>;

/** Puts a set into its place among sets that are in order from a place on. */
function insert(queue: CoilSet[], set: CoilSet, begin: number): void {
  let [from, to] = [begin, queue.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    if (bySet(queue[middle] as CoilSet, set) < 0) from = middle + 1;
    else to = middle;
  }
  queue.splice(from, 0, set);
}

/** Cuts every list from a set and the van; null as soon as one cannot be cut. */
function fillAll(
  { lists, forSale }: CutQuestion,
  set: CoilSet,
  bounded: readonly Bounded[],
  steps: Steps,
): readonly (readonly Filled[])[] | null | 'spent' {
  const filled: (readonly Filled[])[] = lists.map(() => []);
  if (!bounded.every((one) => couldHold(one, lengthsOf(one.list, forSale, set)))) return null;
  let isSpent = false;
  for (const { list, place, bound } of bounded) {
    const one = fillWithin(list, lengthsOf(list, forSale, set), bound, steps);
    if (one === null) return null;
    if (one === 'spent') isSpent = true;
    else filled[place] = one;
  }
  return isSpent ? 'spent' : filled;
}

/** Whether the lengths that there are could hold a list by the most that its pieces fill of each. */
function couldHold({ bound }: Bounded, lengths: readonly SameLengths[]): boolean {
  const heldMm = lengths.reduce((sum, { lengthMm, count }) => sum + bound.filledMm(lengthMm) * count, 0);
  return heldMm >= bound.fittingMm(Number.POSITIVE_INFINITY);
}

/** Cuts all pieces of a list from the lengths that there are, the shorter ones tried first. */
function fillWithin(
  { pieces }: CutList,
  lengths: readonly SameLengths[],
  bound: CutBound,
  steps: Steps,
): readonly Filled[] | null | 'spent' {
  if (steps.left <= 0) return 'spent';
  const tried = lengths
    .map(({ lengthMm, count }, place) => ({ lengthMm: bound.filledMm(lengthMm), count, place }))
    .filter(({ lengthMm, count }) => lengthMm > 0 && count > 0)
    .toSorted((a, b) => a.lengthMm - b.lengthMm || a.place - b.place);
  const share = Math.ceil(steps.left * SHARE_OF_STEPS);
  const ofShare: Steps = { left: share };
  const filled = fillLengths(pieces, tried, ofShare);
  steps.left -= share - Math.max(0, ofShare.left);
  if (filled === null || filled === 'spent') return filled;
  return filled.map(({ length, takes }) => ({ length: tried[length]?.place ?? length, takes }));
}

/** What the quick way makes of a set: the pieces that find no place in it come from the first cut length. */
function withCutAfter({ lists, forSale }: CutQuestion, set: CoilSet): Answer | null {
  const [cut] = forSale.cuts;
  const without = { ...set, steps: set.steps.map((steps, i) => (i === 0 ? 0 : steps)) };
  const fitted = lists.map((list) => {
    const { filled, left } = bestFit(list.pieces, lengthsOf(list, forSale, without));
    const leftMm = list.pieces.reduce((sum, { lengthMm }, i) => sum + lengthMm * (left[i] ?? 0), 0);
    return { filled, left, leftMm, place: list.van.length + forSale.wholes.length };
  });
  const leftMm = Math.max(...fitted.map((one) => one.leftMm));
  if (cut === undefined) return leftMm === 0 ? { set, filled: fitted.map(({ filled }) => filled) } : null;
  const steps = stepsFor(cut, leftMm);
  const millipence = set.millipence + cutMillipence(cut, steps) - cutMillipence(cut, set.steps[0] ?? 0);
  return {
    set: { ...set, steps: [steps, ...set.steps.slice(1)], millipence },
    filled: fitted.map((one) =>
      one.leftMm === 0 ? one.filled : [...one.filled, { length: one.place, takes: one.left }],
    ),
  };
}

/** A first answer: everything cut to measure, or everything from one kind of whole length. */
function quickAnswer(question: CutQuestion, count: number): Answer {
  const { forSale, lists } = question;
  const none = { counts: forSale.wholes.map(() => 0), steps: forSale.cuts.map(() => 0), millipence: 0 };
  const ofOneKind = forSale.wholes.flatMap(({ millipence }, kind): Answer[] => {
    const whole = { ...none, counts: none.counts.map((_, i) => (i === kind ? count : 0)) };
    const answer = withCutAfter(question, whole);
    if (answer === null) return [];
    const used = mostUsed(lists, answer.filled, kind);
    const paid = answer.set.millipence + used * millipence;
    return [
      {
        ...answer,
        set: { ...answer.set, counts: none.counts.map((_, i) => (i === kind ? used : 0)), millipence: paid },
      },
    ];
  });
  const allCut = withCutAfter(question, none);
  if (count === 0) return { set: none, filled: lists.map(() => []) };
  const answers = allCut === null ? ofOneKind : [allCut, ...ofOneKind];
  const [first] = answers.toSorted((a, b) => bySet(a.set, b.set));
  if (first === undefined) throw new Error(`No length on sale holds the longest of ${count} pieces.`);
  return first;
}

/**
 * How many lengths of a kind, by its place among what is sold, something is cut from: in the list that takes the most of
 * them.
 */
export function mostUsed(
  lists: readonly CutList[],
  filled: readonly (readonly Filled[])[],
  kind: number,
): number {
  const used = lists.map(
    ({ van }, i) => filled[i]?.filter(({ length }) => length === van.length + kind).length ?? 0,
  );
  return Math.max(0, ...used);
}
