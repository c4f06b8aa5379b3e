import { and, eq, isNull, sql } from 'drizzle-orm';
import type { BatchItem } from 'drizzle-orm/batch';
import type { LibSQLDatabase } from 'drizzle-orm/libsql';
import { refusal } from './hand-out.ts';
import { type JobScope, thisHead, thisRevision } from './job-scope.ts';
import type { Lessening, SeenQuotation, Written } from './quotation-stores.ts';
import { jobRevisions } from './schema/job-revisions.ts';
import { jobs } from './schema/jobs.ts';
import { quotationEvents } from './schema/quotation-events.ts';
import { quotations } from './schema/quotations.ts';
import { variations } from './schema/variations.ts';
import type { Saved, Version } from './stores.ts';
import { tagOf } from './tag-of.ts';

/** True where the statement before it in the batch wrote something: each hangs on the one before it, so that all are written or none. */
const wroteBefore = sql`changes() > 0`;

const byteLength = (text: string): number => new TextEncoder().encode(text).length;

/** The job's quotations; its variations and events are found by the same two keys. */
const ofJob = (
  table: typeof quotations | typeof variations | typeof quotationEvents,
  { firmId }: JobScope,
  jobId: string,
) => and(eq(table.firmId, firmId), eq(table.jobId, jobId));

/** Rows of one of its quotations that still say what they said. */
const notErasedOf = (
  table: Parameters<typeof ofJob>[0],
  scope: JobScope,
  jobId: string,
  quotationId: string,
) =>
  and(ofJob(table, scope, jobId), eq(table.quotationId, quotationId), sql`${table.lessened} is not 'whole'`);

/** Takes all that a quotation said out of it, while its history is as it was seen; its number and its days stay. */
export async function eraseQuotation(scope: JobScope, jobId: string, seen: SeenQuotation): Promise<Written> {
  const { database, firmId, now } = scope;
  const lessenedAt = now().toISOString();
  const whole = { lessened: 'whole', lessenedAt } as const;
  const isSeen = sql`${seen.seq} = (select coalesce(max(seq), 0) from ${quotationEvents}
    where firm_id = ${firmId} and job_id = ${jobId} and quotation_id = ${seen.id})`;
  const isErased = sql`exists (select 1 from ${quotations} where firm_id = ${firmId} and job_id = ${jobId}
    and quotation_id = ${seen.id} and lessened = 'whole')`;
  const [written] = await database.write((writer) =>
    writer.batch([
      writer
        .update(quotations)
        .set({ document: '', drawings: '', jobText: '', libraryText: '', offers: [], ...whole })
        .where(and(notErasedOf(quotations, scope, jobId, seen.id), isSeen))
        .returning({ id: quotations.quotationId }),
      writer
        .update(variations)
        .set({ reason: '', work: null, photos: [], jobText: '', ...whole })
        .where(and(notErasedOf(variations, scope, jobId, seen.id), isErased)),
      // What was noted stays as what kind of thing it was and on which day.
      writer
        .update(quotationEvents)
        .set({ note: sql`json_remove(json_replace(note, '$.by', '(erased)'), '$.words')`, ...whole })
        .where(and(notErasedOf(quotationEvents, scope, jobId, seen.id), isErased)),
    ]),
  );
  return written.length === 0 ? 'moved-on' : 'written';
}

/** Every state of a job that is kept, without its customer. */
async function revisionsWithout(
  writer: LibSQLDatabase,
  { firmId }: JobScope,
  jobId: string,
  lessen: Lessening,
) {
  const rows = await writer
    .select({ revision: jobRevisions.revision, text: jobRevisions.text })
    .from(jobRevisions)
    .where(and(eq(jobRevisions.firmId, firmId), eq(jobRevisions.jobId, jobId)));
  return rows.map(({ revision, text }) => {
    const lessened = lessen.job(text);
    return { revision, text: lessened, tag: tagOf(lessened), bytes: byteLength(lessened) };
  });
}

