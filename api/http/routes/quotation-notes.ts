import { createRoute, z } from '@hono/zod-openapi';
import { ENGINE_VERSION } from '#engine/engine-version.ts';
import { noteRefusal, standingOf, variationRefusal } from '#engine/quotation/standing.ts';
import { variationOf } from '#engine/quotation/variation.ts';
import { workMoved } from '#engine/work-moved.ts';
import { id } from '#model/primitives.ts';
import { checkFile } from '#model/read-file.ts';
import type { StoredQuotation } from '../../db/quotation-stores.ts';
import { ifMatchHeader, jsonAnswer, problemAnswers, textAnswer, textBody } from '../answers.ts';
import { type AppParts, type FirmParts, firmParts } from '../app-parts.ts';
import { bodyText, parsedBody } from '../body-text.ts';
import { contractOf } from '../contract-of.ts';
import { routeAt } from '../guards.ts';
import { faultDetails, Problem } from '../problems.ts';
import {
  noteBody,
  quotationAddress,
  quotationRecord,
  recordOf,
  seqOf,
  storedQuotation,
  versionOf,
  wholeQuotation,
} from '../quotation-records.ts';
import { type FirmApp, resourceApp } from '../resource-app.ts';
import { etagOf, ifMatchOf, staleRevision } from '../revision-headers.ts';
import { storedJob } from '../stored-job.ts';

const MOST_PHOTOS = 12;

/** What is asked for when a variation is offered. */
const offerBody = z.strictObject({
  /** Made by whoever asks: the same id again is the same variation. */
  id,
  /** What was found, in words for the customer. */
  reason: z.string().trim().min(1, 'must say what was found').max(2000),
  photos: z.array(z.string().regex(/^[0-9a-f]{64}$/, 'must be the id of a photo')).max(MOST_PHOTOS),
  /** The ETag of the job that it is priced as. */
  job: z.string().max(200),
  /** What the screen said that it costs, VAT included: nothing else is offered. */
  differencePence: z.int(),
});

const noteOnQuotation = createRoute({
  ...routeAt('noteOnQuotation'),
  summary: 'Note what became of a quotation or of one of its variations',
  description:
    'A line is added to its history; nothing of the quotation changes. If-Match names the history that was seen.',
  request: { params: quotationAddress, headers: ifMatchHeader, body: textBody('QuotationNote') },
  responses: {
    200: jsonAnswer('Noted.', quotationRecord),
    ...problemAnswers(
      'not-json',
      'no-such-quotation',
      'quotation-erased',
      'not-now',
      'stale-revision',
      'body-unreadable',
      'if-match-missing',
    ),
  },
});

const offerVariation = createRoute({
  ...routeAt('offerVariation'),
  summary: 'Offer a change of accepted work, priced as the quotation was',
  description:
    'What has changed in the job since it was agreed is priced with the prices, norms and terms that the quotation froze.',
  request: { params: quotationAddress, headers: ifMatchHeader, body: textBody('OfferVariation') },
  responses: {
    200: jsonAnswer('It was offered before, under this id.', quotationRecord),
    201: jsonAnswer('Offered.', quotationRecord),
    ...problemAnswers(
      'not-json',
      'no-such-job',
      'no-such-quotation',
      'quotation-erased',
      'no-such-scheme',
      'no-such-photo',
      'not-now',
      'stale-revision',
      'body-unreadable',
      'if-match-missing',
    ),
  },
});

const readVariationJob = createRoute({
  ...routeAt('readVariationJob'),
  summary: 'The job file that a variation was priced as, to the byte',
  request: { params: quotationAddress.extend({ variation: id }) },
  responses: {
    200: textAnswer('As it was offered.', 'Job'),
    ...problemAnswers('no-such-quotation', 'quotation-erased', 'no-such-variation'),
  },
});

/** Refuses a history other than the one that was seen. */
function refuseStale(stored: StoredQuotation, seen: string): void {
  const version = versionOf(stored);
  if (etagOf(version) !== seen) throw staleRevision(version);
}

type Offer = z.infer<typeof offerBody>;

