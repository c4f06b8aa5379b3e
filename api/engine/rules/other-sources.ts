import type { Facts } from './facts.ts';

/** What the survey says of sources beside the distributor's. */
export interface OtherSources {
  /** `assumed`: somebody told so, and nobody looked. An empty list of which nothing is said counts as seen. */
  readonly state: 'known' | 'assumed' | 'unknown';
  /** Their words in the job file, sorted, in a line; empty for none. */
  readonly words: string;
}

/** The other sources that a house has, as far as they are known. */
export function otherSourcesOf({ job }: Facts): OtherSources {
  const { otherSources, certainty } = job.supply;
  const told = certainty?.otherSources;
  if (told === 'unknown') return { state: 'unknown', words: '' };
  return { state: told === 'assumed' ? 'assumed' : 'known', words: [...otherSources].sort().join(', ') };
}
