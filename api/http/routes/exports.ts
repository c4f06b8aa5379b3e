import { createRoute } from '@hono/zod-openapi';
import { writeArchive } from '#archive/write-archive.ts';
import { MAKER } from '#engine/engine-version.ts';
import { nextRevision } from '#engine/quotation/standing.ts';
import { billCsv } from '#exports/csv/bill-csv.ts';
import type { CsvRequest } from '#exports/csv/csv-request.ts';
import { labourCsv } from '#exports/csv/labour-csv.ts';
import { estimateFile } from '#exports/estimate-file.ts';
import { quotationOfJob } from '#exports/quotation-paper.ts';
import { shoppingFiles } from '#exports/shopping-files.ts';
import { shoppingOf } from '#exports/shopping-of.ts';
import { workbookOf } from '#exports/workbook.ts';
import type { Job } from '#model/job.ts';
import { jobAddress, problemAnswers } from '../answers.ts';
import { type AppParts, type FirmParts, firmParts } from '../app-parts.ts';
import { type Asked, askedPapers, exportProblems, file, fileHeaders } from '../asked-file.ts';
import { papersQuery } from '../asked-papers.ts';
import { routeAt } from '../guards.ts';
import { picturesOf } from '../pictures-of.ts';
import { type FirmApp, resourceApp } from '../resource-app.ts';
import { noSuchJob, storedJob } from '../stored-job.ts';

const CSV = 'text/csv; charset=utf-8';
const WORKBOOK = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

const exportWorkbook = createRoute({
  ...routeAt('exportWorkbook'),
  summary: 'The workbook of one scheme: bill, labour, cables, points, checks, comparison',
  request: { params: jobAddress, query: papersQuery },
  responses: { ...file('The workbook.', WORKBOOK), ...exportProblems },
});

const exportQuotation = createRoute({
  ...routeAt('exportQuotation'),
  summary: 'The quotation or estimate for the customer, of the schemes that the job offers',
  request: { params: jobAddress, query: papersQuery.pick({ date: true }) },
  responses: {
    ...file('The paper, on A4.', 'application/pdf'),
    ...problemAnswers('no-such-job', 'job-unreadable', 'library-unreadable'),
  },
});

const exportBillCsv = createRoute({
  ...routeAt('exportBillCsv'),
  summary: 'The bill of materials of one scheme as CSV, a row a line',
  request: { params: jobAddress, query: papersQuery },
  responses: { ...file('The bill.', 'text/csv'), ...exportProblems },
});

const exportLabourCsv = createRoute({
  ...routeAt('exportLabourCsv'),
  summary: 'The labour of one scheme as CSV, a row a task',
  request: { params: jobAddress, query: papersQuery },
  responses: { ...file('The labour.', 'text/csv'), ...exportProblems },
});

const exportShoppingText = createRoute({
  ...routeAt('exportShoppingText'),
  summary: 'The shopping list of one scheme by counter, with its cut list, as plain text',
  request: { params: jobAddress, query: papersQuery },
  responses: { ...file('The list.', 'text/plain'), ...exportProblems },
});

const exportShoppingCsv = createRoute({
  ...routeAt('exportShoppingCsv'),
  summary: 'The shopping list of one scheme as comma-separated text, a row a size that is asked for',
  request: { params: jobAddress, query: papersQuery },
  responses: { ...file('The list.', 'text/csv'), ...exportProblems },
});

const exportEstimate = createRoute({
  ...routeAt('exportEstimate'),
  summary: 'The estimate of every scheme, with what to buy for one while things are open, as a file',
  request: { params: jobAddress, query: papersQuery },
  responses: { ...file('The estimate.', 'application/json'), ...exportProblems },
});

const exportJob = createRoute({
  ...routeAt('exportJob'),
  summary: 'The job file, to the byte, as a file',
  request: { params: jobAddress },
  responses: { ...file('The job file.', 'application/json'), ...problemAnswers('no-such-job') },
});

const exportArchive = createRoute({
  ...routeAt('exportArchive'),
  summary: 'The job file with its photos and traced pictures as one ZIP archive',
  description: 'Pictures that were not sent here yet are not in it.',
  request: { params: jobAddress },
  responses: {
    ...file('The archive.', 'application/zip'),
    ...problemAnswers('no-such-job', 'job-unreadable'),
  },
});

