import { z } from '@hono/zod-openapi';
import { type QuotationDrawings, quotationDrawings } from '#drawing/quotation/quotation-drawings.ts';
import { estimate } from '#engine/estimate.ts';
import type { QuotationDocument } from '#engine/quotation/document.ts';
import { nextRevision, revisionRefusal, standingOf } from '#engine/quotation/standing.ts';
import { quote } from '#engine/quote.ts';
import type { Job } from '#model/job.ts';
import { id, isoDate } from '#model/primitives.ts';
import type { NewQuotation, StoredQuotation } from '../db/quotation-stores.ts';
import type { Version } from '../db/stores.ts';
import type { FirmParts } from './app-parts.ts';
import { type FirmLibrary, firmLibrary } from './firm-library.ts';
import { Problem } from './problems.ts';
import { seqOf } from './quotation-records.ts';
import { etagOf, staleRevision } from './revision-headers.ts';
import { storedJob } from './stored-job.ts';

/** What is asked for when a quotation is issued. */
export const issueBody = z.strictObject({
  /** Made by whoever asks: the same id again is the same quotation, however often it is asked for. */
  id,
  /** The day that it carries, ISO. */
  date: isoDate,
  /** The ETag of the library that its prices were seen with. */
  library: z.string().max(200),
});
export type IssueBody = z.infer<typeof issueBody>;

/** What a quotation is issued from: the job and the library as they were seen. */
interface IssueAsk {
  readonly jobId: string;
  readonly base: Version;
  readonly body: IssueBody;
}

/** Refuses what would go out unfinished: the list of what is missing goes with it. */
function refuseUnready(document: QuotationDocument): void {
  if (document.schemes.length === 0)
    throw new Problem('not-ready', 'The job has no scheme to offer: make one in Ways.');
  const musts = document.beforeSending.filter(({ weight }) => weight === 'must');
  if (document.draft === null && musts.length === 0) return;
  const faults = musts.map(({ words, where }) => ({
    path: where,
    message: words,
    remedy: 'See to it first',
  }));
  throw new Problem('not-ready', musts[0]?.words ?? document.draft ?? 'It is a draft.', { faults });
}

/** The open quotations that a new one takes the place of; an accepted one cannot be replaced. */
function replacedBy(earlier: readonly StoredQuotation[]): NewQuotation['replaces'] {
  const standings = earlier.map((stored) => ({ stored, standing: standingOf(stored) }));
  for (const { stored, standing } of standings) {
    const refusal = revisionRefusal(standing);
    if (refusal !== null) throw new Problem('not-now', `Revision ${stored.revision}: ${refusal}`);
  }
  return standings
    .filter(({ standing }) => standing.status === 'issued')
    .map(({ stored }) => ({ id: stored.id, seq: seqOf(stored) }));
}

/** A job's document and its drawings as they would go out now. */
function paperOf(
  job: Job,
  { library }: FirmLibrary,
  {
    date,
    jobRevision,
    revision,
  }: { readonly date: string; readonly jobRevision: number; readonly revision: number },
): { readonly document: QuotationDocument; readonly drawings: QuotationDrawings } {
  const result = estimate(job, library, { date, revision: jobRevision });
  const { notIssued: _, ...document } = quote(job, library, result, revision);
  return { document, drawings: quotationDrawings(document, result) };
}

function offersOf(job: Job, { schemes }: QuotationDocument): NewQuotation['offers'] {
  const names = new Map(job.schemes.map(({ id: schemeId, name }) => [schemeId, name]));
  return schemes.map(({ schemeId, price }) => ({
    schemeId,
    name: names.get(schemeId) ?? schemeId,
    grossPence: price.grossPence,
  }));
}

/** A quotation that was issued under the same id from the same state; from another one the id is taken. */
function issuedBefore(earlier: readonly StoredQuotation[], { base, body }: IssueAsk): StoredQuotation | null {
  const there = earlier.find((one) => one.id === body.id);
  if (there === undefined) return null;
  if (there.jobRevision === base.revision && there.date === body.date) return there;
  throw new Problem('quotation-id-taken', `Give it another id than "${body.id}".`);
}

/**
 * Issues a quotation from the job and the library as they were seen, once: whoever asks again with the same id is told of
 * the one that there is. Nothing is issued where job, library or an earlier quotation has moved on meanwhile.
 */
export async function issueQuotation(
  parts: FirmParts,
  ask: IssueAsk,
): Promise<{ readonly stored: StoredQuotation; readonly isNew: boolean }> {
  const { stores } = parts;
  const { jobId, base, body } = ask;
  const { job, text, ...head } = await storedJob(stores.jobs, jobId);
  const earlier = await stores.quotations.list(jobId);
  const before = issuedBefore(earlier, ask);
  if (before !== null) return { stored: before, isNew: false };
  if (etagOf(head) !== etagOf(base)) throw staleRevision(head);
  const firm = await firmLibrary(stores.library, parts.demoLibrary);
  if (etagOf(firm) !== body.library)
    throw new Problem(
      'stale-library',
      'Prices, norms or terms were saved since: look at the price again, then issue it.',
    );
  const replaces = replacedBy(earlier);
  const revision = nextRevision(earlier);
  const { document, drawings } = paperOf(job, firm, {
    date: body.date,
    jobRevision: head.revision,
    revision,
  });
  refuseUnready(document);
  const written = await stores.quotations.issue({
    id: body.id,
    jobId,
    revision,
    date: body.date,
    heading: document.kind,
    validUntil: document.validUntil,
    offers: offersOf(job, document),
    engine: document.engine,
    edition: document.edition,
    libraryRevision: firm.revision,
    base,
    texts: {
      document: JSON.stringify(document),
      drawings: JSON.stringify(drawings),
      job: text,
      library: firm.text,
    },
    replaces,
  });
  const stored = await stores.quotations.read(jobId, body.id);
  if (stored !== null) return { stored, isNew: written === 'written' };
  const now = await storedJob(stores.jobs, jobId);
  throw staleRevision(now);
}
