import { isSameData } from '#engine/plan/same-data.ts';
import type { Job } from '#model/job.ts';
import { copyOfJob } from '../edits/new-job.ts';
import type { Decisions } from '../merging/merge-jobs.ts';
import type { ApiClient } from './api-client.ts';
import type { DocumentSession } from './document-session.ts';
import { saveDecided } from './merged-save.ts';
import type { OpenJobs } from './open-jobs.ts';
import { today } from './today.ts';

/** How a job that was changed here and elsewhere is settled. */
export type Settlement = 'take-theirs' | 'mine-as-copy' | 'mine-over-theirs';

/** That, or row by row. */
export type HowSettled = Settlement | Decisions;

/** What a job is settled with. */
export interface SettledWith {
  readonly api: Pick<ApiClient, 'createJob'>;
  readonly jobs: Pick<OpenJobs, 'forget'>;
  readonly session: DocumentSession<Job>;
}

/** The job to go on with, and what is to be said of it. */
export interface Settled {
  readonly jobId: string;
  readonly said: string;
}

/** Puts a state of a job on the list under a name of its own that says why, and gives the copy. */
export async function putAside(api: Pick<ApiClient, 'createJob'>, job: Job, why: string): Promise<Job> {
  const copy = copyOfJob(job, `${job.title} (${why}, ${today()})`);
  await api.createJob(copy);
  return copy;
}

/** Settles a job that was changed here and elsewhere; whatever is chosen, both states stay to be had. Throws what the server refuses. */
export async function settleJob(how: HowSettled, { api, jobs, session }: SettledWith): Promise<Settled> {
  const jobId = session.now.id;
  if (typeof how !== 'string') return { jobId, said: await saveDecided(session, how) };
  if (how === 'mine-over-theirs') {
    const theirs = await session.readTheirs();
    const aside = await putAside(api, theirs.value, 'saved elsewhere');
    await session.putMineOver(theirs);
    return { jobId, said: `The other one is on the list as “${aside.title}”.` };
  }
  const isGone = session.keeping === 'gone';
  const mine = await putAside(api, session.now, isGone ? 'copy of a deleted job' : 'changed here');
  if (how === 'take-theirs') await session.takeTheirs();
  else jobs.forget(jobId);
  return {
    jobId: how === 'take-theirs' ? jobId : mine.id,
    said: isGone
      ? `This copy is on the list as “${mine.title}”.`
      : `What you had changed is on the list as “${mine.title}”.`,
  };
}

/**
 * Puts the state here over a deleted job that was just put back on the list; what was not seen here stays as a copy.
 *
 * @returns the copy; null where there was nothing that was not seen. Throws what the server refuses.
 */
export async function putMineBack({ api, session }: Omit<SettledWith, 'jobs'>): Promise<Job | null> {
  const theirs = await session.readTheirs();
  const isSeen = isSameData(theirs.value, session.base);
  const aside = isSeen ? null : await putAside(api, theirs.value, 'saved elsewhere');
  await session.putMineOver(theirs);
  return aside;
}
