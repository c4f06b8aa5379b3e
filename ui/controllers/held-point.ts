import type { DataChange } from '../moved/data-changes.ts';
import { ChangeTaker } from '../moved/data-changes.ts';
import { MovedChannel, type SearchStand } from '../moved/moved-channel.ts';
import type { MovedAsk, MovedSight, PlanStand } from '../moved/moved-sight.ts';
import type { Clock } from './estimating.ts';
import { WorkerLane, type WorkerLike } from './worker-lane.ts';

/** Rest after a plan with movable points is there before the other thread is begun: the page is drawn first, ms. */
const WARM_MS = 1000;

/**
 * A point under the hand: what of the job is seen meanwhile is worked out on another thread, the newest place first, and told
 * past the page. What cannot be had from there the page works out itself, as it does everything at rest.
 */
export class HeldPoint {
  readonly channel = new MovedChannel();
  #stand: PlanStand | null = null;
  #sight: MovedSight | null = null;
  #search: SearchStand | null = null;
  #hasFailed = false;
  #taken: DataChange = null;
  readonly #taker = new ChangeTaker();
  readonly #lane: WorkerLane<MovedAsk, DataChange>;
  #callOffWarm: (() => void) | null = null;
  readonly #clock: Pick<Clock, 'wait'>;
  readonly #hasGoneWrong: () => void;

  /** @param hasGoneWrong is told when the other thread cannot follow: the page is to do so by itself. */
  constructor(make: () => WorkerLike, clock: Pick<Clock, 'wait'>, hasGoneWrong: () => void) {
    this.#lane = new WorkerLane(make, clock, () => this.#answered(), 'overtaken');
    this.#clock = clock;
    this.#hasGoneWrong = hasGoneWrong;
  }

  /** True while another thread follows the hand: the page stays as it was. */
  get isFollowed(): boolean {
    return this.#stand !== null && !this.#hasFailed;
  }

  /** Has the thread at hand before a point is taken, as soon as the page itself is there. */
  warm(): void {
    this.#callOffWarm ??= this.#clock.wait(WARM_MS, () => this.#lane.warm());
  }

  /** A point is under the hand on a plan that stands so; null where the page is to follow by itself. */
  hold(stand: PlanStand | null): void {
    if (stand === null) this.letGo();
    else this.#stand = stand;
  }

  /** The hand rests: what is still being worked out is told to nobody. The next one is followed again. */
  letGo(): void {
    this.#stand = null;
    this.#hasFailed = false;
    this.#sight = null;
    this.#search = null;
    this.channel.tell(null);
  }

  /** Has the job worked out as it is now. */
  follow(ask: Omit<MovedAsk, 'stand'>): void {
    if (this.#stand !== null) this.#lane.ask({ ...ask, stand: this.#stand });
  }

  /** Tells how the search for ways stands. */
  tellSearch({ search, isOfNow }: SearchStand): void {
    if (this.#search?.search === search && this.#search.isOfNow === isOfNow) return;
    this.#search = { search, isOfNow };
    this.#tell();
  }

  stop(): void {
    this.letGo();
    this.#callOffWarm?.();
    this.#lane.stop();
  }

  #answered(): void {
    const { status, answer } = this.#lane.state;
    if (status === 'failed') {
      this.#hasFailed = true;
      this.channel.tell(null);
      if (this.#stand !== null) this.#hasGoneWrong();
      return;
    }
    if (answer === null || answer === this.#taken) return;
    // Taken whether or not it is still wanted: what comes next is told by what changed of it.
    this.#taken = answer;
    const sight = this.#taker.take(answer) as MovedSight;
    if (this.#stand === null) return;
    this.#sight = sight;
    this.#tell();
  }

  #tell(): void {
    if (!this.isFollowed) return;
    this.channel.tell({ sight: this.#sight, search: this.#search });
  }
}
