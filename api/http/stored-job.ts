import type { Job } from '#model/job.ts';
import type { JobStore } from '../db/stores.ts';
import { Problem } from './problems.ts';
import { jobFromText } from './readable-job.ts';

/** The problem of a job that is not there. */
export const noSuchJob = (id: string): Problem =>
  new Problem('no-such-job', `No job has the id "${id}"; it may have been removed.`);

/** The newest revision of a job, read; a missing or unreadable one is a problem. */
export async function storedJob(
  store: JobStore,
  id: string,
): Promise<{ readonly job: Job; readonly text: string; readonly revision: number }> {
  const stored = await store.read(id);
  if (stored === null) throw noSuchJob(id);
  return { job: jobFromText(stored.text), text: stored.text, revision: stored.revision };
}
