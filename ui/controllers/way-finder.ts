import { estimate } from '#engine/estimate.ts';
import { isSameData } from '#engine/plan/same-data.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import type { Waypoint } from '#model/cable.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import type { Connection, Scheme } from '#model/scheme.ts';
import { lockedBeside, lockedOf } from '../edits/keep-found.ts';
import { plainSchemeName } from '../edits/scheme-names.ts';
import type {
  FirstAnswer,
  Found,
  HouseAsk,
  QuestionAnswer,
  QuestionAsk,
  SearchAsk,
} from '../found-ways/search-asks.ts';
import type { Clock } from './estimating.ts';
import { type LaneState, WorkerLane, type WorkerLike } from './worker-lane.ts';

/** What can be asked of the search from the screen. */
export type WaysAsk =
  /** Search, or search again. */
  | { readonly do: 'find' }
  /** Let legs be cut though their way is only assumed, or no longer. */
  | { readonly do: 'cut-assumed'; readonly allowed: boolean }
  /** Show a found scheme on the plan; null shows the job's own again. */
  | { readonly do: 'try'; readonly scheme: Scheme | null }
  /** Work schemes out in full that are in no job, to put them beside others. */
  | { readonly do: 'weigh'; readonly schemes: readonly Scheme[] }
  | { readonly do: 'why-not'; readonly connection: Connection }
  | { readonly do: 'what-if'; readonly legId: string; readonly via: readonly Waypoint[] }
  /** Forget the last question. */
  | { readonly do: 'no-question' };

/** What of the search is shown. */
export interface WaysView {
  readonly search: LaneState<Found, FirstAnswer>;
  /** False while what was found is of the job as it was before. */
  readonly isOfNow: boolean;
  readonly question: LaneState<QuestionAnswer>;
  /** What was asked last; null for nothing. */
  readonly asks: QuestionAsk['what'] | null;
  /** The found scheme that is shown on the plan; null where it is one of the job's own. */
  readonly tried: SchemeEstimate | null;
  /** Schemes that were worked out in full, by their ids. */
  readonly weighed: ReadonlyMap<string, SchemeEstimate>;
  /** What the search leaves as it is: the locked connections of the scheme worked on. */
  readonly locked: readonly Connection[];
  /** Whether the search may cut legs whose way is only assumed. */
  readonly cutsAssumed: boolean;
}

/** The job as it is searched, and the scheme whose locks count. */
export interface WaysHouse {
  readonly job: Job;
  readonly library: Library;
  readonly date: string;
  readonly revision: number;
  readonly scheme: Scheme | null;
}

/** Rest after the last change before it is searched again where nobody looks at it, ms. */
const REST_MS = 400;

/** What a search does not depend on: schemes that are there, and what the job is called. */
const besides: readonly (keyof Job)[] = ['schemes', 'title', 'reference'];

function isSameHouse(one: Job, other: Job): boolean {
  if (one === other) return true;
  const keys = [...new Set([...Object.keys(one), ...Object.keys(other)])] as (keyof Job)[];
  return keys.every((key) => besides.includes(key) || isSameData(one[key], other[key]));
}

const isSameAsk = (one: SearchAsk, other: SearchAsk): boolean =>
  one.firstOnly === other.firstOnly &&
  one.cutsAssumed === other.cutsAssumed &&
  one.library === other.library &&
  isSameData(one.locked, other.locked) &&
  isSameHouse(one.job, other.job);

/** Called by what it does, as it will be in the job once it is kept. */
const plainlyNamed = (scheme: Scheme): Scheme => ({ ...scheme, name: plainSchemeName(scheme) });

/** The found scheme in a copy of the job, worked out here, where the plan needs it. */
function workedOut(
  { job, library, date, revision }: WaysHouse,
  scheme: Scheme,
  depth: 'live' | 'whole',
): SchemeEstimate {
  const schemes = [...job.schemes.filter(({ id }) => id !== scheme.id), scheme];
  const whole = estimate({ ...job, schemes }, library, { date, revision }, { schemeIds: [scheme.id], depth });
  const [worked] = whole.schemes;
  if (worked === undefined) throw new Error(`The found scheme ${scheme.id} was not worked out.`);
  return worked;
}

