import type { ShoppingEntry } from '#engine/price/shopping/shopping-list.ts';
import { type TextStore, TextsByJob } from '../controllers/texts-by-job.ts';
import {
  type Marked,
  markedFrom,
  markedText,
  nothingMarked,
  notInStockAs,
  type Ticks,
  ticked,
} from './ticks.ts';

const NAME = 'shopping-ticks';
/** So many steps can be taken back; nobody remembers more. */
const MOST_STEPS = 50;

interface Step {
  readonly label: string;
  readonly before: Marked;
}

/**
 * What is ticked of one job's shopping list, and what was not in stock, on this device, with a way back. It outlasts the page and needs no connection;
 * where the browser keeps nothing it holds for as long as the page.
 */
export class KeptTicks {
  readonly #jobId: string;
  readonly #texts: TextsByJob;
  #marked: Marked;
  #steps: readonly Step[] = [];

  /** @param store the browser's, unless a test brings its own. */
  constructor(jobId: string, store: () => TextStore = () => localStorage) {
    this.#jobId = jobId;
    this.#texts = new TextsByJob(NAME, store);
    this.#marked = markedFrom(this.#texts.of(jobId));
  }

  get jobId(): string {
    return this.#jobId;
  }

  get ticks(): Ticks {
    return this.#marked.ticks;
  }

  /** Keys of what was not in stock where it was asked for. */
  get notInStock(): ReadonlySet<string> {
    return new Set(this.#marked.notInStock);
  }

  /** What was done last, in words; null where there is no way back. */
  get undoLabel(): string | null {
    return this.#steps.at(-1)?.label ?? null;
  }

  tick(entry: ShoppingEntry, is: boolean): void {
    const label = is ? `Ticked: ${entry.description}` : `Tick taken away: ${entry.description}`;
    this.#do(label, { ...this.#marked, ticks: ticked(this.#marked.ticks, entry, is) });
  }

  /** What is to be had elsewhere, or was there after all. */
  markNotInStock({ key, description }: ShoppingEntry, is: boolean): void {
    const label = is ? `Not in stock: ${description}` : `In stock after all: ${description}`;
    this.#do(label, { ...this.#marked, notInStock: notInStockAs(this.#marked.notInStock, key, is) });
  }

  /** Lets go of what is on the list no longer. */
  forget(key: string): void {
    const ticks = this.#marked.ticks.filter((tick) => tick.key !== key);
    this.#do('Put away what is no longer wanted', { ...this.#marked, ticks });
  }

  clear(): void {
    this.#do('All ticks cleared', nothingMarked);
  }

  undo(): void {
    const step = this.#steps.at(-1);
    if (step === undefined) return;
    this.#steps = this.#steps.slice(0, -1);
    this.#keep(step.before);
  }

  /** Another window on this device has ticked; its way back is its own. */
  lookAgain(): void {
    this.#marked = markedFrom(this.#texts.of(this.#jobId));
    this.#steps = [];
  }

  /** Whether a change of the browser's store is of these ticks. */
  isOf(storageKey: string | null): boolean {
    return storageKey === this.#texts.keyOf(this.#jobId);
  }

  #do(label: string, marked: Marked): void {
    this.#steps = [...this.#steps, { label, before: this.#marked }].slice(-MOST_STEPS);
    this.#keep(marked);
  }

  #keep(marked: Marked): void {
    this.#marked = marked;
    this.#texts.keep(this.#jobId, markedText(marked));
  }
}
