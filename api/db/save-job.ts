import { and, eq, exists, isNotNull, isNull, notExists, sql } from 'drizzle-orm';
import type { LibSQLDatabase } from 'drizzle-orm/libsql';
import { alias } from 'drizzle-orm/sqlite-core';
import { refusal } from './hand-out.ts';
import { type JobScope, thisHead, thisJob, thisRevision } from './job-scope.ts';
import { jobRevisions } from './schema/job-revisions.ts';
import { jobs } from './schema/jobs.ts';
import type { Created, JobHeading, Saved, SaveHow, Version } from './stores.ts';
import { tagOf } from './tag-of.ts';

/**
 * A chain of autosaves lasts this long, ms; its middle is let go, its last stays. So an afternoon of work leaves a
 * step of every ten minutes, not of every keystroke.
 */
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

const rowKey = { revision: jobs.revision, tag: jobs.tag, savedAt: jobs.savedAt };

/** What a save is, apart from whose. */
export interface JobSave {
  readonly heading: JobHeading;
  readonly text: string;
  /** The version that the text was made from. */
  readonly base: Version;
  readonly how: SaveHow;
}

/** What is written into the revision's row. */
interface NewRevision {
  readonly id: string;
  readonly text: string;
  readonly tag: string;
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
        tag: sql`${made.tag}`.as('tag'),
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

/** When the chain began that an autosave on this base goes on with; the time of the save where none does. */
async function chainBeganOf(
  { database, firmId }: JobScope,
  { heading, base, how }: JobSave,
  savedAt: string,
): Promise<string> {
  if (how !== 'autosave') return savedAt;
  const [before] = await database.reader
    .select({ how: jobRevisions.how, chainBegan: jobRevisions.chainBegan })
    .from(jobRevisions)
    .where(thisRevision(firmId, heading.id, base.revision));
  if (before?.how !== 'autosave') return savedAt;
  // A clock that was put back ends a chain as well: it could go on for as long as the clock was wrong.
  const sinceMs = Date.parse(savedAt) - Date.parse(before.chainBegan);
  return sinceMs >= 0 && sinceMs < CHAIN_MS ? before.chainBegan : savedAt;
}

const theBase = alias(jobRevisions, 'the_base');

/**
 * Lets go of the revision before the base of a save that went in, if both are autosaves of one chain and neither was
 * handed out, and the one before is not kept. It must follow `writeHead` in its batch.
 *
 * Nobody's base of a merge goes this way. Call the base b; say that a client *holds* the newest revision that it knows
 * to be its own state: one that it was handed (by a reading, or by the number in a refusal), or one that it saved and
 * was told so. Whoever holds a revision that was never handed out has therefore made it. Now somebody saved on b:
 *
 * 1. He holds b, and b was not handed out: he made b.
 * 2. b is an autosave, so it was a save on b - 1: when he made b he held b - 1. (Not so for a job that was made anew
 *    under a removed one's id, whose maker held nothing; that is why b must be an autosave.)
 * 3. b - 1 was not handed out either, so by the same reasoning he, and nobody else, ever held b - 1.
 * 4. He has b now, so he was told that b went in, and holds b - 1 no more.
 *
 * So b - 1 is nobody's. What stays, and must:
 *
 * - b itself, although the same hand has just saved over it: the answer to this save may be lost on the way, and then
 *   its sender still holds b and will find the save that it sends again refused. It goes at the save on b + 1.
 * - b - 1 where b was handed out: the save on b may come from whoever read b, while the maker of b waits in vain for
 *   his answer, goes quiet, and holds b - 1 for as long as he likes.
 * - n where its maker goes quiet and another, who read n, saves n + 1 and n + 2: n was handed out, and stays for good.
 * - The first revision, which its creator holds without having read it: it counts as saved by hand.
 *
 * It rests on a client that saves on what it read, made, or was refused for. Whoever takes a number from a list and
 * saves on it unread has told us that he holds what he does not.
 */
const letGo = (writer: LibSQLDatabase, firmId: string, id: string, base: number) =>
  writer.delete(jobRevisions).where(
    and(
      // Nothing goes for a save that did not go in: then `writeHead`, just before, wrote no row.
      sql`changes() > 0`,
      thisRevision(firmId, id, base - 1),
      eq(jobRevisions.how, 'autosave'),
      eq(jobRevisions.handedOut, false),
      isNull(jobRevisions.keptFor),
      exists(
        writer
          .select({ one: sql`1` })
          .from(theBase)
          .where(
            and(
              eq(theBase.firmId, firmId),
              eq(theBase.jobId, id),
              eq(theBase.revision, base),
              eq(theBase.how, 'autosave'),
              eq(theBase.handedOut, false),
              eq(theBase.chainBegan, jobRevisions.chainBegan),
            ),
          ),
      ),
    ),
  );

/** A job that is new, or that takes the place of a removed one of its id: then the revisions go on. */
export async function createJob(scope: JobScope, heading: JobHeading, text: string): Promise<Created> {
  const { database, firmId, now } = scope;
  const savedAt = now().toISOString();
  const tag = tagOf(text);
  const row = { firmId, jobId: heading.id, revision: 1, tag, savedAt, removedAt: null, ...listed(heading) };
  const [[created]] = await database.write((writer) =>
    writer.batch([
      writer
        .insert(jobs)
        .values(row)
        .onConflictDoUpdate({
          target: [jobs.firmId, jobs.jobId],
          set: { ...row, revision: sql`${jobs.revision} + 1` },
          setWhere: isNotNull(jobs.removedAt),
        })
        .returning(rowKey),
      writeHead(writer, firmId, { id: heading.id, text, tag, how: 'by-hand', savedAt, chainBegan: savedAt }),
    ]),
  );
  return created === undefined ? { outcome: 'id-taken' } : { outcome: 'created', ...created };
}

/** One atomic batch, guarded by the base: either all of it goes in, or nothing changes. */
export async function saveJob(scope: JobScope, save: JobSave): Promise<Saved> {
  const { database, firmId, now } = scope;
  const { heading, text, base, how } = save;
  const { id } = heading;
  const savedAt = now().toISOString();
  const chainBegan = await chainBeganOf(scope, save, savedAt);
  const tag = tagOf(text);
  const [[saved]] = await database.write((writer) =>
    writer.batch([
      writer
        .update(jobs)
        .set({ revision: base.revision + 1, tag, savedAt, ...listed(heading) })
        .where(thisHead(firmId, id, base))
        .returning(rowKey),
      writeHead(writer, firmId, { id, text, tag, how, savedAt, chainBegan }),
      letGo(writer, firmId, id, base.revision),
    ]),
  );
  return saved === undefined ? refusal(scope, id) : { outcome: 'saved', ...saved };
}
