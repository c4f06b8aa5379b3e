import type { Certainty } from '#model/primitives.ts';

/** Whether nobody saw or measured what the survey says so of; what is said without a word for it counts as seen. */
export const isGuess = (certainty: Certainty | undefined): boolean =>
  certainty === 'assumed' || certainty === 'unknown';
