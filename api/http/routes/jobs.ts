import { createRoute, z } from '@hono/zod-openapi';
import type { Context } from 'hono';
import type { Job } from '#model/job.ts';
import type { JobSummary, Saved, SavedVersion } from '../../db/stores.ts';
import {
  ifMatchHeader,
  ifNoneMatchHeader,
  jobAddress,
  jsonAnswer,
  notModified,
  problemAnswers,
  savedAnswer,
  storedAnswer,
  textBody,
  versionHeader,
} from '../answers.ts';
import { bodyText } from '../body-text.ts';
import { routeAt } from '../guards.ts';
import { Problem } from '../problems.ts';
import { headingOf, jobFromText } from '../readable-job.ts';
import { type FirmApp, resourceApp } from '../resource-app.ts';
import { etagOf, ifMatchOf, isHeld, staleRevision } from '../revision-headers.ts';
import { noSuchJob } from '../stored-job.ts';

const jobSummary = z
  .object({
    id: z.string(),
    reference: z.string(),
    title: z.string(),
    customer: z.string(),
    revision: z.int(),
    etag: z.string().meta({ description: 'As the job itself carries it: what a removal sends as If-Match.' }),
    savedAt: z.string(),
    removedAt: z
      .string()
      .nullable()
      .meta({ description: 'When it was taken off the list; null while it is on it.' }),
    wantedPoints: z.int(),
    schemes: z.int(),
  })
  .openapi('JobSummary');

const listJobs = createRoute({
  ...routeAt('listJobs'),
  summary: 'The firm’s jobs, newest save first, or those taken off the list',
  request: {
    query: z.object({
      removed: z
        .enum(['true', 'false'])
        .default('false')
        .meta({ description: 'true: the jobs taken off the list alone, last removed first.' }),
    }),
  },
  responses: {
    200: jsonAnswer('All of them.', z.object({ jobs: z.array(jobSummary) })),
    ...problemAnswers('request-faulty'),
  },
});

const createJob = createRoute({
  ...routeAt('createJob'),
  summary: 'Keep a new job',
  description: 'The body is the job file. It is kept as it is sent, to the byte.',
  request: { body: textBody('Job') },
  responses: {
    201: {
      ...jsonAnswer('Kept, at the address in Location.', z.object({ id: z.string(), revision: z.int() })),
      headers: versionHeader,
    },
    ...problemAnswers('not-json', 'job-id-taken', 'body-too-large', 'wrong-content-type', 'job-unreadable'),
  },
});

const readJob = createRoute({
  ...routeAt('readJob'),
  summary: 'The job file as it was last saved',
  request: { params: jobAddress, headers: ifNoneMatchHeader },
  responses: {
    200: storedAnswer('The job file, to the byte.', 'Job'),
    304: notModified,
    ...problemAnswers('no-such-job'),
  },
});

const saveJob = createRoute({
  ...routeAt('saveJob'),
  summary: 'Save a job over the revision that was read',
  description: 'A save of anything but the newest revision is refused with 412 and changes nothing.',
  request: {
    params: jobAddress,
    headers: ifMatchHeader,
    query: z.object({
      how: z
        .enum(['autosave', 'by-hand'])
        .default('by-hand')
        .meta({ description: 'An autosave may take the place of the autosave before it.' }),
    }),
    body: textBody('Job'),
  },
  responses: {
    200: savedAnswer('Saved as a new revision.'),
    ...problemAnswers(
      'not-json',
      'no-such-job',
      'stale-revision',
      'body-too-large',
      'wrong-content-type',
      'job-unreadable',
      'id-differs',
      'if-match-missing',
    ),
  },
});

const removeJob = createRoute({
  ...routeAt('removeJob'),
  summary: 'Take a job off the list',
  description: 'Its revisions stay, and `restore` brings it back.',
  request: { params: jobAddress, headers: ifMatchHeader },
  responses: {
    204: { description: 'Off the list.' },
    ...problemAnswers('no-such-job', 'stale-revision', 'if-match-missing'),
  },
});

const restoreJob = createRoute({
  ...routeAt('restoreJob'),
  summary: 'Bring a removed job back as it was',
  request: { params: jobAddress },
  responses: { 200: savedAnswer('Back on the list.'), ...problemAnswers('no-such-job') },
});

/** A line of the list as it goes out: with the version in one word. */
const listed = ({ tag, ...line }: JobSummary) => ({
  ...line,
  etag: etagOf({ revision: line.revision, tag }),
});

/** What a save came to, or the problem that it met. */
function settled(saved: Saved, id: string): SavedVersion {
  if (saved.outcome === 'no-such-job') throw noSuchJob(id);
  if (saved.outcome === 'stale') throw staleRevision(saved);
  return saved;
}

async function sentJob(c: Context): Promise<{ readonly job: Job; readonly text: string }> {
  const text = await bodyText(c);
  return { job: jobFromText(text), text };
}

/** Jobs: list, keep, read, save, remove, restore. */
export function jobRoutes(): FirmApp {
  return resourceApp()
    .openapi(listJobs, async (c) => {
      const { stores } = c.var;
      const removed = c.req.valid('query').removed === 'true';
      return c.json({ jobs: (await stores.jobs.list({ removed })).map(listed) }, 200);
    })
    .openapi(createJob, async (c) => {
      const { stores } = c.var;
      const { job, text } = await sentJob(c);
      const created = await stores.jobs.create(headingOf(job), text);
      if (created.outcome === 'id-taken')
        throw new Problem('job-id-taken', `Give the job another id than "${job.id}", or save over that one.`);
      c.header('Location', `/api/jobs/${encodeURIComponent(job.id)}`);
      c.header('ETag', etagOf(created));
      return c.json({ id: job.id, revision: created.revision }, 201);
    })
    .openapi(readJob, async (c) => {
      const { stores } = c.var;
      const { id } = c.req.valid('param');
      const stored = await stores.jobs.read(id);
      if (stored === null) throw noSuchJob(id);
      c.header('ETag', etagOf(stored));
      if (isHeld(c, stored)) return c.body(null, 304);
      return c.body(stored.text, 200, { 'Content-Type': 'application/json' });
    })
    .openapi(saveJob, async (c) => {
      const { stores } = c.var;
      const { id } = c.req.valid('param');
      const base = ifMatchOf(c);
      const { job, text } = await sentJob(c);
      if (job.id !== id)
        throw new Problem('id-differs', `The address says "${id}", the job file says "${job.id}".`);
      const saved = await stores.jobs.save(headingOf(job), text, base, c.req.valid('query').how);
      const now = settled(saved, id);
      c.header('ETag', etagOf(now));
      return c.json({ revision: now.revision, savedAt: now.savedAt }, 200);
    })
    .openapi(removeJob, async (c) => {
      const { stores } = c.var;
      const { id } = c.req.valid('param');
      settled(await stores.jobs.remove(id, ifMatchOf(c)), id);
      return c.body(null, 204);
    })
    .openapi(restoreJob, async (c) => {
      const { stores } = c.var;
      const { id } = c.req.valid('param');
      const now = settled(await stores.jobs.restore(id), id);
      c.header('ETag', etagOf(now));
      return c.json({ revision: now.revision, savedAt: now.savedAt }, 200);
    });
}
