import { and, eq } from 'drizzle-orm';
import type { Database } from './open-database.ts';
import { jobRevisions } from './schema/job-revisions.ts';
import { jobs } from './schema/jobs.ts';

/** Whose jobs, where, and by which clock. */
export interface JobScope {
  readonly database: Database;
  readonly firmId: string;
  readonly now: () => Date;
}

/** The row of one job of one firm. */
export const thisJob = (firmId: string, id: string) => and(eq(jobs.firmId, firmId), eq(jobs.jobId, id));

/** The row of one revision of one job of one firm. */
export const thisRevision = (firmId: string, id: string, revision: number) =>
  and(eq(jobRevisions.firmId, firmId), eq(jobRevisions.jobId, id), eq(jobRevisions.revision, revision));
