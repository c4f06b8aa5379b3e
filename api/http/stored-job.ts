import type { Job } from '#model/job.ts';
import type { JobStore, Version } from '../db/stores.ts';
import { Problem } from './problems.ts';
import { fromStored, jobFromText } from './readable-job.ts';

/** The problem of a job that is not there. */
export const noSuchJob = (id: string): Problem =>
  new Problem('no-such-job', `No job has the id "${id}"; it may have been removed.`);

/** The newest revision of a job, read; a missing or unreadable one is a problem. */
export async function storedJob(
  store: JobStore,
  id: string,
): Promise<Version & { readonly job: Job; readonly text: string }> {
  const stored = await store.read(id);
  if (stored === null) throw noSuchJob(id);
  const { text, revision, tag } = stored;
  const job = fromStored(
    () => jobFromText(text),
    'Earlier states of the job may be whole; else restore a backup.',
  );
  return { job, text, revision, tag };
}
