import type { Standing } from './batch-line.ts';

/** How far a batch has got. */
export interface Tally {
  /** Lines that are written, those of an earlier run among them. */
  readonly done: number;
  /** Of these: of an earlier run. */
  readonly kept: number;
  readonly faulty: number;
  readonly held: number;
}

export const noneYet: Tally = { done: 0, kept: 0, faulty: 0, held: 0 };

/** The tally with one line more. */
export const counted = (tally: Tally, standing: Standing, isKept = false): Tally => ({
  done: tally.done + 1,
  kept: tally.kept + (isKept ? 1 : 0),
  faulty: tally.faulty + (standing === 'faulty' ? 1 : 0),
  held: tally.held + (standing === 'held' ? 1 : 0),
});

const MS = 1000;
const number = (value: number): string => String(Math.round(value)).replace(/\B(?=(\d{3})+$)/g, ',');
const jobs = (count: number): string => `${number(count)} ${count === 1 ? 'job' : 'jobs'}`;

/** How many jobs of this run are done a second; 0 before any time has passed. */
export const jobsPerSecond = ({ done, kept }: Tally, elapsedMs: number): number =>
  elapsedMs <= 0 ? 0 : ((done - kept) * MS) / elapsedMs;

/**
 * How far it has got, in words.
 *
 * @param count how many jobs there are; null: nobody knows, and nothing is said of what is left.
 */
export function progressWords(tally: Tally, count: number | null, elapsedMs: number): string {
  const { done, kept, faulty } = tally;
  const speed = jobsPerSecond(tally, elapsedMs);
  const left = count === null || speed === 0 ? null : (count - done) / speed;
  return [
    count === null ? jobs(done) : `${number(done)} of ${jobs(count)}`,
    ...(kept > 0 ? [`${number(kept)} of an earlier run`] : []),
    ...(faulty > 0 ? [`${number(faulty)} faulty`] : []),
    ...(speed > 0 ? [`${speed < 10 ? speed.toFixed(1) : number(speed)} a second`] : []),
    ...(left === null || left < 1 ? [] : [`about ${number(left)} s left`]),
  ].join(', ');
}

/** What is said at the end. */
export function closingWords(tally: Tally, path: string, elapsedMs: number): string {
  const { done, faulty, held } = tally;
  return [
    `${progressWords(tally, null, elapsedMs)}: written to ${path}.`,
    ...(held > 0 ? [`${jobs(held)} without a scheme that may go ahead.`] : []),
    ...(faulty > 0 ? [`${jobs(faulty)} faulty: their lines say why.`] : []),
    ...(done === 0 ? ['Nothing was there to estimate.'] : []),
  ].join('\n');
}
