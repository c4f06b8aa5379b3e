import { createRoute, z } from '@hono/zod-openapi';
import { type SheetName, sheetNames } from '#drawing/plan/sheet-layout.ts';
import { type PlanFile, planFiles, planPdf } from '#exports/plan-files.ts';
import type { Job } from '#model/job.ts';
import { jobAddress, problemAnswers } from '../answers.ts';
import { type AppParts, type FirmParts, firmParts } from '../app-parts.ts';
import { type Asked, askedPapers, exportProblems, file, fileHeaders } from '../asked-file.ts';
import { papersQuery } from '../asked-papers.ts';
import { routeAt } from '../guards.ts';
import { Problem } from '../problems.ts';
import { type FirmApp, resourceApp } from '../resource-app.ts';

const sheetAsked = {
  sheet: z.enum(sheetNames).optional().meta({
    description:
      'The paper that plans are to be on; absent: the smallest that holds each at the larger scale.',
  }),
};

const planRequest = {
  params: jobAddress,
  query: papersQuery.extend({
    ...sheetAsked,
    storey: z.string().optional().meta({ description: 'The id of a storey; absent: the first one drawn.' }),
  }),
};
const planProblems = problemAnswers(
  'no-such-job',
  'no-such-scheme',
  'no-such-storey',
  'job-unreadable',
  'library-unreadable',
);

const exportPlan = createRoute({
  ...routeAt('exportPlan'),
  summary: 'The wiring plan of one scheme and storey, true to scale',
  request: planRequest,
  responses: { ...file('The plan.', 'image/svg+xml'), ...planProblems },
});

const exportPlanPdf = createRoute({
  ...routeAt('exportPlanPdf'),
  summary: 'The wiring plans of one scheme, all storeys, true to scale when printed at 100 %',
  request: { params: jobAddress, query: papersQuery.extend(sheetAsked) },
  responses: { ...file('The plans, a sheet a page.', 'application/pdf'), ...exportProblems },
});

const exportPlanDraft = createRoute({
  ...routeAt('exportPlanDraft'),
  summary: 'The wiring of one scheme and storey for drafting programs: DXF in millimetres of the house',
  request: planRequest,
  responses: { ...file('The drawing.', 'image/vnd.dxf'), ...planProblems },
});

/** The plan of the storey asked for, else of the first that has one. */
async function askedPlan(
  parts: FirmParts,
  {
    storey,
    id,
    date,
    scheme,
    sheet,
  }: Partial<Asked> & {
    readonly id: string;
    readonly storey?: string | undefined;
    readonly sheet?: SheetName | undefined;
  },
): Promise<{ readonly job: Job; readonly plan: PlanFile }> {
  const { job, papers } = await askedPapers(parts, { id, date, scheme });
  const plans = planFiles(papers, sheet);
  const plan = storey ? plans.find(({ storeyId }) => storeyId === storey) : plans[0];
  if (plan === undefined)
    throw new Problem('no-such-storey', `Not "${storey}".`, {
      choices: plans.map(({ storeyId }) => storeyId),
    });
  return { job, plan };
}

/** Wiring plans to take away: sheets as PDF and SVG, drawings for drafting programs. */
export function planExportRoutes(appParts: AppParts): FirmApp {
  return resourceApp()
    .openapi(exportPlan, async (c) => {
      const parts = firmParts(appParts, c);
      const { job, plan } = await askedPlan(parts, { ...c.req.valid('param'), ...c.req.valid('query') });
      return c.body(plan.svg(), 200, fileHeaders(job, plan.name, 'image/svg+xml; charset=utf-8'));
    })
    .openapi(exportPlanPdf, async (c) => {
      const parts = firmParts(appParts, c);
      const asked = { ...c.req.valid('param'), ...c.req.valid('query'), date: c.req.valid('query').date };
      const { job, papers } = await askedPapers(parts, asked);
      const headers = fileHeaders(job, 'wiring-plan.pdf', 'application/pdf');
      return c.body(new Uint8Array(await planPdf(papers, c.req.valid('query').sheet)), 200, headers);
    })
    .openapi(exportPlanDraft, async (c) => {
      const parts = firmParts(appParts, c);
      const { job, plan } = await askedPlan(parts, { ...c.req.valid('param'), ...c.req.valid('query') });
      return c.body(plan.dxf(), 200, fileHeaders(job, plan.dxfName, 'image/vnd.dxf'));
    });
}
