import { and, eq, isNull } from 'drizzle-orm';
import { type JobScope, thisJob, thisRevision } from './job-scope.ts';
import { jobRevisions } from './schema/job-revisions.ts';
import { jobs } from './schema/jobs.ts';
import type { Saved, SaveHow, StoredText } from './stores.ts';

const columns = {
  text: jobRevisions.text,
  how: jobRevisions.how,
  handedOut: jobRevisions.handedOut,
  revision: jobRevisions.revision,
  tag: jobRevisions.tag,
  savedAt: jobRevisions.savedAt,
};

/** Of the newest revision, all but its text. */
const headColumns = {
  revision: jobs.revision,
  tag: jobs.tag,
  savedAt: jobs.savedAt,
  how: jobRevisions.how,
  handedOut: jobRevisions.handedOut,
};

const headOfJob = and(
  eq(jobRevisions.firmId, jobs.firmId),
  eq(jobRevisions.jobId, jobs.jobId),
  eq(jobRevisions.revision, jobs.revision),
);

/** A revision about to be handed out. */
interface Offered {
  readonly revision: number;
  readonly how: SaveHow;
  readonly handedOut: boolean;
}

/**
 * Marks a revision as handed out, once: from then on it is never let go, since whoever got it may merge on it. One
 * saved by hand stays without a mark, and so does what it was made on (see `letGo`): reading it writes nothing, and is
 * not held up by another program that writes. An autosave must not go out unmarked, however long the mark takes.
 * False when it was let go before the mark was made; then it must not be handed out.
 */
export async function handOut(
  { database, firmId }: JobScope,
  id: string,
  offered: Offered,
): Promise<boolean> {
  if (offered.handedOut || offered.how === 'by-hand') return true;
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
      .select(columns)
      .from(jobs)
      .innerJoin(jobRevisions, headOfJob)
      .where(and(thisJob(scope.firmId, id), isNull(jobs.removedAt)));
    if (row === undefined) return null;
    const { handedOut, how, ...text } = row;
    // Where the mark came too late others have saved twice since, and a later revision is the newest.
    if (await handOut(scope, id, { revision: text.revision, how, handedOut })) return text;
  }
}

/** One revision's text, also of a job taken off the list, marked as handed out; null when it is not there. */
export async function readRevision(
  scope: JobScope,
  id: string,
  revision: number,
): Promise<StoredText | null> {
  const [row] = await scope.database.reader
    .select(columns)
    .from(jobRevisions)
    .where(thisRevision(scope.firmId, id, revision));
  if (row === undefined) return null;
  const { handedOut, how, ...text } = row;
  return (await handOut(scope, id, { revision, how, handedOut })) ? text : null;
}

/**
 * What stands in the way of a write that found another revision than it was made for. Whoever is told a number may
 * save on it unread, so the revision counts as handed out to him.
 */
export async function refusal(scope: JobScope, id: string): Promise<Exclude<Saved, { outcome: 'saved' }>> {
  for (;;) {
    const [row] = await scope.database.reader
      .select(headColumns)
      .from(jobs)
      .innerJoin(jobRevisions, headOfJob)
      .where(and(thisJob(scope.firmId, id), isNull(jobs.removedAt)));
    if (row === undefined) return { outcome: 'no-such-job' };
    const { handedOut, how, ...head } = row;
    if (await handOut(scope, id, { revision: head.revision, how, handedOut }))
      return { outcome: 'stale', ...head };
  }
}
