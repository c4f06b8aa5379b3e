import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { isSameData } from '#engine/plan/same-data.ts';
import type { PackAnswer, PackAsk } from '../outcomes/pack-answers.ts';
import { browserClock, type Clock } from './estimating.ts';
import { type LaneState, WorkerLane, type WorkerLike } from './worker-lane.ts';

/** A thread that works outcomes out, from a file of its own: the content policy allows no other. */
const newPackingWorker = (): WorkerLike =>
  new Worker(new URL('./packing-worker.ts', import.meta.url), { type: 'module', name: 'packing' });

/** Asks another thread what to buy while things are open; the element that it belongs to is drawn anew at each answer. */
export class OutcomePacking implements ReactiveController {
  readonly #lane: WorkerLane<PackAsk, PackAnswer>;
  readonly #host: ReactiveControllerHost;
  #asked: PackAsk | null = null;

  constructor(
    host: ReactiveControllerHost,
    make: () => WorkerLike = newPackingWorker,
    clock: Pick<Clock, 'wait'> = browserClock,
  ) {
    this.#host = host;
    // What the thread knows of the house is kept while answers are asked for anew.
    this.#lane = new WorkerLane(make, clock, () => host.requestUpdate(), 'overtaken');
    host.addController(this);
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

  /** Begun before it is asked, so that it needs no connection then; what was asked before is asked anew. */
  hostConnected(): void {
    this.#lane.warm();
    this.#host.requestUpdate();
  }

  hostDisconnected(): void {
    this.#asked = null;
    this.#lane.clear();
    this.#lane.stop();
  }
}
