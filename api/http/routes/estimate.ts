import { createRoute, z } from '@hono/zod-openapi';
import { estimate } from '#engine/estimate.ts';
import { estimateFile } from '#exports/estimate-file.ts';
import { estimateJson } from '#exports/estimate-json.ts';
import { papersOf } from '#exports/papers.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { isoDate } from '#model/primitives.ts';
import { checkFile } from '#model/read-file.ts';
import { jobAddress, problemAnswers, textAnswer, textBody } from '../answers.ts';
import type { AppParts } from '../app-parts.ts';
import { dayAsked, noSuchScheme, papersQuery } from '../asked-papers.ts';
import { bodyText, parsedBody } from '../body-text.ts';
import { firmLibrary } from '../firm-library.ts';
import { routeAt } from '../guards.ts';
import { faultDetails, Problem } from '../problems.ts';
import { jobFrom, libraryFrom } from '../readable-job.ts';
import { type FirmApp, resourceApp } from '../resource-app.ts';
import { storedJob } from '../stored-job.ts';

/** The revision that papers of a job that is not kept carry. */
const UNKEPT_REVISION = 1;

const estimateJob = createRoute({
  ...routeAt('estimateJob'),
  summary: 'Works out, checks and prices a job',
  description:
    'With `scheme`, that scheme alone is worked out. What is open is told of the shown scheme, as `packing`.',
  request: { params: jobAddress, query: papersQuery },
  responses: {
    200: textAnswer('The estimate.', 'Estimate'),
    ...problemAnswers('no-such-job', 'no-such-scheme', 'job-unreadable', 'library-unreadable'),
  },
});

const postedQuery = z.object({
  packing: z.enum(['true', 'false']).optional().meta({
    description: 'Whether what is open is told, as `packing`; absent: where the job has `packFor`.',
  }),
});

const estimatePosted = createRoute({
  ...routeAt('estimatePosted'),
  summary: 'Works out, checks and prices a job that is sent; nothing is kept',
  description:
    'The body is a job file, or a group with `job` and, if wanted, `library`, `date` and `revision`. What is open is told, as `packing`, of a job that says what is bought in case, and of any with `packing=true`: it takes about as long again.',
  request: { query: postedQuery, body: textBody('EstimateRequest') },
  responses: {
    200: textAnswer('The estimate.', 'Estimate'),
    ...problemAnswers(
      'not-json',
      'body-too-large',
      'wrong-content-type',
      'body-unreadable',
      'job-unreadable',
      'library-unreadable',
    ),
  },
});

const wrapped = z.strictObject({
  job: z.unknown(),
  library: z.unknown().optional(),
  date: isoDate.optional(),
  revision: z.int().min(0).max(1e9).optional(),
});

interface Posted {
  readonly job: Job;
  readonly library: Library | null;
  readonly date: string | undefined;
  readonly revision: number;
}

const isWrapped = (body: unknown): boolean =>
  typeof body === 'object' && body !== null && Object.hasOwn(body, 'job') && !Object.hasOwn(body, 'format');

function postedOf(body: unknown): Posted {
  if (!isWrapped(body))
    return { job: jobFrom(body), library: null, date: undefined, revision: UNKEPT_REVISION };
  const read = checkFile(wrapped, body);
  if (!read.ok)
    throw new Problem(
      'body-unreadable',
      'It wants a job file, or { "job": …, "library": …, "date": …, "revision": … }.',
      faultDetails(read.faults),
    );
  const { job, library, date, revision } = read.value;
  return {
    job: jobFrom(job, 'job'),
    library: library === undefined ? null : libraryFrom(library, 'library'),
    date,
    revision: revision ?? UNKEPT_REVISION,
  };
}

function withOnly(job: Job, schemeId: string | undefined): Job {
  if (!schemeId) return job;
  const scheme = job.schemes.find(({ id }) => id === schemeId);
  if (scheme === undefined) throw noSuchScheme(job, schemeId);
  return { ...job, schemes: [scheme] };
}

type When = { readonly date: string; readonly revision: number };

/** The estimate alone: what is open is worked out for nobody who did not ask for it. */
const withoutPacking = (job: Job, library: Library, when: When): string =>
  estimateJson(estimate(job, library, when));

/** The estimate of a job as a file has it, for the cheapest scheme that does not fail. */
function answerOf(job: Job, library: Library, when: When): string {
  const papers = papersOf(job, library, { ...when, schemeId: null });
  if (papers === null) throw new Error(`The job "${job.id}" has no papers.`);
  return estimateFile({ job, library, papers });
}

/** Estimates of kept jobs and of jobs that are sent. */
export function estimateRoutes({ demoLibrary, now }: AppParts): FirmApp {
  const json = { 'Content-Type': 'application/json' };
  return resourceApp()
    .openapi(estimateJob, async (c) => {
      const { stores } = c.var;
      const { date, scheme } = c.req.valid('query');
      const { job, revision } = await storedJob(stores.jobs, c.req.valid('param').id);
      const { library } = await firmLibrary(stores.library, demoLibrary);
      const when = { date: dayAsked(date, now), revision };
      return c.body(answerOf(withOnly(job, scheme), library, when), 200, json);
    })
    .openapi(estimatePosted, async (c) => {
      const { stores } = c.var;
      const { job, library, date, revision } = postedOf(parsedBody(await bodyText(c)));
      const prices = library ?? (await firmLibrary(stores.library, demoLibrary)).library;
      const { packing } = c.req.valid('query');
      const isPacked = packing === undefined ? job.packFor !== undefined : packing === 'true';
      const answer = isPacked ? answerOf : withoutPacking;
      return c.body(answer(job, prices, { date: dayAsked(date, now), revision }), 200, json);
    });
}
