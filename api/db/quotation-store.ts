import { type SQL, sql } from 'drizzle-orm';
import type { QuotationEvent } from '#model/quotation-notes.ts';
import { eraseQuotation, forgetCustomer } from './erase.ts';
import type { JobScope } from './job-scope.ts';
import type { Database } from './open-database.ts';
import type {
  NewQuotation,
  NewVariation,
  QuotationStore,
  SeenQuotation,
  Written,
} from './quotation-stores.ts';
import { readFrozenText, readQuotations, readVariationJob } from './read-quotations.ts';
import { assets } from './schema/assets.ts';
import { jobRevisions } from './schema/job-revisions.ts';
import { jobs } from './schema/jobs.ts';
import { quotationEvents } from './schema/quotation-events.ts';
import { quotations } from './schema/quotations.ts';
import { variations } from './schema/variations.ts';
import { StoreTrouble } from './store-trouble.ts';
import type { Version } from './stores.ts';

/** A quotation's place in the store. */
interface Place {
  readonly firmId: string;
  readonly jobId: string;
}

/** True while the state of a job is the one that counts. */
const isHead = ({ firmId, jobId }: Place, { revision, tag }: Version): SQL => sql`exists (
  select 1 from ${jobs} where firm_id = ${firmId} and job_id = ${jobId}
    and revision = ${revision} and tag = ${tag} and removed_at is null)`;

/** True while nothing was noted of a quotation since its line `seq`. */
const isSeen = ({ firmId, jobId }: Place, { id, seq }: SeenQuotation): SQL => sql`${seq} = (
  select coalesce(max(seq), 0) from ${quotationEvents}
  where firm_id = ${firmId} and job_id = ${jobId} and quotation_id = ${id})`;

/** True while all of these photos are kept. */
const areThere = ({ firmId }: Place, photos: readonly string[]): SQL => sql`not exists (
  select 1 from json_each(${JSON.stringify(photos)}) as photo where not exists (
    select 1 from ${assets} where firm_id = ${firmId} and asset_id = photo.value))`;

const all = (conditions: readonly SQL[]): SQL => sql.join([...conditions], sql` and `);

/** A line of a quotation's history, written if the statement before it in the batch wrote a row, or if conditions hold. */
const writeEvent = (
  { firmId, jobId }: Place,
  { id, seq }: SeenQuotation,
  { at, note }: Pick<QuotationEvent, 'at' | 'note'>,
  condition: SQL,
): SQL => sql`
  insert into ${quotationEvents} (firm_id, job_id, quotation_id, seq, at, note)
  select ${firmId}, ${jobId}, ${id}, ${seq}, ${at}, ${JSON.stringify(note)}
  where ${condition} returning seq`;

const wroteBefore = sql`changes() > 0`;

async function issue(scope: JobScope, made: NewQuotation): Promise<Written> {
  const { database, firmId, now } = scope;
  const { id, jobId, base, texts } = made;
  const place = { firmId, jobId };
  const at = now().toISOString();
  const isNext = sql`${made.revision} = 1 + (
    select coalesce(max(revision), 0) from ${quotations} where firm_id = ${firmId} and job_id = ${jobId})`;
  const goes = all([isHead(place, base), isNext, ...made.replaces.map((seen) => isSeen(place, seen))]);
  const [[written]] = await database.write((writer) =>
    writer.batch([
      writer.all<{ revision: number }>(sql`
        insert into ${quotations} (firm_id, job_id, quotation_id, revision, date, issued_at, heading, valid_until, offers,
          document, drawings, engine, edition, job_revision, job_tag, job_text, library_revision, library_text)
        select ${firmId}, ${jobId}, ${id}, ${made.revision}, ${made.date}, ${at}, ${made.heading}, ${made.validUntil},
          ${JSON.stringify(made.offers)}, ${texts.document}, ${texts.drawings}, ${made.engine}, ${made.edition}, ${base.revision},
          ${base.tag}, ${texts.job}, ${made.libraryRevision}, ${texts.library}
        where ${goes} returning revision`),
      writer.all(writeEvent(place, { id, seq: 1 }, { at, note: { kind: 'issued' } }, wroteBefore)),
      // Each hangs on the one before it, so that all are written or none.
      ...made.replaces.map((seen) =>
        writer.all(
          writeEvent(
            place,
            { id: seen.id, seq: seen.seq + 1 },
            { at, note: { kind: 'replaced', byId: id } },
            wroteBefore,
          ),
        ),
      ),
      writer.all(keepQuoted(place, base.revision)),
    ]),
  );
  return written === undefined ? 'moved-on' : 'written';
}

