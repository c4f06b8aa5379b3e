import { createRoute, z } from '@hono/zod-openapi';
import type { QuotationDrawings } from '#drawing/quotation/quotation-drawings.ts';
import type { QuotationDocument } from '#engine/quotation/document.ts';
import { fileWord } from '#exports/file-word.ts';
import { quotationPdf } from '#exports/quotation-pdf.ts';
import { checkFile } from '#model/read-file.ts';
import { frozenTexts } from '../../db/quotation-stores.ts';
import { ifMatchHeader, jobAddress, jsonAnswer, problemAnswers, textAnswer, textBody } from '../answers.ts';
import { type AppParts, firmParts } from '../app-parts.ts';
import { bodyText, parsedBody } from '../body-text.ts';
import { routeAt } from '../guards.ts';
import { issueBody, issueQuotation } from '../issue-quotation.ts';
import { faultDetails, Problem } from '../problems.ts';
import {
  quotationAddress,
  quotationRecord,
  recordOf,
  storedQuotation,
  wholeQuotation,
} from '../quotation-records.ts';
import { type FirmApp, resourceApp } from '../resource-app.ts';
import { ifMatchOf } from '../revision-headers.ts';

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
    ...problemAnswers('no-such-quotation', 'quotation-erased'),
  },
});

const readPdf = createRoute({
  ...routeAt('readQuotationPdf'),
  summary: 'An issued quotation as a PDF, made from what it froze',
  request: { params: quotationAddress },
  responses: {
    200: {
      description: 'The quotation.',
      content: { 'application/pdf': { schema: { type: 'string' as const, format: 'binary' } } },
    },
    ...problemAnswers('no-such-quotation', 'quotation-erased'),
  },
});

/** Quotations: list, issue, read, what they froze. */
export function quotationRoutes(appParts: AppParts): FirmApp {
  const app = resourceApp()
    .openapi(listQuotations, async (c) => {
      const { stores } = c.var;
      const stored = await stores.quotations.list(c.req.valid('param').id);
      return c.json({ quotations: stored.map((one) => recordOf(one)) }, 200);
    })
    .openapi(issue, async (c) => {
      const parts = firmParts(appParts, c);
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
      c.json(recordOf(await storedQuotation(c.var.stores.quotations, c.req.valid('param'))), 200),
    )
    .openapi(readFrozen, async (c) => {
      const { stores } = c.var;
      const { id, quotation, text } = c.req.valid('param');
      await wholeQuotation(stores.quotations, { id, quotation });
      const frozen = await stores.quotations.readText(id, quotation, text);
      return c.body(frozen ?? '', 200, { 'Content-Type': 'application/json' });
    })
    .openapi(readPdf, async (c) => {
      const { stores } = c.var;
      const { id, quotation } = c.req.valid('param');
      const stored = await wholeQuotation(stores.quotations, { id, quotation });
      const [paper, drawings] = await Promise.all(
        (['document', 'drawings'] as const).map((which) => stores.quotations.readText(id, quotation, which)),
      );
      // Written by `issueQuotation` and by nothing else, as these types.
      const document = JSON.parse(paper ?? '') as QuotationDocument;
      const drawn = JSON.parse(drawings ?? '') as QuotationDrawings;
      const name = `${fileWord(document.reference, 'quotation')}-${document.kind}-${stored.revision}.pdf`;
      return c.body(new Uint8Array(await quotationPdf(document, drawn)), 200, {
        'Content-Type': 'application/pdf',
        'Content-Disposition': `attachment; filename="${name}"`,
      });
    });
  app.openAPIRegistry.register('IssueQuotation', issueBody);
  return app;
}
