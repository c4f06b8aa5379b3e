import type { Certainty } from '#model/primitives.ts';
import { TextsByJob } from '../../controllers/texts-by-job.ts';

/** What a person goes by while they enter facts: seen here, measured, or told or guessed. */
export type KnownBy = Exclude<Certainty, 'unknown'>;

const words: readonly KnownBy[] = ['seen', 'measured', 'assumed'];

/**
 * What the person said that they go by in a job: for as long as the window is open, since another day they may be
 * elsewhere. It is of the person and the hour, not of the house.
 */
const kept = new TextsByJob('known-by', () => sessionStorage);

/** Null where they have not said, or the browser keeps nothing. */
export function knownByOf(jobId: string): KnownBy | null {
  const text = kept.of(jobId);
  return words.find((word) => word === text) ?? null;
}

/** Keeps what the person goes by in a job; where the browser keeps nothing, it is asked again after a reload. */
export const keepKnownBy = (jobId: string, knownBy: KnownBy): void => kept.keep(jobId, knownBy);