/** Searches the job's ways on another thread once it was asked to, again when the job changes, and shows what was found. */
export class WayFinder {
  #house: WaysHouse | null = null;
  /** What was searched last; null before the first time. */
  #asked: SearchAsk | null = null;
  #tried: SchemeEstimate | null = null;
  #weighed: ReadonlyMap<string, SchemeEstimate> = new Map();
  #callOffRest = (): void => {};
  #isResting = false;
  #cutsAssumed = false;
  #asks: QuestionAsk['what'] | null = null;
  readonly #search: WorkerLane<SearchAsk, Found, FirstAnswer>;
  readonly #question: WorkerLane<QuestionAsk, QuestionAnswer>;
  readonly #clock: Pick<Clock, 'wait'>;
  readonly #changed: () => void;

  /** @param changed is told of everything that comes later than in `take`. */
  constructor(make: () => WorkerLike, clock: Pick<Clock, 'wait'>, changed: () => void) {
    this.#search = new WorkerLane(make, clock, changed, 'overtaken');
    this.#question = new WorkerLane(make, clock, changed);
    this.#clock = clock;
    this.#changed = changed;
  }

  get view(): WaysView {
    return {
      search: this.#search.state,
      isOfNow: this.#asked !== null && !this.#isResting && !this.#search.isWorking,
      question: this.#question.state,
      asks: this.#question.state.status === 'idle' ? null : this.#asks,
      tried: this.#tried,
      weighed: this.#weighed,
      locked: lockedOf(this.#house?.scheme ?? null),
      cutsAssumed: this.#cutsAssumed,
    };
  }

  /**
   * Takes the job as it is; what was found of another house is searched for again: at once where it is looked at, also while
   * something moves, elsewhere when the hand rests.
   *
   * @param isAtWays false in other steps: nothing but the job's own schemes is shown there.
   * @param isHeld true while a point is under the hand: only the cheapest is searched for until it rests.
   */
  take(house: WaysHouse, isAtWays: boolean, isHeld = false): void {
    const before = this.#house;
    this.#house = house;
    if (isAtWays) this.#search.warm();
    else this.#tried = null;
    const ask = this.#searchAsk(house, isHeld);
    const isSame = before !== null && before.library === house.library && isSameHouse(before.job, house.job);
    if (!isSame) {
      this.#tried = null;
      this.#weighed = new Map();
      this.#question.clear();
    }
    if (this.#asked === null || isSameAsk(this.#asked, ask)) return;
    this.#asked = ask;
    this.#callOffRest();
    if (isAtWays) {
      this.#isResting = false;
      this.#search.ask(ask);
      return;
    }
    this.#isResting = true;
    this.#callOffRest = this.#clock.wait(REST_MS, () => this.#find());
  }

  /** Does what the screen asks. */
  do(ask: WaysAsk): void {
    const house = this.#house;
    if (house === null) return;
    switch (ask.do) {
      case 'find':
        this.#find();
        return;
      case 'cut-assumed':
        this.#cutsAssumed = ask.allowed;
        this.#find();
        return;
      case 'try':
        if (ask.scheme?.id === this.#tried?.id) return;
        this.#tried = ask.scheme === null ? null : workedOut(house, plainlyNamed(ask.scheme), 'live');
        break;
      case 'weigh':
        this.#weighed = new Map([
          ...this.#weighed,
          ...ask.schemes.map((scheme) => [scheme.id, workedOut(house, scheme, 'whole')] as const),
        ]);
        break;
      case 'why-not': {
        const asked = this.#houseAsk(house);
        const locked = lockedBeside(asked.locked, ask.connection);
        this.#asks = 'why-not';
        this.#question.ask({ what: 'why-not', ...asked, locked, connection: ask.connection });
        return;
      }
      case 'what-if':
        this.#asks = 'what-if';
        this.#question.ask({ what: 'what-if', ...this.#houseAsk(house), legId: ask.legId, via: ask.via });
        return;
      case 'no-question':
        this.#question.clear();
        return;
    }
    this.#changed();
  }

  stop(): void {
    this.#callOffRest();
    this.#search.stop();
    this.#question.stop();
  }

  #houseAsk({ job, library, scheme }: WaysHouse): HouseAsk {
    return { job, library, locked: lockedOf(scheme), cutsAssumed: this.#cutsAssumed };
  }

  #searchAsk(house: WaysHouse, firstOnly: boolean): SearchAsk {
    return { what: 'search', firstOnly, ...this.#houseAsk(house) };
  }

  #find(): void {
    const house = this.#house;
    if (house === null) return;
    this.#callOffRest();
    this.#isResting = false;
    this.#asked = this.#searchAsk(house, false);
    this.#tried = null;
    this.#weighed = new Map();
    this.#search.ask(this.#asked);
  }
}
