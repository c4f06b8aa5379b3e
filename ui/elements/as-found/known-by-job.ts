import type { Certainty } from '#model/primitives.ts';

/** What a person goes by while they enter facts: seen here, measured, or told or guessed. */
export type KnownBy = Exclude<Certainty, 'unknown'>;

const words: readonly KnownBy[] = ['seen', 'measured', 'assumed'];
const keyOf = (jobId: string): string => `known-by/${jobId}`;

/**
 * What the person said that they go by in a job: for as long as the window is open, since another day they may be
 * elsewhere. It is of the person and the hour, not of the house, so the job does not carry it.
 *
 * @returns null where they have not said, or the browser keeps nothing.
 */
export function knownByOf(jobId: string): KnownBy | null {
  try {
    const kept = sessionStorage.getItem(keyOf(jobId));
    return words.find((word) => word === kept) ?? null;
  } catch {
    return null;
  }
}

/** Keeps what the person goes by in a job; where the browser keeps nothing, it is asked again after a reload. */
export function keepKnownBy(jobId: string, knownBy: KnownBy): void {
  try {
    sessionStorage.setItem(keyOf(jobId), knownBy);
  } catch {
    // The choice still holds while the step is shown.
  }
}
