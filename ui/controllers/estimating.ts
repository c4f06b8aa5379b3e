import { estimate } from '#engine/estimate.ts';
import type { Estimate, SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';

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
export interface Worked {
  readonly whole: Estimate;
  /** The shown scheme of this moment; null where there is no scheme. */
  readonly scheme: SchemeEstimate | null;
  /** True while only the shown scheme is of this moment. */
  readonly moving: boolean;
}

/** Rest after the last change before all schemes are worked out again, ms. */
const REST_MS = 160;

/** The shown scheme of an estimate: asked for, else the cheapest that may go ahead, else the first. */
export function shownScheme(whole: Estimate, schemeId: string | null): SchemeEstimate | null {
  const wanted = [schemeId, whole.cheapestId, whole.schemes[0]?.id];
  for (const id of wanted) {
    const found = whole.schemes.find((scheme) => scheme.id === id);
    if (found !== undefined) return found;
  }
  return null;
}

const when = ({ date, revision }: EstimateAsk): { date: string; revision: number } => ({ date, revision });

/**
 * Works a job out in the browser as it is edited: the shown scheme at once, the others, the open questions and the
 * remedies' prices when the hand rests.
 */
export class Estimating {
  #ask: EstimateAsk;
  #worked: Worked;
  #timer: ReturnType<typeof setTimeout> | undefined;
  readonly #changed: () => void;

  constructor(ask: EstimateAsk, changed: () => void) {
    this.#ask = ask;
    this.#changed = changed;
    const whole = estimate(ask.job, ask.library, when(ask));
    this.#worked = { whole, scheme: shownScheme(whole, ask.schemeId), moving: false };
  }

  get worked(): Worked {
    return this.#worked;
  }

  /** Takes another job, library or shown scheme; what costs little is worked out at once. */
  take(ask: EstimateAsk): void {
    const before = this.#ask;
    this.#ask = ask;
    if (ask.job === before.job && ask.library === before.library && ask.date === before.date) {
      if (ask.schemeId !== before.schemeId && !this.#worked.moving)
        this.#worked = { ...this.#worked, scheme: shownScheme(this.#worked.whole, ask.schemeId) };
      return;
    }
    this.#workShown();
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#workAll(), REST_MS);
  }

  stop(): void {
    clearTimeout(this.#timer);
  }

  #workShown(): void {
    const ask = this.#ask;
    const { whole } = this.#worked;
    const id = shownScheme(whole, ask.schemeId)?.id ?? null;
    const shown = ask.job.schemes.find((scheme) => scheme.id === (id ?? ask.schemeId)) ?? ask.job.schemes[0];
    if (shown === undefined) {
      this.#workAll();
      return;
    }
    const live = estimate({ ...ask.job, schemes: [shown] }, ask.library, when(ask));
    const scheme = live.schemes[0] ?? null;
    // The house as found is of this moment; the cards of the other schemes follow when the hand rests.
    this.#worked = { whole: { ...whole, asFound: live.asFound }, scheme, moving: true };
  }

  #workAll(): void {
    const ask = this.#ask;
    const whole = estimate(ask.job, ask.library, when(ask));
    this.#worked = { whole, scheme: shownScheme(whole, ask.schemeId), moving: false };
    this.#changed();
  }
}
