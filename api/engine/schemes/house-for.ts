import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { libraryFor } from '../labour/multipliers.ts';
import { allowancesOf } from '../ways/length-allowances.ts';
import { tariffFor } from './tariff.ts';
import { type House, workHouse } from './work-scheme.ts';

/** A job's house as its firm works in it, and the firm's library as this job chooses from it. */
export interface HouseFor {
  readonly library: Library;
  readonly house: House;
}

/** Works a job out as far as its schemes share it, by what the job and the firm say. */
export function houseFor(job: Job, ofFirm: Library): HouseFor {
  const library = libraryFor(job, ofFirm);
  const { terms, norms } = library;
  const habits = { finish: terms.finish, boxDepths: norms.boxDepths };
  return { library, house: workHouse(job, tariffFor(job, library), allowancesOf(library), habits) };
}
