import { jobSteps } from './moved/job-steps.ts';
import { librarySteps } from './moved/library-steps.ts';
import type { MoveCause, MoveStep } from './moved/move-step.ts';
import {
  figuresOf,
  type MovedFigures,
  type PricedFigures,
  type PricedState,
  schemeState,
} from './moved/priced-state.ts';

/** One cause of a difference in price. Money in pence; below nought: cheaper, less, shorter. */
export interface MovedPart {
  readonly cause: MoveCause;
  /** What changed: "W3 moved". */
  readonly words: string;
  /** From what to what; empty where that is more than a line's worth. */
  readonly detail: string;
  /** Ids of the things of the job that changed. */
  readonly subjects: readonly string[];
  /** What it does to each figure; the first four and the tax add up to gross. */
  readonly figures: MovedFigures;
}

/** What a scheme's price has moved by, and why. */
export interface MoneyMoved {
  readonly beforePence: number;
  readonly afterPence: number;
  /** In the order in which the changes were made; each moves something. Their gross pence add up to the difference. */
  readonly parts: readonly MovedPart[];
  /** Changes that move no money, in words. */
  readonly idle: readonly string[];
}

/** What is compared. */
export interface MoveRequest {
  /** The scheme, by its id, which both jobs must have. */
  readonly schemeId: string;
  readonly before: PricedState;
  readonly after: PricedState;
  /** What was quoted for the state before, where it was; absent: what it comes to by this version. */
  readonly quotedPence?: number;
}

const keys = [
  'materialsPence',
  'labourPence',
  'otherPence',
  'contingencyPence',
  'vatPence',
  'grossPence',
  'labourMin',
  'cableMm',
] as const satisfies readonly (keyof MovedFigures)[];

const noFigures = {
  materialsPence: 0,
  labourPence: 0,
  otherPence: 0,
  contingencyPence: 0,
  vatPence: 0,
  grossPence: 0,
  labourMin: 0,
  cableMm: 0,
} as const satisfies MovedFigures;

function movement(before: MovedFigures, after: MovedFigures): MovedFigures {
  const moved: Record<keyof MovedFigures, number> = { ...noFigures };
  for (const key of keys) moved[key] = after[key] - before[key];
  return moved;
}

const movesMoney = (figures: MovedFigures): boolean =>
  keys.some((key) => key.endsWith('Pence') && figures[key] !== 0);

const partOf = ({ cause, words, detail, subjects }: MoveStep, figures: MovedFigures): MovedPart => ({
  cause,
  words,
  detail,
  subjects,
  figures,
});

const both = (a: PricedFigures, b: PricedFigures) => ({
  items: new Set([...a.items, ...b.items]),
  tasks: new Set([...a.tasks, ...b.tasks]),
});

/** What the engine's own change makes of the quoted price: first of all, as nothing else has moved yet. */
function engineParts(quotedPence: number | undefined, before: MovedFigures): readonly MovedPart[] {
  const grossPence = quotedPence === undefined ? 0 : before.grossPence - quotedPence;
  if (grossPence === 0) return [];
  const words = 'Worked out anew by this version of the program';
  return [{ cause: 'engine', words, detail: '', subjects: [], figures: { ...noFigures, grossPence } }];
}

/**
 * Works out, a change at a time, what a scheme's price has moved by between two states: it pauses after each, so that a
 * screen stays in reach of its hands. The changes are made one after the other on the state before, in this order: prices,
 * norms, terms and settings of the firm; terms of the job; the survey of house, boards, circuits, points, cables;
 * remedies and connections of the scheme; work that is not on the drawing; what is gone; at last whatever is left. A change is worth what it moves
 * upon those before it, so the parts add up to the difference to the penny; in another order they would share it otherwise.
 *
 * @returns null where the scheme is not in both jobs.
 */
export function* movingMoney(request: MoveRequest): Generator<void, MoneyMoved | null> {
  const { schemeId, quotedPence } = request;
  const [start, end] = [schemeState(request.before, schemeId), schemeState(request.after, schemeId)];
  if (start === null || end === null) return null;
  const [first, last] = [figuresOf(start), figuresOf(end)];
  yield;
  const rest: MoveStep = {
    cause: 'rest',
    words: 'Whatever else has changed',
    detail: '',
    subjects: [],
    apply: () => end,
  };
  const steps = [
    ...librarySteps(start.library, end.library, both(first, last)),
    ...jobSteps(start.job, end.job),
    rest,
  ];
  const parts: MovedPart[] = [...engineParts(quotedPence, first)];
  const idle: string[] = [];
  let [state, now]: [typeof start, MovedFigures] = [start, first];
  for (const step of steps) {
    state = step.apply(state);
    const then = state === end ? last : figuresOf(state);
    const figures = movement(now, then);
    if (movesMoney(figures)) parts.push(partOf(step, figures));
    else if (step.cause !== 'rest') idle.push(step.words);
    now = then;
    yield;
  }
  return {
    beforePence: quotedPence ?? first.grossPence,
    afterPence: last.grossPence,
    parts,
    idle,
  };
}

/** As `movingMoney`, at one go. */
export function moneyMoved(request: MoveRequest): MoneyMoved | null {
  const moving = movingMoney(request);
  for (;;) {
    const { done, value } = moving.next();
    if (done) return value;
  }
}
