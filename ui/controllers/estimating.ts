import { estimate } from '#engine/estimate.ts';
import { cheapestThatDoesNotFail, schemeDifferences } from '#engine/schemes/differences.ts';
import type { Estimate, SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { withCostsOfBefore } from '../moved/costs-of-before.ts';

/** What is to be worked out. */
export interface EstimateAsk {
  readonly job: Job;
  readonly library: Library;
  readonly date: string;
  readonly revision: number;
  /** The scheme that is shown; null: the one the estimate finds cheapest, or the first. */
  readonly schemeId: string | null;
}

/** What has been worked out so far. */
export interface WorkedOut {
  /** The job that `scheme` is of; it may be a frame behind the one that was given last. */
  readonly job: Job;
  /** All schemes; while `moving`, of the job as it was before, save for the house as found. */
  readonly whole: Estimate;
  /** The shown scheme; null where there is no scheme. */
  readonly scheme: SchemeEstimate | null;
  /** True while only the shown scheme is of this moment. */
  readonly moving: boolean;
}

/** When things are done later; each gives back what calls it off. */
export interface Clock {
  /** Before the next picture is drawn. */
  readonly frame: (then: () => void) => () => void;
  readonly wait: (ms: number, then: () => void) => () => void;
}

/** The browser's own. */
export const browserClock: Clock = {
  frame: (then) => {
    const asked = requestAnimationFrame(then);
    return () => cancelAnimationFrame(asked);
  },
  wait: (ms, then) => {
    const timer = setTimeout(then, ms);
    return () => clearTimeout(timer);
  },
};

/** Rest after the last change before all schemes are worked out again, ms. */
const REST_MS = 150;

const nothing = (): void => {};

/** The shown scheme of an estimate: asked for, else the cheapest that does not fail, else the first. */
export function shownScheme(whole: Estimate, schemeId: string | null): SchemeEstimate | null {
  const wanted = [schemeId, whole.cheapestId, whole.schemes[0]?.id];
  for (const id of wanted) {
    const found = whole.schemes.find((scheme) => scheme.id === id);
    if (found !== undefined) return found;
  }
  return null;
}

/** The estimate of some schemes only; `live` leaves out what takes longest. */
const estimateOf = (
  { job, library, date, revision }: EstimateAsk,
  schemeIds: readonly string[],
  depth: 'live' | 'whole' = 'whole',
): Estimate => estimate(job, library, { date, revision }, { schemeIds, depth });

/**
 * Works a job out in the browser as it is edited: the shown scheme at once, or once a picture while something
 * moves; all schemes, the open questions and the remedies' prices when the hand rests, one scheme at a time so
 * that typing is never held up for long.
 */
export class Estimating {
  #ask: EstimateAsk;
  #worked: WorkedOut;
  #callOffFrame = nothing;
  #callOffRest = nothing;
  /** True while all schemes are waited for, or being worked out. */
  #resting = false;
  readonly #changed: () => void;
  readonly #clock: Clock;

  /** @param changed is told of everything that is worked out later than in `take`. */
  constructor(ask: EstimateAsk, changed: () => void, clock: Clock = browserClock) {
    this.#ask = ask;
    this.#changed = changed;
    this.#clock = clock;
    const whole = estimateOf(
      ask,
      ask.job.schemes.map(({ id }) => id),
    );
    this.#worked = { job: ask.job, whole, scheme: shownScheme(whole, ask.schemeId), moving: false };
  }

  get worked(): WorkedOut {
    return this.#worked;
  }

  /**
   * Takes another job, library or shown scheme.
   *
   * @param moving true while something moves under the hand: the whole estimate waits until it rests.
   */
  take(ask: EstimateAsk, moving = false): void {
    const before = this.#ask;
    this.#ask = ask;
    const isWorked = ask.job === this.#worked.job && ask.job === before.job;
    const same = isWorked && ask.library === before.library && ask.date === before.date;
    if (same && !this.#worked.moving) {
      const whole = { ...this.#worked.whole, revision: ask.revision };
      this.#worked = { ...this.#worked, whole, scheme: shownScheme(whole, ask.schemeId) };
      return;
    }
    if (!same || ask.schemeId !== before.schemeId) this.#shownSoon(moving);
    if (moving) this.#restNoMore();
    else if (!same || !this.#resting) this.#restThenAll();
  }

  /** Works nothing out until something is taken: for good, or while another thread follows the hand. */
  stop(): void {
    this.#callOffFrame();
    this.#restNoMore();
  }

  #restNoMore(): void {
    this.#callOffRest();
    this.#resting = false;
  }

  #restThenAll(): void {
    this.#callOffRest();
    this.#resting = true;
    this.#callOffRest = this.#clock.wait(REST_MS, () => this.#workAll());
  }

  #shownSoon(moving: boolean): void {
    this.#callOffFrame();
    if (moving) {
      this.#callOffFrame = this.#clock.frame(() => {
        this.#workShown();
        this.#changed();
      });
    } else this.#workShown();
  }

  #workShown(): void {
    const ask = this.#ask;
    const { schemes } = ask.job;
    const { whole } = this.#worked;
    const ids = [ask.schemeId, this.#worked.scheme?.id, whole.cheapestId];
    const shown = ids.map((id) => schemes.find((scheme) => scheme.id === id)).find((scheme) => scheme);
    const one = shown ?? schemes[0];
    const live = estimateOf(ask, one === undefined ? [] : [one.id], 'live');
    const [scheme] = live.schemes;
    const before = whole.schemes.find(({ id }) => id === scheme?.id);
    this.#worked = {
      job: ask.job,
      whole: { ...whole, asFound: live.asFound },
      scheme:
        scheme === undefined
          ? null
          : { ...scheme, findings: withCostsOfBefore(scheme.findings, before?.findings) },
      moving: true,
    };
  }

  /** One scheme a task, so that keys and fingers are heard in between. */
  #workAll(done: readonly SchemeEstimate[] = []): void {
    const ask = this.#ask;
    const next = ask.job.schemes[done.length];
    const part = estimateOf(ask, next === undefined ? [] : [next.id]);
    const schemes = [...done, ...part.schemes];
    if (schemes.length < ask.job.schemes.length) {
      this.#callOffRest = this.#clock.wait(0, () => this.#workAll(schemes));
      return;
    }
    const differences = schemeDifferences(schemes);
    const cheapestId = cheapestThatDoesNotFail(schemes)?.id ?? null;
    const whole = { ...part, schemes, differences, cheapestId };
    this.#callOffFrame();
    this.#resting = false;
    this.#worked = { job: ask.job, whole, scheme: shownScheme(whole, ask.schemeId), moving: false };
    this.#changed();
  }
}
