import type { Reading } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { testedAt } from '../expected-tests.ts';

/** A job's readings; those that tell no temperature of the conductors have that of the job, where it has one. */
export function readingsTaken(job: Pick<Job, 'site' | 'readings'>): readonly Reading[] {
  const { conductorC, isTold } = testedAt(job);
  return isTold ? job.readings.map((reading) => ({ conductorC, ...reading })) : job.readings;
}
