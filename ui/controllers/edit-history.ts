import {
  applyPatches,
  type Draft,
  enablePatches,
  freeze,
  type Objectish,
  type Patch,
  produceWithPatches,
} from 'immer';
import { patchesBetween } from '../merging/patches-between.ts';
import { mayChange } from '../rights.ts';

enablePatches();

/** A change as people undo it; changes of one group that follow each other are one step back. */
export interface HistoryEdit<T> {
  readonly label: string;
  readonly change: (draft: Draft<T>) => void;
  readonly group?: string;
  /** True while the thing still moves under the hand: another edit of the group comes at once. */
  readonly moving?: boolean;
}

/** A step as it can be taken back and made again. */
export interface DoneStep {
  readonly label: string;
  readonly group: string | null;
  readonly forward: readonly Patch[];
  readonly backward: readonly Patch[];
}

/** The steps of a document, the last one last in each. */
export interface Steps {
  readonly done: readonly DoneStep[];
  /** Those that were taken back. */
  readonly undone: readonly DoneStep[];
}

/** How many steps back are remembered. */
const REMEMBERED = 500;

/** A document with its edits as patches: each can be undone and done again. The document itself is never changed. */
export class EditHistory<T extends Objectish> {
  #now: T;
  #done: readonly DoneStep[] = [];
  #undone: readonly DoneStep[] = [];

  /** @param steps what led to the start, where it is gone on with. */
  constructor(start: T, steps: Steps = { done: [], undone: [] }) {
    this.#now = freeze(start, true);
    this.#done = steps.done;
    this.#undone = steps.undone;
  }

  /** The steps so far; the lists stay the same ones until something is done. */
  get steps(): Steps {
    return { done: this.#done, undone: this.#undone };
  }

  get now(): T {
    return this.#now;
  }

  /** What the next undo takes back, as it was named; null when there is nothing. */
  get undoLabel(): string | null {
    return this.#done.at(-1)?.label ?? null;
  }

  get redoLabel(): string | null {
    return this.#undone.at(-1)?.label ?? null;
  }

  /** Makes an edit; one that changes nothing leaves no step, and whoever only reads makes none. True when something changed. */
  edit({ label, change, group = undefined }: HistoryEdit<T>): boolean {
    if (!mayChange()) return false;
    const [next, forward, backward] = produceWithPatches(this.#now, (draft) => {
      change(draft);
    });
    if (forward.length === 0) return false;
    this.#now = next;
    this.#undone = [];
    const last = this.#done.at(-1);
    const joins = group !== undefined && last?.group === group;
    const step: DoneStep = joins
      ? {
          label,
          group,
          forward: [...last.forward, ...forward],
          // Taken back in the order opposite to that in which they were made.
          backward: [...backward, ...last.backward],
        }
      : { label, group: group ?? null, forward, backward };
    this.#done = [...(joins ? this.#done.slice(0, -1) : this.#done), step].slice(-REMEMBERED);
    return true;
  }

  /** Takes the last step back; false when there is none. */
  undo(): boolean {
    const step = this.#done.at(-1);
    if (step === undefined) return false;
    this.#now = applyPatches(this.#now, step.backward);
    this.#done = this.#done.slice(0, -1);
    this.#undone = [...this.#undone, step];
    return true;
  }

  /** Does the last undone step again; false when there is none. */
  redo(): boolean {
    const step = this.#undone.at(-1);
    if (step === undefined) return false;
    this.#now = applyPatches(this.#now, step.forward);
    this.#undone = this.#undone.slice(0, -1);
    this.#done = [...this.#done, { ...step, group: null }];
    return true;
  }

  /**
   * The same steps upon another beginning: every state that can be come back to is what `carry` makes of it. Steps that come
   * to nothing there are gone.
   */
  carried(carry: (state: T) => T): EditHistory<T> {
    const history = new EditHistory(carry(this.#now));
    history.#done = carriedSteps(this.#now, this.#done, 'backward', carry);
    history.#undone = carriedSteps(this.#now, this.#undone, 'forward', carry);
    return history;
  }
}

/** Steps from a state in one direction, the nearest last, as they are between what `carry` makes of the states. */
function carriedSteps<T extends Objectish>(
  now: T,
  steps: readonly DoneStep[],
  direction: 'backward' | 'forward',
  carry: (state: T) => T,
): readonly DoneStep[] {
  const other = direction === 'backward' ? 'forward' : 'backward';
  const carried: DoneStep[] = [];
  let state: T = now;
  let near: T = carry(now);
  for (const step of [...steps].reverse()) {
    state = applyPatches(state, step[direction]);
    const far: T = freeze(carry(state), true);
    const there = patchesBetween(near, far);
    if (there.length > 0)
      carried.unshift({ ...step, [direction]: there, [other]: patchesBetween(far, near) });
    near = far;
  }
  return carried;
}
