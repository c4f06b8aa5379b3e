import { and, eq, isNull } from 'drizzle-orm';
import { type JobScope, thisJob, thisRevision } from './job-scope.ts';
import { jobRevisions } from './schema/job-revisions.ts';
import { jobs } from './schema/jobs.ts';
import type { Saved, StoredText } from './stores.ts';

const stored = {
  text: jobRevisions.text,
  revision: jobRevisions.revision,
  savedAt: jobRevisions.savedAt,
};

const headOfJob = and(
  eq(jobRevisions.firmId, jobs.firmId),
  eq(jobRevisions.jobId, jobs.jobId),
  eq(jobRevisions.revision, jobs.revision),
);

/** A revision about to be handed out. */
interface Offered {
  readonly revision: number;
  readonly handedOut: boolean;
}

/**
 * Marks a revision as handed out, once: from then on it is never let go, since whoever got it may merge on it.
 * False when it was let go before the mark was made; then it must not be handed out.
 */
export async function handOut(
  { database, firmId }: JobScope,
  id: string,
  offered: Offered,
): Promise<boolean> {
  if (offered.handedOut) return true;
  const marked = await database.write((writer) =>
    writer
      .update(jobRevisions)
      .set({ handedOut: true })
      .where(thisRevision(firmId, id, offered.revision))
      .returning({ revision: jobRevisions.revision }),
  );
  return marked.length > 0;
}

/** The newest text of a job on the list, marked as handed out; null when there is none. */
export async function readHead(scope: JobScope, id: string): Promise<StoredText | null> {
  for (;;) {
    const [row] = await scope.database.reader
      .select({ ...stored, handedOut: jobRevisions.handedOut })
      .from(jobs)
      .innerJoin(jobRevisions, headOfJob)
      .where(and(thisJob(scope.firmId, id), isNull(jobs.removedAt)));
    if (row === undefined) return null;
    const { handedOut, ...text } = row;
    // Where the mark came too late others have saved twice since, and a later revision is the newest.
    if (await handOut(scope, id, { revision: text.revision, handedOut })) return text;
  }
}

/** One revision's text, also of a job taken off the list, marked as handed out; null when it is not there. */
export async function readRevision(
  scope: JobScope,
  id: string,
  revision: number,
): Promise<StoredText | null> {
  const [row] = await scope.database.reader
    .select({ ...stored, handedOut: jobRevisions.handedOut })
    .from(jobRevisions)
    .where(thisRevision(scope.firmId, id, revision));
  if (row === undefined) return null;
  const { handedOut, ...text } = row;
  return (await handOut(scope, id, { revision, handedOut })) ? text : null;
}

/**
 * What stands in the way of a write that found another revision than it was made for. Whoever is told a number may
 * save on it unread, so the revision counts as handed out to him.
 */
export async function refusal(scope: JobScope, id: string): Promise<Exclude<Saved, { outcome: 'saved' }>> {
  for (;;) {
    const [row] = await scope.database.reader
      .select({ revision: jobs.revision, savedAt: jobs.savedAt, handedOut: jobRevisions.handedOut })
      .from(jobs)
      .innerJoin(jobRevisions, headOfJob)
      .where(and(thisJob(scope.firmId, id), isNull(jobs.removedAt)));
    if (row === undefined) return { outcome: 'no-such-job' };
    const { handedOut, ...head } = row;
    if (await handOut(scope, id, { revision: head.revision, handedOut }))
      return { outcome: 'stale', ...head };
  }
}
