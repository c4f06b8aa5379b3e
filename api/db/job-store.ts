import { and, asc, desc, eq, gt, isNotNull, isNull, lt, notExists, sql } from 'drizzle-orm';
import type { LibSQLDatabase } from 'drizzle-orm/libsql';
import type { Database } from './open-database.ts';
import { jobRevisions } from './schema/job-revisions.ts';
import { jobs } from './schema/jobs.ts';
import type { JobHeading, JobStore, SaveHow } from './stores.ts';

/** Autosaves that follow each other within this time are one chain, of which the middle is let go, ms. */
const CHAIN_MS = 10 * 60_000;

const byteLength = (text: string): number => new TextEncoder().encode(text).length;

/** Everything of a job that its row repeats for the list. */
const listed = ({ reference, title, customer, wantedPoints, schemes }: JobHeading) => ({
  reference,
  title,
  customer,
  wantedPoints,
  schemes,
});

interface Scope {
  readonly database: Database;
  readonly firmId: string;
  readonly now: () => Date;
}

const thisJob = (firmId: string, id: string) => and(eq(jobs.firmId, firmId), eq(jobs.jobId, id));
const thisRevision = (firmId: string, id: string, revision: number) =>
  and(eq(jobRevisions.firmId, firmId), eq(jobRevisions.jobId, id), eq(jobRevisions.revision, revision));

/** What is written into the revision's row. */
interface NewRevision {
  readonly id: string;
  readonly text: string;
  readonly how: SaveHow;
  readonly savedAt: string;
  readonly chainBegan: string;
}

/**
 * Writes the row of the job's newest revision, if it is not there yet: after a guarded update that changed
 * nothing it is there, and so a stale save writes nothing.
 */
const writeHead = (writer: LibSQLDatabase, firmId: string, made: NewRevision) =>
  writer.insert(jobRevisions).select(
    writer
      .select({
        firmId: jobs.firmId,
        jobId: jobs.jobId,
        revision: jobs.revision,
        text: sql`${made.text}`.as('text'),
        savedAt: sql`${made.savedAt}`.as('saved_at'),
        how: sql`${made.how}`.as('how'),
        chainBegan: sql`${made.chainBegan}`.as('chain_began'),
        handedOut: sql`0`.as('handed_out'),
        keptFor: sql`null`.as('kept_for'),
        bytes: sql`${byteLength(made.text)}`.as('bytes'),
      })
      .from(jobs)
      .where(
        and(
          thisJob(firmId, made.id),
          notExists(
            writer
              .select({ one: sql`1` })
              .from(jobRevisions)
              .where(
                and(
                  eq(jobRevisions.firmId, jobs.firmId),
                  eq(jobRevisions.jobId, jobs.jobId),
                  eq(jobRevisions.revision, jobs.revision),
                ),
              ),
          ),
        ),
      ),
  );

/** The revision that counts, of a job on the list; null when there is none. */
async function headOf({ database, firmId }: Scope, id: string) {
  const [head] = await database.reader
    .select({ revision: jobs.revision, savedAt: jobs.savedAt })
    .from(jobs)
    .where(and(thisJob(firmId, id), isNull(jobs.removedAt)));
  return head ?? null;
}

/** What became of a guarded write: done, or what stands there instead. */
async function outcomeOf(
  scope: Scope,
  id: string,
  changed: { revision: number; savedAt: string } | undefined,
) {
  if (changed !== undefined) return { outcome: 'saved' as const, ...changed };
  const head = await headOf(scope, id);
  return head === null ? ({ outcome: 'no-such-job' } as const) : { outcome: 'stale' as const, ...head };
}

/** When the chain began that an autosave on this base goes on with; the time of the save where none does. */
async function chainBeganOf(
  scope: Scope,
  id: string,
  base: number,
  how: SaveHow,
  savedAt: string,
): Promise<string> {
  if (how !== 'autosave') return savedAt;
  const [before] = await scope.database.reader
    .select({ how: jobRevisions.how, chainBegan: jobRevisions.chainBegan })
    .from(jobRevisions)
    .where(thisRevision(scope.firmId, id, base));
  const going = before?.how === 'autosave' && Date.parse(savedAt) - Date.parse(before.chainBegan) < CHAIN_MS;
  return going ? before.chainBegan : savedAt;
}

/**
 * Lets go of the middle of a chain of autosaves. Somebody's base of a merge never goes: a client holds a revision
 * because it was handed out (then it is marked, and stays), or because its own save made it. Of the latter, who saves
 * on `base` has just shown to hold `base` and nothing older, so only what lies before `base` is let go; `base` itself
 * stays until a save on its successor, should the answer to this save be lost on the way.
 */
const letGo = (writer: LibSQLDatabase, firmId: string, id: string, base: number, chainBegan: string) =>
  writer
    .delete(jobRevisions)
    .where(
      and(
        eq(jobRevisions.firmId, firmId),
        eq(jobRevisions.jobId, id),
        lt(jobRevisions.revision, base),
        gt(jobRevisions.revision, 0),
        eq(jobRevisions.chainBegan, chainBegan),
        eq(jobRevisions.how, 'autosave'),
        eq(jobRevisions.handedOut, false),
        isNull(jobRevisions.keptFor),
      ),
    );

