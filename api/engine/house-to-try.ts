import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { allRules } from './all-rules.ts';
import { libraryFor } from './labour/multipliers.ts';
import { factsOf } from './schemes/facts-of.ts';
import type { ToSearch } from './schemes/search/search.ts';
import { tariffFor } from './schemes/tariff.ts';
import { workHouse, workScheme } from './schemes/work-scheme.ts';
import { allowancesOf } from './ways/length-allowances.ts';

/** The house of a job as schemes are tried in it: worked by what the job and the firm say, proved as found. */
export function houseToTry(job: Job, ofFirm: Library): ToSearch {
  const library = libraryFor(job, ofFirm);
  const house = workHouse(job, tariffFor(job, library), allowancesOf(library));
  const { proofs: proofsFound } = factsOf(workScheme(house, null), library, null);
  return { house, library, rules: allRules, proofsFound };
}
