import type { Measure } from './line.ts';

/** Where each figure of a measure stands when it is so many numbers in a row. */
export const slots = {
  millipence: 0,
  minutes: 1,
  mess: 2,
  lengthMm: 3,
  poorMm: 4,
  surfaceMm: 5,
  unlikedMm: 6,
  warmMm: 7,
  unfit: 8,
} as const satisfies Record<keyof Measure, number>;

/** How many numbers a measure is. */
export const MEASURE_SIZE = Object.keys(slots).length;

/** How many measures lie side by side. */
const MEASURES_A_PAGE = 32;

/** A measure that lies among others. */
export interface Pooled {
  /** The numbers of it and of others. */
  readonly page: Float64Array;
  /** Where among them it begins. */
  readonly at: number;
}

/** Room for measures, side by side: a house has tens of thousands of places, most of which are only ever weighed. */
export class MeasurePool {
  #page = new Float64Array(0);
  #used = 0;

  /** Room for one more measure, all nought. */
  take(): Pooled {
    if (this.#used === this.#page.length) {
      this.#page = new Float64Array(MEASURES_A_PAGE * MEASURE_SIZE);
      this.#used = 0;
    }
    const at = this.#used;
    this.#used += MEASURE_SIZE;
    return { page: this.#page, at };
  }
}

/** A measure that is written or added up in place. */
export type MeasureSum = { -readonly [K in keyof Measure]: Measure[K] };

/** The difference of what two places on one line come to, written into a measure that is used again and again. */
export function writeDifference(difference: MeasureSum, one: Pooled, other: Pooled): void {
  const { page: from, at: a } = one;
  const { page: until, at: b } = other;
  difference.millipence = Math.abs(
    (from[a + slots.millipence] as number) - (until[b + slots.millipence] as number),
  );
  difference.minutes = Math.abs((from[a + slots.minutes] as number) - (until[b + slots.minutes] as number));
  difference.mess = Math.abs((from[a + slots.mess] as number) - (until[b + slots.mess] as number));
  difference.lengthMm = Math.abs(
    (from[a + slots.lengthMm] as number) - (until[b + slots.lengthMm] as number),
  );
  difference.poorMm = Math.abs((from[a + slots.poorMm] as number) - (until[b + slots.poorMm] as number));
  difference.surfaceMm = Math.abs(
    (from[a + slots.surfaceMm] as number) - (until[b + slots.surfaceMm] as number),
  );
  difference.unlikedMm = Math.abs(
    (from[a + slots.unlikedMm] as number) - (until[b + slots.unlikedMm] as number),
  );
  difference.warmMm = Math.abs((from[a + slots.warmMm] as number) - (until[b + slots.warmMm] as number));
  // A joist at the very end of a stretch is not crossed by it: nobody comes down onto a joist.
  difference.unfit = Math.floor(
    Math.abs((from[a + slots.unfit] as number) - (until[b + slots.unfit] as number)) + 1e-6,
  );
}

/** Adds a measure to a sum. */
export function addMeasure(sum: MeasureSum, measure: Measure): void {
  sum.millipence += measure.millipence;
  sum.minutes += measure.minutes;
  sum.mess += measure.mess;
  sum.lengthMm += measure.lengthMm;
  sum.poorMm += measure.poorMm;
  sum.surfaceMm += measure.surfaceMm;
  sum.unlikedMm += measure.unlikedMm;
  sum.warmMm += measure.warmMm;
  sum.unfit += measure.unfit;
}

/** How far two places on one line are apart, mm. */
export function lengthBetweenMm(one: Pooled, other: Pooled): number {
  const { page: from, at: a } = one;
  const { page: until, at: b } = other;
  return Math.abs((from[a + slots.lengthMm] as number) - (until[b + slots.lengthMm] as number));
}