async function create(scope: Scope, heading: JobHeading, text: string) {
  const { database, firmId, now } = scope;
  const savedAt = now().toISOString();
  const row = { firmId, jobId: heading.id, revision: 1, savedAt, removedAt: null, ...listed(heading) };
  const [made] = await database.write((writer) =>
    writer.batch([
      writer
        .insert(jobs)
        .values(row)
        .onConflictDoUpdate({
          target: [jobs.firmId, jobs.jobId],
          set: { ...row, revision: sql`${jobs.revision} + 1` },
          // A job of this id that was taken off the list gives way; its revisions stay, and the numbers go on.
          setWhere: isNotNull(jobs.removedAt),
        })
        .returning({ revision: jobs.revision, savedAt: jobs.savedAt }),
      writeHead(writer, firmId, { id: heading.id, text, how: 'by-hand', savedAt, chainBegan: savedAt }),
    ]),
  );
  const [created] = made;
  return created === undefined
    ? ({ outcome: 'id-taken' } as const)
    : { outcome: 'created' as const, ...created };
}

async function save(scope: Scope, heading: JobHeading, text: string, base: number, how: SaveHow) {
  const { database, firmId, now } = scope;
  const { id } = heading;
  const savedAt = now().toISOString();
  const chainBegan = await chainBeganOf(scope, id, base, how, savedAt);
  const [made] = await database.write((writer) =>
    writer.batch([
      writer
        .update(jobs)
        .set({ revision: base + 1, savedAt, ...listed(heading) })
        .where(and(thisJob(firmId, id), eq(jobs.revision, base), isNull(jobs.removedAt)))
        .returning({ revision: jobs.revision, savedAt: jobs.savedAt }),
      writeHead(writer, firmId, { id, text, how, savedAt, chainBegan }),
    ]),
  );
  const [saved] = made;
  if (saved !== undefined && chainBegan !== savedAt)
    await database.write((writer) => letGo(writer, firmId, id, base, chainBegan));
  return outcomeOf(scope, id, saved);
}

/** Reads a revision and marks it as handed out; read again should it have been let go in between. */
async function readRevision(scope: Scope, id: string, revision: number) {
  const { database, firmId } = scope;
  const where = thisRevision(firmId, id, revision);
  const [row] = await database.reader
    .select({
      text: jobRevisions.text,
      revision: jobRevisions.revision,
      savedAt: jobRevisions.savedAt,
      handedOut: jobRevisions.handedOut,
    })
    .from(jobRevisions)
    .where(where);
  if (row === undefined) return null;
  const { handedOut, ...stored } = row;
  if (handedOut) return stored;
  const marked = await database.write((writer) =>
    writer
      .update(jobRevisions)
      .set({ handedOut: true })
      .where(where)
      .returning({ revision: jobRevisions.revision }),
  );
  return marked.length === 0 ? null : stored;
}

async function read(scope: Scope, id: string) {
  for (;;) {
    const head = await headOf(scope, id);
    if (head === null) return null;
    const stored = await readRevision(scope, id, head.revision);
    // Null here means that others have saved on since: the newest is a later one by now.
    if (stored !== null) return stored;
  }
}

async function revisions({ database, firmId }: Scope, id: string) {
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

async function setRemoved(scope: Scope, id: string, where: ReturnType<typeof and>, removedAt: string | null) {
  const { database, firmId } = scope;
  const [changed] = await database.write((writer) =>
    writer
      .update(jobs)
      .set({ removedAt })
      .where(and(thisJob(firmId, id), where))
      .returning({ revision: jobs.revision, savedAt: jobs.savedAt }),
  );
  return outcomeOf(scope, id, changed);
}

/** The jobs of one firm in a database. */
export function jobStore(database: Database, firmId: string, now: () => Date): JobStore {
  const scope: Scope = { database, firmId, now };
  return {
    list: () =>
      database.reader
        .select({
          id: jobs.jobId,
          reference: jobs.reference,
          title: jobs.title,
          customer: jobs.customer,
          revision: jobs.revision,
          savedAt: jobs.savedAt,
          wantedPoints: jobs.wantedPoints,
          schemes: jobs.schemes,
        })
        .from(jobs)
        .where(and(eq(jobs.firmId, firmId), isNull(jobs.removedAt)))
        .orderBy(desc(jobs.savedAt), asc(jobs.jobId)),
    create: (heading, text) => create(scope, heading, text),
    read: (id) => read(scope, id),
    readRevision: (id, revision) => readRevision(scope, id, revision),
    revisions: (id) => revisions(scope, id),
    save: (heading, text, base, how) => save(scope, heading, text, base, how),
    keep: async (id, revision, keptFor) => {
      const kept = await database.write((writer) =>
        writer
          .update(jobRevisions)
          .set({ keptFor })
          .where(thisRevision(firmId, id, revision))
          .returning({ revision: jobRevisions.revision }),
      );
      return kept.length > 0;
    },
    remove: (id, base) =>
      setRemoved(scope, id, and(eq(jobs.revision, base), isNull(jobs.removedAt)), now().toISOString()),
    restore: (id) => setRemoved(scope, id, undefined, null),
  };
}
