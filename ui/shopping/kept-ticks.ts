import type { ShoppingEntry } from '#engine/price/shopping/shopping-list.ts';
import { type TextStore, TextsByJob } from '../controllers/texts-by-job.ts';
import { type Ticks, ticked, ticksFrom, ticksText } from './ticks.ts';

const NAME = 'shopping-ticks';
/** So many steps can be taken back; nobody remembers more. */
const MOST_STEPS = 50;

interface Step {
  readonly label: string;
  readonly before: Ticks;
}

/**
 * What is ticked of one job's shopping list, on this device, with a way back. It outlasts the page and needs no connection;
 * where the browser keeps nothing it holds for as long as the page.
 */
export class KeptTicks {
  readonly #jobId: string;
  readonly #texts: TextsByJob;
  #ticks: Ticks;
  #steps: readonly Step[] = [];

  /** @param store the browser's, unless a test brings its own. */
  constructor(jobId: string, store: () => TextStore = () => localStorage) {
    this.#jobId = jobId;
    this.#texts = new TextsByJob(NAME, store);
    this.#ticks = ticksFrom(this.#texts.of(jobId));
  }

  get jobId(): string {
    return this.#jobId;
  }

  get ticks(): Ticks {
    return this.#ticks;
  }

  /** What was done last, in words; null where there is no way back. */
  get undoLabel(): string | null {
    return this.#steps.at(-1)?.label ?? null;
  }

  tick(entry: ShoppingEntry, is: boolean): void {
    const label = is ? `Ticked: ${entry.description}` : `Tick taken away: ${entry.description}`;
    this.#do(label, ticked(this.#ticks, entry, is));
  }

  /** Lets go of what is on the list no longer. */
  forget(key: string): void {
    this.#do(
      'Put away what is no longer wanted',
      this.#ticks.filter((tick) => tick.key !== key),
    );
  }

  clear(): void {
    this.#do('All ticks cleared', []);
  }

  undo(): void {
    const step = this.#steps.at(-1);
    if (step === undefined) return;
    this.#steps = this.#steps.slice(0, -1);
    this.#keep(step.before);
  }

  /** Another window on this device has ticked; its way back is its own. */
  lookAgain(): void {
    this.#ticks = ticksFrom(this.#texts.of(this.#jobId));
    this.#steps = [];
  }

  /** Whether a change of the browser's store is of these ticks. */
  isOf(storageKey: string | null): boolean {
    return storageKey === this.#texts.keyOf(this.#jobId);
  }

  #do(label: string, ticks: Ticks): void {
    this.#steps = [...this.#steps, { label, before: this.#ticks }].slice(-MOST_STEPS);
    this.#keep(ticks);
  }

  #keep(ticks: Ticks): void {
    this.#ticks = ticks;
    this.#texts.keep(this.#jobId, ticksText(ticks));
  }
}
