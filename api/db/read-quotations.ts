import { and, asc, eq } from 'drizzle-orm';
import type { JobScope } from './job-scope.ts';
import type { FrozenText, StoredQuotation, StoredVariation } from './quotation-stores.ts';
import { quotationEvents } from './schema/quotation-events.ts';
import { quotations } from './schema/quotations.ts';
import { variations } from './schema/variations.ts';

const headColumns = {
  id: quotations.quotationId,
  jobId: quotations.jobId,
  revision: quotations.revision,
  date: quotations.date,
  issuedAt: quotations.issuedAt,
  heading: quotations.heading,
  validUntil: quotations.validUntil,
  offers: quotations.offers,
  engine: quotations.engine,
  edition: quotations.edition,
  jobRevision: quotations.jobRevision,
  libraryRevision: quotations.libraryRevision,
  lessened: quotations.lessened,
  lessenedAt: quotations.lessenedAt,
};

const variationColumns = {
  id: variations.variationId,
  number: variations.number,
  offeredAt: variations.offeredAt,
  reason: variations.reason,
  beforePence: variations.beforePence,
  afterPence: variations.afterPence,
  parts: variations.parts,
  work: variations.work,
  photos: variations.photos,
  engine: variations.engine,
  beforeJobRevision: variations.beforeJobRevision,
  jobRevision: variations.jobRevision,
};

const textColumns = {
  document: quotations.document,
  drawings: quotations.drawings,
  job: quotations.jobText,
  library: quotations.libraryText,
} as const satisfies Readonly<Record<FrozenText, unknown>>;

/** Every quotation of a job by its revision, each with its history and its variations. */
export async function readQuotations(
  { database, firmId }: JobScope,
  jobId: string,
): Promise<readonly StoredQuotation[]> {
  const { reader } = database;
  // History first: a line that is added in between is left out, rather than told of a quotation that is not there yet.
  const events = await reader
    .select({
      quotationId: quotationEvents.quotationId,
      seq: quotationEvents.seq,
      at: quotationEvents.at,
      note: quotationEvents.note,
    })
    .from(quotationEvents)
    .where(and(eq(quotationEvents.firmId, firmId), eq(quotationEvents.jobId, jobId)))
    .orderBy(asc(quotationEvents.seq));
  const varied = await reader
    .select({ quotationId: variations.quotationId, ...variationColumns })
    .from(variations)
    .where(and(eq(variations.firmId, firmId), eq(variations.jobId, jobId)))
    .orderBy(asc(variations.number));
  const heads = await reader
    .select(headColumns)
    .from(quotations)
    .where(and(eq(quotations.firmId, firmId), eq(quotations.jobId, jobId)))
    .orderBy(asc(quotations.revision));
  return heads.map(({ lessened, lessenedAt, ...head }) => {
    const own = events.filter(({ quotationId }) => quotationId === head.id);
    const offered = new Set(
      own.flatMap(({ note }) => (note.kind === 'variation-offered' ? [note.variationId] : [])),
    );
    const ownVariations = varied
      .filter(({ quotationId, id }) => quotationId === head.id && offered.has(id))
      .map(({ quotationId: _, ...variation }): StoredVariation => variation);
    return {
      ...head,
      lessened: lessened === null ? null : { what: lessened, at: lessenedAt ?? '' },
      events: own.map(({ seq, at, note }) => ({ seq, at, note })),
      variations: ownVariations,
    };
  });
}

/** What a quotation froze, to the byte; null when it is not there. */
export async function readFrozenText(
  { database, firmId }: JobScope,
  { jobId, id }: { readonly jobId: string; readonly id: string },
  which: FrozenText,
): Promise<string | null> {
  const [row] = await database.reader
    .select({ text: textColumns[which] })
    .from(quotations)
    .where(and(eq(quotations.firmId, firmId), eq(quotations.jobId, jobId), eq(quotations.quotationId, id)));
  return row?.text ?? null;
}

/** The job file that a variation was priced as, to the byte; null when it is not there. */
export async function readVariationJob(
  { database, firmId }: JobScope,
  { jobId, id }: { readonly jobId: string; readonly id: string },
  variationId: string,
): Promise<string | null> {
  const [row] = await database.reader
    .select({ text: variations.jobText })
    .from(variations)
    .where(
      and(
        eq(variations.firmId, firmId),
        eq(variations.jobId, jobId),
        eq(variations.quotationId, id),
        eq(variations.variationId, variationId),
      ),
    );
  return row?.text ?? null;
}
