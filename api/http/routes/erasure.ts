import { createRoute, z } from '@hono/zod-openapi';
import { eraseRefusal, forgetRefusal } from '#engine/quotation/erasure.ts';
import { standingOf } from '#engine/quotation/standing.ts';
import { ifMatchHeader, jobAddress, jsonAnswer, problemAnswers, savedAnswer } from '../answers.ts';
import type { AppParts } from '../app-parts.ts';
import { routeAt } from '../guards.ts';
import { lesseningOf } from '../lessening.ts';
import { Problem } from '../problems.ts';
import {
  quotationAddress,
  quotationRecord,
  recordOf,
  seqOf,
  storedQuotation,
  versionOf,
} from '../quotation-records.ts';
import { type FirmApp, resourceApp } from '../resource-app.ts';
import { etagOf, ifMatchOf, staleRevision } from '../revision-headers.ts';
import { noSuchJob, storedJob } from '../stored-job.ts';

/** A photo that was sent so long ago belongs to nothing that is still being made, ms. */
const WEEK_MS = 7 * 24 * 60 * 60_000;

const eraseQuotation = createRoute({
  ...routeAt('eraseQuotation'),
  summary: 'Erase what a quotation said that never came to an agreement',
  description:
    'For one that was declined, withdrawn or replaced. Its number, its days and what kind of things became of it stay; document, drawings, job, prices, sums, names and photos go, for good. If-Match names the history that was seen.',
  request: { params: quotationAddress, headers: ifMatchHeader },
  responses: {
    200: jsonAnswer('Erased.', quotationRecord),
    ...problemAnswers('no-such-quotation', 'not-now', 'stale-revision', 'if-match-missing'),
  },
});

const forgetCustomer = createRoute({
  ...routeAt('forgetCustomer'),
  summary: 'Erase whose a job is, wherever it is kept',
  description:
    'Name, address, title, notes, remarks, photos and underlays go out of the job, out of every kept state of it, out of its quotations and out of what was noted of them, for good; every figure stays. If-Match names the revision of the job that was seen.',
  request: { params: jobAddress, headers: ifMatchHeader },
  responses: {
    200: savedAnswer('The customer is erased; the revision is the same, its tag another.'),
    ...problemAnswers('no-such-job', 'job-unreadable', 'not-now', 'stale-revision', 'if-match-missing'),
  },
});

const sweepPhotos = createRoute({
  ...routeAt('sweepPhotos'),
  summary: 'Remove the photos that nothing refers to any more',
  description:
    'Only those that no kept state of a job, no quotation, no variation and no library names, and that were sent more than a week ago: a newer one may belong to something that is being made.',
  responses: {
    200: jsonAnswer('So many were removed.', z.object({ removed: z.int(), bytes: z.int() })),
    ...problemAnswers('request-faulty'),
  },
});

/** Erasing: quotations that came to nothing, customers, photos that nothing refers to. */
export function erasureRoutes({ now }: AppParts): FirmApp {
  return resourceApp()
    .openapi(eraseQuotation, async (c) => {
      const { stores } = c.var;
      const address = c.req.valid('param');
      const seen = etagOf(ifMatchOf(c));
      const stored = await storedQuotation(stores.quotations, address);
      if (stored.lessened?.what === 'whole') return c.json(recordOf(stored), 200);
      if (etagOf(versionOf(stored)) !== seen) throw staleRevision(versionOf(stored));
      const refusal = eraseRefusal(standingOf(stored).status);
      if (refusal !== null) throw new Problem('not-now', refusal);
      const written = await stores.quotations.erase(address.id, { id: stored.id, seq: seqOf(stored) });
      const after = await storedQuotation(stores.quotations, address);
      if (written === 'moved-on') throw staleRevision(versionOf(after));
      return c.json(recordOf(after), 200);
    })
    .openapi(forgetCustomer, async (c) => {
      const { stores } = c.var;
      const { id } = c.req.valid('param');
      const base = ifMatchOf(c);
      const { job, ...head } = await storedJob(stores.jobs, id);
      if (etagOf(head) !== etagOf(base)) throw staleRevision(head);
      const issued = await stores.quotations.list(id);
      const refusal = forgetRefusal(
        issued.map((one) => ({ revision: one.revision, status: standingOf(one).status })),
      );
      if (refusal !== null) throw new Problem('not-now', refusal);
      const saved = await stores.quotations.forgetCustomer(id, { base, lessen: lesseningOf(job) });
      if (saved.outcome === 'no-such-job') throw noSuchJob(id);
      if (saved.outcome === 'stale') throw staleRevision(saved);
      // Their photos are nobody's now, unless another job has the same.
      const photos = issued.flatMap(({ variations }) => variations.flatMap((one) => one.photos));
      await stores.assets.sweep({ ids: [...photos, ...job.assets.map((one) => one.id)] });
      c.header('ETag', etagOf(saved));
      return c.json({ revision: saved.revision, savedAt: saved.savedAt }, 200);
    })
    .openapi(sweepPhotos, async (c) =>
      c.json(
        await c.var.stores.assets.sweep({ keptBefore: new Date(now().getTime() - WEEK_MS).toISOString() }),
        200,
      ),
    );
}
