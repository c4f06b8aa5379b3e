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

/** Pieces to be cut, and what they may be cut from. */
export interface CutQuestion {
  /** The longest first, no length twice. */
  readonly pieces: readonly SameLengths[];
  /** Lengths in the van: they cost nothing. */
  readonly van: readonly SameLengths[];
  /** Every piece must fit something of it. */
  readonly forSale: ForSale;
}

/** A set with the way in which all pieces are cut from it and from the van. */
export interface CutAnswer {
  readonly set: CoilSet;
  /** By the order of `lengthsOf`. */
  readonly filled: readonly Filled[];
  /** No set costs less than this, thousandths of a penny. */
  readonly boundMillipence: number;
}

/** All lengths that a set and the van give, in this order: the van's, the whole ones, the cut ones. */
export function lengthsOf({ van, forSale }: CutQuestion, { counts, steps }: CoilSet): readonly SameLengths[] {
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

/**
 * The cheapest set from which every piece is cut in one, by `bySet` the first of them. Sets are tried in that order, one
 * cut length a step longer each time, so the first from which all can be cut is it, and what was tried before bounds it.
 *
 * @param mostSteps how many steps the search may take; where they run out, the best that is known, and a bound below it.
 */
export function cheapestSet(question: CutQuestion, mostSteps: number): CutAnswer {
  const { pieces, van, forSale } = question;
  const bound = cutBound(pieces);
  const fillMm = van.reduce((sum, { lengthMm, count }) => sum + bound.filledMm(lengthMm) * count, 0);
  const vanMm = Math.min(fillMm, bound.fittingMm(van.at(-1)?.lengthMm ?? 0));
  const neededMm = bound.fittingMm(Number.POSITIVE_INFINITY) - vanMm;
  const toHold = { neededMm, pieces: pieceCount(question), bound };
  const known = quickAnswer(question);
  const least = leastMillipence(forSale, toHold);
  for (const share of SHARES_OF_EXCESS) {
    const mostMillipence = least + Math.floor((known.set.millipence - least) * share);
    const sets = coilSets(forSale, { ...toHold, mostMillipence });
    if (sets !== null) return firstThatServes(question, { sets, mostMillipence, known, bound, mostSteps });
  }
  return { ...known, boundMillipence: least };
}

const pieceCount = ({ pieces }: CutQuestion): number => pieces.reduce((sum, { count }) => sum + count, 0);

/** Sets to be tried, in order. */
interface ToTry {
  readonly sets: readonly CoilSet[];
  /** All sets up to this cost are there. */
  readonly mostMillipence: number;
  readonly known: Answer;
  readonly bound: CutBound;
  readonly mostSteps: number;
}

function firstThatServes(
  question: CutQuestion,
  { sets, mostMillipence, known, bound, mostSteps }: ToTry,
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
    const filled = fillWithin(question, set, bound, steps);
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

/** Cuts all pieces from a set and the van, the shorter lengths tried first. */
function fillWithin(
  question: CutQuestion,
  set: CoilSet,
  bound: CutBound,
  steps: Steps,
): readonly Filled[] | null | 'spent' {
  if (steps.left <= 0) return 'spent';
  const tried = lengthsOf(question, set)
    .map(({ lengthMm, count }, place) => ({ lengthMm: bound.filledMm(lengthMm), count, place }))
    .filter(({ lengthMm, count }) => lengthMm > 0 && count > 0)
    .toSorted((a, b) => a.lengthMm - b.lengthMm || a.place - b.place);
  const share = Math.ceil(steps.left * SHARE_OF_STEPS);
  const ofShare: Steps = { left: share };
  const filled = fillLengths(question.pieces, tried, ofShare);
  steps.left -= share - Math.max(0, ofShare.left);
  if (filled === null || filled === 'spent') return filled;
  return filled.map(({ length, takes }) => ({ length: tried[length]?.place ?? length, takes }));
}

/** What the quick way makes of a set: the pieces that find no place in it come from the first cut length. */
function withCutAfter(question: CutQuestion, set: CoilSet): Answer | null {
  const { pieces, forSale } = question;
  const [cut] = forSale.cuts;
  const without = { ...set, steps: set.steps.map((steps, i) => (i === 0 ? 0 : steps)) };
  const { filled, left } = bestFit(pieces, lengthsOf(question, without));
  const leftMm = pieces.reduce((sum, { lengthMm }, i) => sum + lengthMm * (left[i] ?? 0), 0);
  if (leftMm === 0 && cut === undefined) return { set, filled };
  if (cut === undefined) return null;
  const steps = stepsFor(cut, leftMm);
  const millipence = set.millipence + cutMillipence(cut, steps) - cutMillipence(cut, set.steps[0] ?? 0);
  const place = question.van.length + forSale.wholes.length;
  return {
    set: { ...set, steps: [steps, ...set.steps.slice(1)], millipence },
    filled: leftMm === 0 ? filled : [...filled, { length: place, takes: left }],
  };
}

/** A first answer: everything cut to measure, or everything from one kind of whole length. */
function quickAnswer(question: CutQuestion): Answer {
  const { forSale } = question;
  const count = pieceCount(question);
  const none = { counts: forSale.wholes.map(() => 0), steps: forSale.cuts.map(() => 0), millipence: 0 };
  const ofOneKind = forSale.wholes.flatMap(({ millipence }, kind): Answer[] => {
    const whole = { ...none, counts: none.counts.map((_, i) => (i === kind ? count : 0)) };
    const answer = withCutAfter(question, whole);
    if (answer === null) return [];
    const used = answer.filled.filter(({ length }) => length === question.van.length + kind).length;
    const paid = answer.set.millipence + used * millipence;
    return [
      {
        ...answer,
        set: { ...answer.set, counts: none.counts.map((_, i) => (i === kind ? used : 0)), millipence: paid },
      },
    ];
  });
  const allCut = withCutAfter(question, none);
  if (count === 0) return { set: none, filled: [] };
  const answers = allCut === null ? ofOneKind : [allCut, ...ofOneKind];
  const [first] = answers.toSorted((a, b) => bySet(a.set, b.set));
  if (first === undefined) throw new Error(`No length on sale holds the longest of ${count} pieces.`);
  return first;
}
