import { createRoute } from '@hono/zod-openapi';
import { warnOfDanger } from '#engine/warn-of-danger.ts';
import { dangerLetterPdf } from '#exports/danger-letter-pdf.ts';
import { recordJson } from '#exports/work/record-json.ts';
import { recordPdf } from '#exports/work/record-pdf.ts';
import { jobAddress, problemAnswers } from '../answers.ts';
import { type AppParts, firmParts } from '../app-parts.ts';
import { askedPapers, exportProblems, file, fileHeaders } from '../asked-file.ts';
import { papersQuery } from '../asked-papers.ts';
import { routeAt } from '../guards.ts';
import { Problem } from '../problems.ts';
import { type FirmApp, resourceApp } from '../resource-app.ts';

const exportRecord = createRoute({
  ...routeAt('exportRecord'),
  summary: 'What a certificate for the work of one scheme is filled in from; no certificate itself',
  request: { params: jobAddress, query: papersQuery },
  responses: { ...file('The record, on A4.', 'application/pdf'), ...exportProblems },
});

const exportRecordJson = createRoute({
  ...routeAt('exportRecordJson'),
  summary: 'The same as data: every field with its value or none, where it is from and how sure it is',
  request: { params: jobAddress, query: papersQuery },
  responses: { ...file('The record.', 'application/json'), ...exportProblems },
});

const exportDangerLetter = createRoute({
  ...routeAt('exportDangerLetter'),
  summary: 'The letter to the customer on what was found dangerous',
  description:
    'There is one only where something found shuts a stop gate, whatever a scheme would put right.',
  request: { params: jobAddress, query: papersQuery.pick({ date: true }) },
  responses: {
    ...file('The letter, on A4.', 'application/pdf'),
    ...problemAnswers('no-such-job', 'no-letter-due', 'job-unreadable', 'library-unreadable'),
  },
});

/** Papers on what was found and done: the record for a certificate, and the letter on a dangerous condition. */
export function recordExportRoutes(appParts: AppParts): FirmApp {
  return resourceApp()
    .openapi(exportRecord, async (c) => {
      const parts = firmParts(appParts, c);
      const { date, scheme } = c.req.valid('query');
      const { job, library, papers } = await askedPapers(parts, { ...c.req.valid('param'), date, scheme });
      const bytes = new Uint8Array(await recordPdf({ papers, library }));
      return c.body(bytes, 200, fileHeaders(job, 'record.pdf', 'application/pdf'));
    })
    .openapi(exportRecordJson, async (c) => {
      const parts = firmParts(appParts, c);
      const { date, scheme } = c.req.valid('query');
      const { job, library, papers } = await askedPapers(parts, { ...c.req.valid('param'), date, scheme });
      return c.body(
        recordJson({ papers, library }),
        200,
        fileHeaders(job, 'record.json', 'application/json'),
      );
    })
    .openapi(exportDangerLetter, async (c) => {
      const parts = firmParts(appParts, c);
      const { date } = c.req.valid('query');
      const { job, library, papers } = await askedPapers(parts, { ...c.req.valid('param'), date });
      const letter = warnOfDanger(job, library, papers.result);
      if (letter === null)
        throw new Problem(
          'no-letter-due',
          'No stop gate is shut by what the survey found. What nobody has looked at is no finding.',
        );
      const bytes = new Uint8Array(await dangerLetterPdf(letter));
      return c.body(bytes, 200, fileHeaders(job, 'dangerous-condition.pdf', 'application/pdf'));
    });
}
