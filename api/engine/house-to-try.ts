import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { allRules } from './all-rules.ts';
import { factsOf } from './schemes/facts-of.ts';
import { houseFor } from './schemes/house-for.ts';
import type { ToSearch } from './schemes/search/search.ts';
import { workScheme } from './schemes/work-scheme.ts';

/** The house of a job as schemes are tried in it: worked by what the job and the firm say, proved as found. */
export function houseToTry(job: Job, ofFirm: Library): ToSearch {
  const { library, house } = houseFor(job, ofFirm);
  const { proofs: proofsFound } = factsOf(workScheme(house, null), library, null);
  return { house, library, rules: allRules, proofsFound };
}
