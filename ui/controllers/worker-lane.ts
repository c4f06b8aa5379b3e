import type { Reply } from '../found-ways/search-asks.ts';
import type { Clock } from './estimating.ts';

/** As much of a worker as is needed, so that tests can bring one of their own. */
export interface WorkerLike {
  postMessage(message: unknown): void;
  terminate(): void;
  onmessage: ((event: MessageEvent) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

/** How far an answer is. */
export interface LaneState<A> {
  /** `slow`: it takes longer than half a second, and ought to be said. */
  readonly status: 'idle' | 'working' | 'slow' | 'done' | 'failed';
  /** The last answer; while working, of what was asked before. */
  readonly answer: A | null;
  /** Why there is none; null where it did not fail. */
  readonly trouble: string | null;
}

/** How long one works in silence, ms. */
const SILENT_MS = 500;

/** Questions to another thread of which only the newest counts: a running one is ended, and its answer never comes. */
export class WorkerLane<Ask, A> {
  #state: LaneState<A> = { status: 'idle', answer: null, trouble: null };
  #worker: WorkerLike | null = null;
  #isWarm = false;
  #callOffWords = (): void => {};
  readonly #make: () => WorkerLike;
  readonly #clock: Pick<Clock, 'wait'>;
  readonly #changed: () => void;

  constructor(make: () => WorkerLike, clock: Pick<Clock, 'wait'>, changed: () => void) {
    this.#make = make;
    this.#clock = clock;
    this.#changed = changed;
  }

  get state(): LaneState<A> {
    return this.#state;
  }

  get isWorking(): boolean {
    return this.#state.status === 'working' || this.#state.status === 'slow';
  }

  /** Has the thread at hand, so that a question can be answered without a connection; tried once, in silence. */
  warm(): void {
    if (this.#isWarm) return;
    this.#isWarm = true;
    try {
      this.#worker ??= this.#newWorker();
    } catch {
      // It is told when it is asked and still cannot be had.
    }
  }

  ask(ask: Ask): void {
    if (this.isWorking) this.#end();
    const { answer } = this.#state;
    try {
      this.#worker ??= this.#newWorker();
      this.#worker.postMessage(ask);
    } catch (error) {
      this.#settle({ status: 'failed', answer, trouble: String(error) });
      return;
    }
    this.#callOffWords();
    this.#callOffWords = this.#clock.wait(SILENT_MS, () => this.#set({ ...this.#state, status: 'slow' }));
    this.#set({ status: 'working', answer, trouble: null });
  }

  /** Forgets what was answered, and ends what runs. */
  clear(): void {
    if (this.#state.status === 'idle') return;
    if (this.isWorking) this.#end();
    this.#settle({ status: 'idle', answer: null, trouble: null });
  }

  stop(): void {
    this.#callOffWords();
    this.#end();
  }

  #newWorker(): WorkerLike {
    const worker = this.#make();
    worker.onmessage = ({ data }) => {
      if (worker === this.#worker && this.isWorking) this.#take(data as Reply<A>);
    };
    worker.onerror = (event) => {
      event.preventDefault?.();
      if (worker !== this.#worker) return;
      this.#end();
      const { answer } = this.#state;
      // A thread that does not start for having been made in advance is tried again when it is wanted.
      if (this.isWorking)
        this.#settle({ status: 'failed', answer, trouble: event.message || 'it did not start' });
    };
    return worker;
  }

  #take(reply: Reply<A>): void {
    if (reply.ok) this.#settle({ status: 'done', answer: reply.answer, trouble: null });
    else this.#settle({ status: 'failed', answer: this.#state.answer, trouble: reply.message });
  }

  #end(): void {
    this.#worker?.terminate();
    this.#worker = null;
  }

  #settle(state: LaneState<A>): void {
    this.#callOffWords();
    this.#set(state);
  }

  #set(state: LaneState<A>): void {
    this.#state = state;
    this.#changed();
  }
}
