import { createRoute } from '@hono/zod-openapi';
import { nextRevision, standingOf } from '#engine/quotation/standing.ts';
import type { WorkMoved } from '#engine/quotation/work-said.ts';
import { workMoved } from '#engine/work-moved.ts';
import { type PackRequest, packPdf } from '#exports/pack/pack-pdf.ts';
import { PACK_PDF, PACK_ZIP, packZip } from '#exports/pack/pack-zip.ts';
import { workPaperPdf } from '#exports/work/work-paper.ts';
import { type WorkPaperFile, workPaper } from '#exports/work/work-papers.ts';
import { jobAddress } from '../answers.ts';
import { type AppParts, type FirmParts, firmParts } from '../app-parts.ts';
import {
  type Asked,
  type AskedPapers,
  askedPapers,
  exportProblems,
  file,
  fileHeaders,
} from '../asked-file.ts';
import { papersQuery } from '../asked-papers.ts';
import { contractOf } from '../contract-of.ts';
import { routeAt } from '../guards.ts';
import { picturesOf } from '../pictures-of.ts';
import { type FirmApp, resourceApp } from '../resource-app.ts';
import { storedJob } from '../stored-job.ts';

const PDF = 'application/pdf';
const request = { params: jobAddress, query: papersQuery };
const onA4 = { ...file('The paper, on A4.', PDF), ...exportProblems };

const exportTasks = createRoute({
  ...routeAt('exportTasks'),
  summary: 'The work of one scheme in order, with its holds and boxes to tick',
  request,
  responses: onA4,
});

const exportConnections = createRoute({
  ...routeAt('exportConnections'),
  summary: 'The circuits of one scheme in order, and every conductor at every place that is worked on',
  request,
  responses: onA4,
});

const exportCuts = createRoute({
  ...routeAt('exportCuts'),
  summary: 'What of one scheme is cut from which length, joists that are cut, floors that are opened',
  request,
  responses: onA4,
});

const exportTests = createRoute({
  ...routeAt('exportTests'),
  summary: 'The test sheet of one scheme: how to connect, what is expected, what was read after the work',
  request,
  responses: onA4,
});

const exportPack = createRoute({
  ...routeAt('exportPack'),
  summary: 'All papers that one scheme is worked from as one PDF; as built once the job says that it is done',
  request,
  responses: { ...file('The pack: A4, then wiring plans on their own sheets.', PDF), ...exportProblems },
});

const exportEverything = createRoute({
  ...routeAt('exportEverything'),
  summary:
    'Everything of a job and one scheme as one ZIP archive: the pack, every paper by itself, job file and photos',
  description: 'Pictures that were not sent here yet are not in it.',
  request,
  responses: { ...file('The archive.', 'application/zip'), ...exportProblems },
});

async function paperAnswer(parts: FirmParts, asked: Asked, name: WorkPaperFile) {
  const { job, library, papers } = await askedPapers(parts, asked);
  const of = { papers, library };
  const bytes = new Uint8Array(await workPaperPdf(workPaper(name, of), of));
  return { bytes, headers: fileHeaders(job, name, PDF) };
}

/** What finished work does otherwise than was agreed, by the quotation that is accepted; null where it is not done, or nothing is agreed. */
async function movedOf({ stores }: FirmParts, { job, papers }: AskedPapers): Promise<WorkMoved | null> {
  if (papers.built === null) return null;
  for (const stored of await stores.quotations.list(job.id)) {
    if (stored.lessened?.what === 'whole') continue;
    const { acceptance, contractPence } = standingOf(stored);
    if (acceptance?.schemeId !== papers.shown.id || contractPence === null) continue;
    return workMoved(await contractOf(stores.quotations, stored), job);
  }
  return null;
}

async function packRequest(parts: FirmParts, asked: Asked): Promise<PackRequest> {
  const of = await askedPapers(parts, asked);
  return { ...of, moved: await movedOf(parts, of) };
}

/** Papers that are worked from, one by one and as one pack. */
export function workExportRoutes(appParts: AppParts): FirmApp {
  return resourceApp()
    .openapi(exportTasks, async (c) => {
      const parts = firmParts(appParts, c);
      const { bytes, headers } = await paperAnswer(parts, askedOf(c), 'tasks.pdf');
      return c.body(bytes, 200, headers);
    })
    .openapi(exportConnections, async (c) => {
      const parts = firmParts(appParts, c);
      const { bytes, headers } = await paperAnswer(parts, askedOf(c), 'connections.pdf');
      return c.body(bytes, 200, headers);
    })
    .openapi(exportCuts, async (c) => {
      const parts = firmParts(appParts, c);
      const { bytes, headers } = await paperAnswer(parts, askedOf(c), 'cuts-and-floors.pdf');
      return c.body(bytes, 200, headers);
    })
    .openapi(exportTests, async (c) => {
      const parts = firmParts(appParts, c);
      const { bytes, headers } = await paperAnswer(parts, askedOf(c), 'test-sheet.pdf');
      return c.body(bytes, 200, headers);
    })
    .openapi(exportPack, async (c) => {
      const parts = firmParts(appParts, c);
      const pack = await packRequest(parts, askedOf(c));
      return c.body(new Uint8Array(await packPdf(pack)), 200, fileHeaders(pack.job, PACK_PDF, PDF));
    })
    .openapi(exportEverything, async (c) => {
      const parts = firmParts(appParts, c);
      const pack = await packRequest(parts, askedOf(c));
      const { text } = await storedJob(parts.stores.jobs, pack.job.id);
      const revision = nextRevision(await parts.stores.quotations.list(pack.job.id));
      const pictures = await picturesOf(parts, pack.job);
      const bytes = await packZip({ ...pack, found: null, jobText: text, pictures, revision });
      return c.body(bytes, 200, fileHeaders(pack.job, PACK_ZIP, 'application/zip'));
    });
}

/** The valid parts of a request for a paper. */
interface PaperAsked {
  readonly req: {
    readonly valid: ((part: 'param') => { readonly id: string }) &
      ((part: 'query') => { readonly date?: string | undefined; readonly scheme?: string | undefined });
  };
}

const askedOf = ({ req }: PaperAsked): Asked => {
  const { date, scheme } = req.valid('query');
  return { ...req.valid('param'), date, scheme };
};
