import { createRoute, type OpenAPIHono, z } from '@hono/zod-openapi';
import { moneyMoved } from '#engine/quotation/money-moved.ts';
import { checkFile } from '#model/read-file.ts';
import { frozenTexts } from '../../db/quotation-stores.ts';
import { ifMatchHeader, jobAddress, jsonAnswer, problemAnswers, textAnswer, textBody } from '../answers.ts';
import type { AppParts } from '../app-parts.ts';
import { bodyText, parsedBody } from '../body-text.ts';
import { firmLibrary } from '../firm-library.ts';
import { routeAt } from '../guards.ts';
import { issueBody, issueQuotation } from '../issue-quotation.ts';
import { faultDetails, Problem } from '../problems.ts';
import { quotationAddress, quotationRecord, recordOf, storedQuotation } from '../quotation-records.ts';
import { jobFromText, libraryFromText } from '../readable-job.ts';
import { resourceApp } from '../resource-app.ts';
import { ifMatchOf } from '../revision-headers.ts';
import { storedJob } from '../stored-job.ts';

const listQuotations = createRoute({
  ...routeAt('listQuotations'),
  summary: 'The quotations of a job, the first one first, each with how it stands',
  request: { params: jobAddress },
  responses: {
    200: jsonAnswer('All of them.', z.object({ quotations: z.array(quotationRecord) })),
    ...problemAnswers('request-faulty'),
  },
});

const issue = createRoute({
  ...routeAt('issueQuotation'),
  summary: 'Issue a quotation of the job as it was seen',
  description:
    'If-Match names the revision of the job that was seen. What is issued is frozen: document, job, prices and norms. It takes the place of those that are still open. The same id sent again answers with the one that there is.',
  request: { params: jobAddress, headers: ifMatchHeader, body: textBody('IssueQuotation') },
  responses: {
    200: jsonAnswer('It was issued before, under this id.', quotationRecord),
    201: jsonAnswer('Issued.', quotationRecord),
    ...problemAnswers(
      'not-json',
      'no-such-job',
      'quotation-id-taken',
      'not-ready',
      'not-now',
      'stale-revision',
      'stale-library',
      'body-unreadable',
      'if-match-missing',
    ),
  },
});

const readQuotation = createRoute({
  ...routeAt('readQuotation'),
  summary: 'A quotation and how it stands',
  request: { params: quotationAddress },
  responses: { 200: jsonAnswer('The quotation.', quotationRecord), ...problemAnswers('no-such-quotation') },
});

const readFrozen = createRoute({
  ...routeAt('readFrozen'),
  summary: 'What a quotation froze, to the byte: its document, its drawings, the job, the library',
  request: { params: quotationAddress.extend({ text: z.enum(frozenTexts) }) },
  responses: {
    200: textAnswer('As it was issued.', 'FrozenText'),
    ...problemAnswers('no-such-quotation'),
  },
});

const movedBody = z
  .object({
    schemeId: z.string(),
    beforePence: z.int(),
    afterPence: z.int(),
    parts: z.array(
      z.object({
        cause: z.string(),
        words: z.string(),
        detail: z.string(),
        subjects: z.array(z.string()),
        figures: z.record(z.string(), z.number()),
      }),
    ),
    idle: z.array(z.string()),
  })
  .openapi('MoneyMoved');

const readMoved = createRoute({
  ...routeAt('readMoved'),
  summary: 'What the price of an offered scheme has moved by since, and why, to the penny',
  request: {
    params: quotationAddress,
    query: z.object({
      scheme: z.string().optional().meta({ description: 'One that is offered; absent: the first.' }),
    }),
  },
  responses: {
    200: jsonAnswer('The parts’ gross pence add up to the difference.', movedBody),
    ...problemAnswers('no-such-quotation', 'no-such-job', 'no-such-scheme'),
  },
});

/** Quotations: list, issue, read, what they froze, what has moved since. */
export function quotationRoutes(parts: AppParts): OpenAPIHono {
  const { stores, demoLibrary } = parts;
  const app = resourceApp()
    .openapi(listQuotations, async (c) => {
      const stored = await stores.quotations.list(c.req.valid('param').id);
      return c.json({ quotations: stored.map((one) => recordOf(one)) }, 200);
    })
    .openapi(issue, async (c) => {
      const base = ifMatchOf(c);
      const body = checkFile(issueBody, parsedBody(await bodyText(c)));
      if (!body.ok)
        throw new Problem('body-unreadable', 'It wants id, date and library.', faultDetails(body.faults));
      const { stored, isNew } = await issueQuotation(parts, {
        jobId: c.req.valid('param').id,
        base,
        body: body.value,
      });
      return c.json(recordOf(stored), isNew ? 201 : 200);
    })
    .openapi(readQuotation, async (c) =>
      c.json(recordOf(await storedQuotation(stores.quotations, c.req.valid('param'))), 200),
    )
    .openapi(readFrozen, async (c) => {
      const { id, quotation, text } = c.req.valid('param');
      const frozen = await stores.quotations.readText(id, quotation, text);
      if (frozen === null)
        throw new Problem('no-such-quotation', `Job "${id}" has no quotation "${quotation}".`);
      return c.body(frozen, 200, { 'Content-Type': 'application/json' });
    })
    .openapi(readMoved, async (c) => {
      const address = c.req.valid('param');
      const stored = await storedQuotation(stores.quotations, address);
      const schemeId = c.req.valid('query').scheme ?? stored.offers[0]?.schemeId ?? '';
      const offer = stored.offers.find((one) => one.schemeId === schemeId);
      const { job } = await storedJob(stores.jobs, address.id);
      const { library } = await firmLibrary(stores.library, demoLibrary);
      const [jobText, libraryText] = await Promise.all(
        (['job', 'library'] as const).map((which) =>
          stores.quotations.readText(address.id, address.quotation, which),
        ),
      );
      const before = { job: jobFromText(jobText ?? ''), library: libraryFromText(libraryText ?? '') };
      const moved =
        offer === undefined
          ? null
          : moneyMoved({ schemeId, before, after: { job, library }, quotedPence: offer.grossPence });
      if (moved === null)
        throw new Problem(
          'no-such-scheme',
          `"${schemeId}" is not in the quotation and in the job as it is now.`,
          {
            choices: stored.offers.map((one) => one.schemeId),
          },
        );
      const told = moved.parts.map(({ subjects, figures, ...one }) => ({
        ...one,
        subjects: [...subjects],
        figures: { ...figures },
      }));
      return c.json({ schemeId, ...moved, parts: told, idle: [...moved.idle] }, 200);
    });
  app.openAPIRegistry.register('IssueQuotation', issueBody);
  return app;
}
