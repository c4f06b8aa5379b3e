import { demoLibrary } from '#data/catalogue/demo-library.ts';
import type { Worked } from '#engine/connections/worked.ts';
import { houseFor } from '#engine/schemes/house-for.ts';
import { workScheme } from '#engine/schemes/work-scheme.ts';
import type { Job } from '#model/job.ts';
import { demoEstimate, demoNames } from '../demo-jobs/demo-estimates.ts';

/** A scheme of a job worked through, with a name for messages. */
export interface Named {
  readonly name: string;
  readonly worked: Worked;
}

/** The first scheme of a job, worked through with the demo library. */
export function firstWorked(job: Job): Worked {
  const { house } = houseFor(job, demoLibrary());
  return workScheme(house, job.schemes[0] ?? null);
}

/** Every scheme of every demo job, worked through. */
export const demoSchemes = (): readonly Named[] =>
  demoNames.flatMap((job) =>
    demoEstimate(job).schemes.map(({ id, worked }) => ({ name: `${job} ${id}`, worked })),
  );
