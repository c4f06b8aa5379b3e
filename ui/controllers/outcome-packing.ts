import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { PackAnswer, PackAsk } from '../outcomes/pack-answers.ts';
import { browserClock, type Clock } from './estimating.ts';
import { isSameData } from './same-data.ts';
import { type LaneState, WorkerLane, type WorkerLike } from './worker-lane.ts';

/** A thread that works outcomes out, from a file of its own: the content policy allows no other. */
const newPackingWorker = (): WorkerLike =>
  new Worker(new URL('./packing-worker.ts', import.meta.url), { type: 'module', name: 'packing' });

/** Asks another thread what to buy while things are open; the element that it belongs to is drawn anew at each answer. */
export class OutcomePacking implements ReactiveController {
  readonly #lane: WorkerLane<PackAsk, PackAnswer>;
  #asked: PackAsk | null = null;

  constructor(
    host: ReactiveControllerHost,
    make: () => WorkerLike = newPackingWorker,
    clock: Pick<Clock, 'wait'> = browserClock,
  ) {
    host.addController(this);
    // What the thread knows of the house is kept while answers are asked for anew.
    this.#lane = new WorkerLane(make, clock, () => host.requestUpdate(), 'overtaken');
  }

  get state(): LaneState<PackAnswer> {
    return this.#lane.state;
  }

  /** Asks, unless the same was asked last. */
  ask(ask: PackAsk): void {
    const before = this.#asked;
    const isSame =
      before !== null &&
      before.job === ask.job &&
      before.library === ask.library &&
      before.schemeId === ask.schemeId &&
      isSameData([before.otherIds, before.turnedOut], [ask.otherIds, ask.turnedOut]);
    if (isSame) return;
    this.#asked = ask;
    this.#lane.ask(ask);
  }

  /** What was asked last, asked once more. */
  again(): void {
    if (this.#asked !== null) this.#lane.ask(this.#asked);
  }

  hostDisconnected(): void {
    this.#lane.stop();
    this.#asked = null;
  }
}
