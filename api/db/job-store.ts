import { and, asc, desc, eq, isNotNull, isNull, sql } from 'drizzle-orm';
import { handOut, readHead, readRevision, refusal } from './hand-out.ts';
import { type JobScope, thisHead, thisJob, thisRevision } from './job-scope.ts';
import { keptHeads } from './kept-heads.ts';
import type { Database } from './open-database.ts';
import { createJob, saveJob } from './save-job.ts';
import { jobRevisions } from './schema/job-revisions.ts';
import { jobs } from './schema/jobs.ts';
import type { JobStore, JobSummary, JobsAsked, KeptFor, RevisionSummary, Saved, Version } from './stores.ts';

function list({ database, firmId }: JobScope, { removed }: JobsAsked): Promise<readonly JobSummary[]> {
  return database.reader
    .select({
      id: jobs.jobId,
      reference: jobs.reference,
      title: jobs.title,
      customer: jobs.customer,
      revision: jobs.revision,
      tag: jobs.tag,
      savedAt: jobs.savedAt,
      removedAt: jobs.removedAt,
      wantedPoints: jobs.wantedPoints,
      schemes: jobs.schemes,
    })
    .from(jobs)
    .where(and(eq(jobs.firmId, firmId), removed ? isNotNull(jobs.removedAt) : isNull(jobs.removedAt)))
    .orderBy(desc(removed ? jobs.removedAt : jobs.savedAt), asc(jobs.jobId));
}

async function revisions(
  { database, firmId }: JobScope,
  id: string,
): Promise<readonly RevisionSummary[] | null> {
  const rows = await database.reader
    .select({
      revision: jobRevisions.revision,
      savedAt: jobRevisions.savedAt,
      how: jobRevisions.how,
      keptFor: jobRevisions.keptFor,
      bytes: jobRevisions.bytes,
    })
    .from(jobRevisions)
    .where(and(eq(jobRevisions.firmId, firmId), eq(jobRevisions.jobId, id)))
    .orderBy(desc(jobRevisions.revision));
  return rows.length === 0 ? null : rows;
}

async function keep(
  { database, firmId }: JobScope,
  id: string,
  revision: number,
  keptFor: KeptFor,
): Promise<boolean> {
  const kept = await database.write((writer) =>
    writer
      .update(jobRevisions)
      // What was quoted stays so when it is named as well: a customer has it.
      .set({ keptFor: sql`case ${jobRevisions.keptFor} when 'quoted' then 'quoted' else ${keptFor} end` })
      .where(thisRevision(firmId, id, revision))
      .returning({ revision: jobRevisions.revision }),
  );
  return kept.length > 0;
}

async function remove(scope: JobScope, id: string, base: Version): Promise<Saved> {
  const { database, firmId, now } = scope;
  const [removed] = await database.write((writer) =>
    writer
      .update(jobs)
      .set({ removedAt: now().toISOString() })
      .where(thisHead(firmId, id, base))
      .returning({ revision: jobs.revision, tag: jobs.tag, savedAt: jobs.savedAt }),
  );
  return removed === undefined ? refusal(scope, id) : { outcome: 'saved', ...removed };
}

async function restore(scope: JobScope, id: string): Promise<Saved> {
  const { database, firmId } = scope;
  const [restored] = await database.write((writer) =>
    writer
      .update(jobs)
      .set({ removedAt: null })
      .where(thisJob(firmId, id))
      .returning({ revision: jobs.revision, tag: jobs.tag, savedAt: jobs.savedAt }),
  );
  if (restored === undefined) return { outcome: 'no-such-job' };
  // Whoever is told this number may save on it unread; it is marked however it was saved, as a write was made anyway.
  await handOut(scope, id, { revision: restored.revision, how: 'autosave', handedOut: false });
  return { outcome: 'saved', ...restored };
}

/** The jobs of one firm in a database. */
export function jobStore(database: Database, firmId: string, now: () => Date): JobStore {
  const scope: JobScope = { database, firmId, now };
  const heads = keptHeads(database);
  return {
    list: (asked = { removed: false }) => list(scope, asked),
    create: (heading, text) => createJob(scope, heading, text),
    read: (id) => heads.read(`${firmId} ${id}`, () => readHead(scope, id)),
    readRevision: (id, revision) => readRevision(scope, id, revision),
    revisions: (id) => revisions(scope, id),
    save: (heading, text, base, how) => saveJob(scope, { heading, text, base, how }),
    keep: (id, revision, keptFor) => keep(scope, id, revision, keptFor),
    remove: (id, base) => remove(scope, id, base),
    restore: (id) => restore(scope, id),
  };
}