/** Keeps a revision of the job for good, where what stands before it in the batch was written. */
const keepQuoted = ({ firmId, jobId }: Place, revision: number): SQL => sql`
  update ${jobRevisions} set kept_for = 'quoted'
  where firm_id = ${firmId} and job_id = ${jobId} and revision = ${revision} and changes() > 0
  returning revision`;

async function note(
  scope: JobScope,
  jobId: string,
  seen: SeenQuotation,
  noted: QuotationEvent['note'],
): Promise<Written> {
  const { database, firmId, now } = scope;
  const place = { firmId, jobId };
  const next = { id: seen.id, seq: seen.seq + 1 };
  const event = { at: now().toISOString(), note: noted };
  const written = await database.write((writer) =>
    writer.all(writeEvent(place, next, event, isSeen(place, seen))),
  );
  return written.length === 0 ? 'moved-on' : 'written';
}

async function offerVariation(
  scope: JobScope,
  jobId: string,
  seen: SeenQuotation,
  made: NewVariation,
): Promise<Written> {
  const { database, firmId, now } = scope;
  const place = { firmId, jobId };
  const at = now().toISOString();
  const { base } = made;
  const [[written]] = await database.write((writer) =>
    writer.batch([
      writer.all<{ number: number }>(sql`
        insert into ${variations} (firm_id, job_id, quotation_id, variation_id, number, offered_at, reason,
          before_pence, after_pence, parts, work, photos, engine, before_job_revision, job_revision, job_tag, job_text)
        select ${firmId}, ${jobId}, ${seen.id}, ${made.id},
          1 + (select coalesce(max(number), 0) from ${variations}
            where firm_id = ${firmId} and job_id = ${jobId} and quotation_id = ${seen.id}),
          ${at}, ${made.reason}, ${made.beforePence}, ${made.afterPence}, ${JSON.stringify(made.parts)},
          ${made.work === null ? null : JSON.stringify(made.work)}, ${JSON.stringify(made.photos)}, ${made.engine}, ${made.beforeJobRevision}, ${base.revision}, ${base.tag},
          ${made.jobText}
        where ${all([isHead(place, base), isSeen(place, seen), areThere(place, made.photos)])} returning number`),
      writer.all(
        writeEvent(
          place,
          { id: seen.id, seq: seen.seq + 1 },
          { at, note: { kind: 'variation-offered', variationId: made.id } },
          wroteBefore,
        ),
      ),
      writer.all(keepQuoted(place, base.revision)),
    ]),
  );
  return written === undefined ? 'moved-on' : 'written';
}

/** Columns of JSON are parsed as they are read: one that is none any more was damaged in the file. */
async function tellingDamage<T>(reading: Promise<T>): Promise<T> {
  try {
    return await reading;
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error;
    const words = 'holds a quotation that is damaged. Restore a backup';
    throw new StoreTrouble(`The store ${words}.`, { withoutPlace: `The store ${words}.`, cause: error });
  }
}

/** The quotations of one firm in a database. */
export function quotationStore(database: Database, firmId: string, now: () => Date): QuotationStore {
  const scope: JobScope = { database, firmId, now };
  return {
    list: (jobId) => tellingDamage(readQuotations(scope, jobId)),
    read: async (jobId, id) =>
      (await tellingDamage(readQuotations(scope, jobId))).find((one) => one.id === id) ?? null,
    readText: (jobId, id, which) => readFrozenText(scope, { jobId, id }, which),
    readVariationJob: (jobId, id, variationId) => readVariationJob(scope, { jobId, id }, variationId),
    issue: (quotation) => issue(scope, quotation),
    note: (jobId, seen, noted) => note(scope, jobId, seen, noted),
    offerVariation: (jobId, seen, variation) => offerVariation(scope, jobId, seen, variation),
    erase: (jobId, seen) => eraseQuotation(scope, jobId, seen),
    forgetCustomer: (jobId, how) => forgetCustomer(scope, jobId, how),
  };
}
