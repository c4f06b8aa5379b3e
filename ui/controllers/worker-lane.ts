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
export interface LaneState<A, First = never> {
  /** `slow`: it takes longer than half a second, and ought to be said. */
  readonly status: 'idle' | 'working' | 'slow' | 'done' | 'failed';
  /** The last answer; while working, of what was asked before. */
  readonly answer: A | null;
  /** What the other thread sent ahead of the answer that is worked on; null when nothing is, or nothing came yet. */
  readonly first: First | null;
  /** Why there is none; null where it did not fail. */
  readonly trouble: string | null;
}

/**
 * What becomes of a question that is being worked on when a newer one comes. `ended`: its thread is, with all that it
 * knew. `overtaken`: the thread leaves it by itself and keeps what it knows; it is asked no more than one question that it
 * has not said anything to yet, so that a hand that moves something is followed as fast as answers come.
 */
export type Running = 'ended' | 'overtaken';

/** How long one works in silence, ms. */
const SILENT_MS = 500;

/** Questions to another thread of which only the newest counts: the answer to an older one never comes. */
export class WorkerLane<Ask, A, First = never> {
  #state: LaneState<A, First> = { status: 'idle', answer: null, first: null, trouble: null };
  #worker: WorkerLike | null = null;
  #isWarm = false;
  #turn = 0;
  /** Whether the thread has said anything to the question that it was asked last. */
  #hasSign = true;
  /** Asked when the thread gives a sign; null for nothing. */
  #waiting: { readonly ask: Ask } | null = null;
  #callOffWords = (): void => {};
  readonly #make: () => WorkerLike;
  readonly #clock: Pick<Clock, 'wait'>;
  readonly #changed: () => void;
  readonly #running: Running;

  constructor(
    make: () => WorkerLike,
    clock: Pick<Clock, 'wait'>,
    changed: () => void,
    running: Running = 'ended',
  ) {
    this.#make = make;
    this.#clock = clock;
    this.#changed = changed;
    this.#running = running;
  }

  get state(): LaneState<A, First> {
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
    if (this.isWorking && this.#running === 'overtaken' && !this.#hasSign) {
      this.#waiting = { ask };
      return;
    }
    if (this.isWorking && this.#running === 'ended') this.#end();
    this.#send(ask);
  }

  /** Forgets what was answered, and ends what runs. */
  clear(): void {
    if (this.#state.status === 'idle') return;
    if (this.isWorking) this.#end();
    this.#settle({ status: 'idle', answer: null, first: null, trouble: null });
  }

  stop(): void {
    this.#callOffWords();
    this.#end();
  }

  #send(ask: Ask): void {
    const { answer, first } = this.#state;
    this.#waiting = null;
    this.#turn += 1;
    try {
      this.#worker ??= this.#newWorker();
      this.#worker.postMessage({ turn: this.#turn, ask });
    } catch (error) {
      this.#settle({ status: 'failed', answer, first: null, trouble: String(error) });
      return;
    }
    this.#hasSign = false;
    // One long wait is said as such, however many questions follow one another in it.
    if (this.isWorking) {
      this.#set({ ...this.#state, first });
      return;
    }
    this.#callOffWords();
    this.#callOffWords = this.#clock.wait(SILENT_MS, () => this.#set({ ...this.#state, status: 'slow' }));
    this.#set({ status: 'working', answer, first: null, trouble: null });
  }

  #newWorker(): WorkerLike {
    const worker = this.#make();
    worker.onmessage = ({ data }) => {
      if (worker === this.#worker && this.isWorking) this.#take(data as Reply<A, First>);
    };
    worker.onerror = (event) => {
      event.preventDefault?.();
      if (worker !== this.#worker) return;
      this.#end();
      const { answer } = this.#state;
      // A thread that does not start for having been made in advance is tried again when it is wanted.
      if (this.isWorking)
        this.#settle({ status: 'failed', answer, first: null, trouble: event.message || 'it did not start' });
    };
    return worker;
  }

  #take(reply: Reply<A, First>): void {
    if (reply.turn !== this.#turn) return;
    this.#hasSign = true;
    const waiting = this.#waiting;
    if (reply.is === 'first') this.#set({ ...this.#state, first: reply.first });
    else if (waiting === null) this.#settle(settledBy(reply, this.#state.answer));
    else if (reply.is === 'answer') this.#set({ ...this.#state, answer: reply.answer });
    if (waiting !== null) this.#send(waiting.ask);
  }

  #end(): void {
    this.#worker?.terminate();
    this.#worker = null;
    this.#waiting = null;
  }

  #settle(state: LaneState<A, First>): void {
    this.#callOffWords();
    this.#set(state);
  }

  #set(state: LaneState<A, First>): void {
    this.#state = state;
    this.#changed();
  }
}

function settledBy<A, First>(
  reply: Exclude<Reply<A, First>, { readonly is: 'first' }>,
  before: A | null,
): LaneState<A, First> {
  return reply.is === 'answer'
    ? { status: 'done', answer: reply.answer, first: null, trouble: null }
    : { status: 'failed', answer: before, first: null, trouble: reply.message };
}
