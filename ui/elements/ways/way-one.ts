import type { Candidate } from '../../found-ways/candidate.ts';
import type { JobView } from '../../job-view.ts';

/** The cheapest of the ways that are listed; null where none is, or they are of the job as it was before. */
export const wayOne = ({ ways }: Pick<JobView, 'ways'>): Candidate | null =>
  ways.isOfNow ? (ways.search.answer?.candidates[0] ?? null) : null;
