import type { Job } from '#model/job.ts';
import type { Difference } from './difference-words.ts';
import { jobDifferences } from './job-differences.ts';

/** More than these are counted, not named. */
const MOST_NAMED = 3;

function named({ thing, field, theirs }: Difference): string {
  if (thing === 'Terms' || thing === 'Job') return field;
  return field === '' ? `${thing} ${theirs}` : `${thing}: ${field}`;
}

/** What somebody else changed of a job, in one line: "travel, W4 added, R2: where and 3 more". */
export function cameInWords(base: Job, theirs: Job): string {
  const all = [...new Set(jobDifferences(base, theirs, base).map(named))];
  const more = all.length - MOST_NAMED;
  const first = all.slice(0, MOST_NAMED).join(', ');
  return more > 0 ? `${first} and ${more} more` : first;
}
