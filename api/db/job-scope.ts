import { and, eq, isNull } from 'drizzle-orm';
import type { Database } from './open-database.ts';
import { jobRevisions } from './schema/job-revisions.ts';
import { jobs } from './schema/jobs.ts';
import type { Version } from './stores.ts';

/** Whose jobs, where, and by which clock. */
export interface JobScope {
  readonly database: Database;
  readonly firmId: string;
  readonly now: () => Date;
}

/** The row of one job of one firm. */
export const thisJob = (firmId: string, id: string) => and(eq(jobs.firmId, firmId), eq(jobs.jobId, id));

/** The row of one job of one firm, if it is on the list and a version is the one that counts. */
export const thisHead = (firmId: string, id: string, { revision, tag }: Version) =>
  and(thisJob(firmId, id), eq(jobs.revision, revision), eq(jobs.tag, tag), isNull(jobs.removedAt));

/** The row of one revision of one job of one firm. */
export const thisRevision = (firmId: string, id: string, revision: number) =>
  and(eq(jobRevisions.firmId, firmId), eq(jobRevisions.jobId, id), eq(jobRevisions.revision, revision));