async function askedCsv(
  parts: FirmParts,
  asked: Asked,
): Promise<{ readonly job: Job; readonly request: CsvRequest }> {
  const { job, library, papers } = await askedPapers(parts, asked);
  const { drawn, shown, state } = papers;
  return { job, request: { estimate: drawn, schemeId: shown.id, library, state } };
}

/** Papers to take away: workbook, bill and labour as CSV, quotation, shopping list, estimate, job file, job with photos. */
export function exportRoutes(appParts: AppParts): FirmApp {
  return resourceApp()
    .openapi(exportWorkbook, async (c) => {
      const parts = firmParts(appParts, c);
      const asked = { ...c.req.valid('param'), ...c.req.valid('query'), date: c.req.valid('query').date };
      const { job, library, papers } = await askedPapers(parts, asked);
      const [shopping, { state }] = [shoppingOf(papers, library, job), papers];
      const bytes = await workbookOf(papers.drawn, papers.shown.id, { library, state, shopping });
      return c.body(new Uint8Array(bytes), 200, fileHeaders(job, 'bill-of-materials.xlsx', WORKBOOK));
    })
    .openapi(exportQuotation, async (c) => {
      const parts = firmParts(appParts, c);
      const { date } = c.req.valid('query');
      const { job, library, papers } = await askedPapers(parts, { ...c.req.valid('param'), date });
      const revision = nextRevision(await parts.stores.quotations.list(job.id));
      const bytes = await quotationOfJob({ job, library, estimate: papers.result, revision });
      return c.body(new Uint8Array(bytes), 200, fileHeaders(job, 'quotation.pdf', 'application/pdf'));
    })
    .openapi(exportBillCsv, async (c) => {
      const parts = firmParts(appParts, c);
      const { date, scheme } = c.req.valid('query');
      const { job, request } = await askedCsv(parts, { ...c.req.valid('param'), date, scheme });
      return c.body(billCsv(request), 200, fileHeaders(job, 'bill-of-materials.csv', CSV));
    })
    .openapi(exportLabourCsv, async (c) => {
      const parts = firmParts(appParts, c);
      const { date, scheme } = c.req.valid('query');
      const { job, request } = await askedCsv(parts, { ...c.req.valid('param'), date, scheme });
      return c.body(labourCsv(request), 200, fileHeaders(job, 'labour.csv', CSV));
    })
    .openapi(exportShoppingText, async (c) => {
      const parts = firmParts(appParts, c);
      const asked = { ...c.req.valid('param'), ...c.req.valid('query'), date: c.req.valid('query').date };
      const { job, library, papers } = await askedPapers(parts, asked);
      const headers = fileHeaders(job, 'shopping.txt', 'text/plain; charset=utf-8');
      return c.body(shoppingFiles(shoppingOf(papers, library, job)).text, 200, headers);
    })
    .openapi(exportShoppingCsv, async (c) => {
      const parts = firmParts(appParts, c);
      const asked = { ...c.req.valid('param'), ...c.req.valid('query'), date: c.req.valid('query').date };
      const { job, library, papers } = await askedPapers(parts, asked);
      const headers = fileHeaders(job, 'shopping.csv', 'text/csv; charset=utf-8');
      return c.body(shoppingFiles(shoppingOf(papers, library, job)).csv, 200, headers);
    })
    .openapi(exportEstimate, async (c) => {
      const parts = firmParts(appParts, c);
      const { date, scheme } = c.req.valid('query');
      const asked = await askedPapers(parts, { ...c.req.valid('param'), date, scheme });
      const headers = fileHeaders(asked.job, 'estimate.json', 'application/json');
      return c.body(estimateFile(asked), 200, headers);
    })
    .openapi(exportArchive, async (c) => {
      const parts = firmParts(appParts, c);
      const { id } = c.req.valid('param');
      const { job, text } = await storedJob(parts.stores.jobs, id);
      const pictures = await picturesOf(parts, job);
      const headers = fileHeaders(job, 'job.zip', 'application/zip');
      return c.body(await writeArchive(text, pictures, MAKER), 200, headers);
    })
    .openapi(exportJob, async (c) => {
      const parts = firmParts(appParts, c);
      const { id } = c.req.valid('param');
      const stored = await parts.stores.jobs.read(id);
      if (stored === null) throw noSuchJob(id);
      const heading = (await parts.stores.jobs.list()).find((job) => job.id === id);
      const named = heading ?? { id, reference: '', title: '' };
      return c.body(stored.text, 200, fileHeaders(named, 'job.json', 'application/json'));
    });
}