/** Prices and writes a variation down; what it costs must be what was shown. */
async function offer({ stores }: FirmParts, stored: StoredQuotation, body: Offer): Promise<void> {
  const standing = standingOf(stored);
  const refusal = variationRefusal(standing);
  if (refusal !== null) throw new Problem('not-now', refusal);
  const { job, text, ...head } = await storedJob(stores.jobs, stored.jobId);
  if (etagOf(head) !== body.job) throw staleRevision(head);
  const known = await stores.assets.known(body.photos);
  const missing = body.photos.filter((photo) => !known.has(photo));
  if (missing.length > 0) throw new Problem('no-such-photo', `Send the photo first: ${missing.join(', ')}.`);
  const contract = await contractOf(stores.quotations, stored, standing);
  const made = variationOf(contract, job);
  if (made === null)
    throw new Problem('no-such-scheme', 'The accepted scheme is not in the job any more: undo its removal.');
  const { beforePence, afterPence, moved } = made;
  if (moved.parts.length === 0 && moved.idle.length === 0)
    throw new Problem(
      'not-now',
      'Nothing of the job has changed since it was agreed: change it first, as it was found.',
    );
  if (afterPence - beforePence !== body.differencePence)
    throw new Problem(
      'not-now',
      'It comes to another sum than was shown: load the page again, then offer it.',
    );
  const before = stored.variations.find((one) => one.id === standing.restsOn);
  const written = await stores.quotations.offerVariation(
    stored.jobId,
    { id: stored.id, seq: seqOf(stored) },
    {
      id: body.id,
      reason: body.reason,
      beforePence,
      afterPence,
      parts: moved.parts.map(({ words, figures }) => ({ words, pence: figures.grossPence })),
      work: workMoved(contract, job),
      photos: body.photos,
      engine: ENGINE_VERSION,
      beforeJobRevision: before?.jobRevision ?? stored.jobRevision,
      base: head,
      jobText: text,
    },
  );
  if (written === 'moved-on') throw staleRevision(versionOf(stored));
}

/** Notes on quotations, and variations of accepted work. */
export function quotationNoteRoutes(appParts: AppParts): FirmApp {
  const app = resourceApp()
    .openapi(noteOnQuotation, async (c) => {
      const { stores } = c.var;
      const address = c.req.valid('param');
      const seen = etagOf(ifMatchOf(c));
      const body = checkFile(noteBody, parsedBody(await bodyText(c)));
      if (!body.ok)
        throw new Problem('body-unreadable', 'It is no note on a quotation.', faultDetails(body.faults));
      const stored = await wholeQuotation(stores.quotations, address);
      refuseStale(stored, seen);
      const refusal = noteRefusal(standingOf(stored), body.value, stored.offers);
      if (refusal !== null) throw new Problem('not-now', refusal);
      const last = { id: stored.id, seq: seqOf(stored) };
      const written = await stores.quotations.note(address.id, last, body.value);
      const now = await storedQuotation(stores.quotations, address);
      if (written === 'moved-on') throw staleRevision(versionOf(now));
      return c.json(recordOf(now), 200);
    })
    .openapi(offerVariation, async (c) => {
      const parts = firmParts(appParts, c);
      const { stores } = c.var;
      const address = c.req.valid('param');
      const seen = etagOf(ifMatchOf(c));
      const body = checkFile(offerBody, parsedBody(await bodyText(c)));
      if (!body.ok) throw new Problem('body-unreadable', 'It is no variation.', faultDetails(body.faults));
      const stored = await wholeQuotation(stores.quotations, address);
      if (stored.variations.some((one) => one.id === body.value.id)) return c.json(recordOf(stored), 200);
      refuseStale(stored, seen);
      await offer(parts, stored, body.value);
      return c.json(recordOf(await storedQuotation(stores.quotations, address)), 201);
    })
    .openapi(readVariationJob, async (c) => {
      const { stores } = c.var;
      const { id: jobId, quotation, variation } = c.req.valid('param');
      await wholeQuotation(stores.quotations, { id: jobId, quotation });
      const text = await stores.quotations.readVariationJob(jobId, quotation, variation);
      if (text === null) throw new Problem('no-such-variation', `There is no variation "${variation}".`);
      return c.body(text, 200, { 'Content-Type': 'application/json' });
    });
  app.openAPIRegistry.register('QuotationNote', noteBody);
  app.openAPIRegistry.register('OfferVariation', offerBody);
  return app;
}