/** What is to be written of the job's quotations, variations and histories; each hangs on the statement before it. */
async function papersWithout(writer: LibSQLDatabase, scope: JobScope, jobId: string, lessen: Lessening) {
  const lessened = { lessened: 'customer', lessenedAt: scope.now().toISOString() } as const;
  const papers = await writer
    .select()
    .from(quotations)
    .where(and(ofJob(quotations, scope, jobId), isNull(quotations.lessened)));
  const varied = await writer
    .select()
    .from(variations)
    .where(and(ofJob(variations, scope, jobId), isNull(variations.lessened)));
  const events = await writer
    .select()
    .from(quotationEvents)
    .where(and(ofJob(quotationEvents, scope, jobId), isNull(quotationEvents.lessened)));
  return [
    ...papers.map(({ quotationId, document, jobText }) =>
      writer
        .update(quotations)
        .set({ document: lessen.document(document, jobText), jobText: lessen.job(jobText), ...lessened })
        .where(and(ofJob(quotations, scope, jobId), eq(quotations.quotationId, quotationId), wroteBefore)),
    ),
    ...varied.map(({ quotationId, variationId, jobText }) =>
      writer
        .update(variations)
        .set({ reason: lessen.reason, work: null, photos: [], jobText: lessen.job(jobText), ...lessened })
        .where(
          and(
            ofJob(variations, scope, jobId),
            eq(variations.quotationId, quotationId),
            eq(variations.variationId, variationId),
            wroteBefore,
          ),
        ),
    ),
    ...events.map(({ quotationId, seq, note }) =>
      writer
        .update(quotationEvents)
        .set({ note: lessen.note(note), ...lessened })
        .where(
          and(
            ofJob(quotationEvents, scope, jobId),
            eq(quotationEvents.quotationId, quotationId),
            eq(quotationEvents.seq, seq),
            wroteBefore,
          ),
        ),
    ),
  ];
}

/** How many lines the histories of a job's quotations have: whatever is written of a quotation adds one. */
const linesOf = ({ firmId }: JobScope, jobId: string) =>
  sql`(select count(*) from ${quotationEvents} where firm_id = ${firmId} and job_id = ${jobId})`;

/**
 * Takes the customer out of a job, out of every state of it that is kept, and out of its quotations, if a version is the one
 * that counts; all of it or nothing. Numbers of revisions stay; their tags change with their texts, so that nobody saves what
 * they still hold over it unasked.
 */
export async function forgetCustomer(
  scope: JobScope,
  jobId: string,
  { base, lessen }: { readonly base: Version; readonly lessen: Lessening },
): Promise<Saved> {
  const { database, firmId } = scope;
  const saved = await database.write(async (writer) => {
    // Another server on the same store may quote between what is read here and what is written.
    const [seen] = await writer.all<{ lines: number }>(sql`select ${linesOf(scope, jobId)} as lines`);
    const states = await revisionsWithout(writer, scope, jobId, lessen);
    const head = states.find(({ revision }) => revision === base.revision);
    if (head === undefined) return undefined;
    const papers = await papersWithout(writer, scope, jobId, lessen);
    const first = writer
      .update(jobs)
      .set({ tag: head.tag, ...lessen.heading })
      .where(and(thisHead(firmId, jobId, base), sql`${linesOf(scope, jobId)} = ${seen?.lines ?? 0}`))
      .returning({ revision: jobs.revision, tag: jobs.tag, savedAt: jobs.savedAt });
    const texts = states.map(({ revision, ...state }) =>
      writer
        .update(jobRevisions)
        .set(state)
        .where(and(thisRevision(firmId, jobId, revision), wroteBefore)),
    );
    const rest: BatchItem<'sqlite'>[] = [...texts, ...papers];
    const [[row]] = await writer.batch([first, ...rest]);
    return row;
  });
  return saved === undefined ? refusal(scope, jobId) : { outcome: 'saved', ...saved };
}
