import { createRoute, z } from '@hono/zod-openapi';
import { checkFile } from '#model/read-file.ts';
import {
  ifNoneMatchHeader,
  jobAddress,
  jsonAnswer,
  notModified,
  problemAnswers,
  revisionAddress,
  storedAnswer,
  textBody,
} from '../answers.ts';
import { bodyText, parsedBody } from '../body-text.ts';
import { routeAt } from '../guards.ts';
import { faultDetails, Problem } from '../problems.ts';
import { type FirmApp, resourceApp } from '../resource-app.ts';
import { etagOf, isHeld } from '../revision-headers.ts';
import { noSuchJob } from '../stored-job.ts';

const keptFor = z.enum(['quoted', 'named']);

/** The body that marks a revision as one to keep. */
const keepBody = z.strictObject({ keptFor });

const revisionSummary = z
  .object({
    revision: z.int(),
    savedAt: z.string(),
    how: z.enum(['by-hand', 'autosave']),
    keptFor: keptFor.nullable(),
    bytes: z.int(),
  })
  .openapi('RevisionSummary');

const listRevisions = createRoute({
  ...routeAt('listRevisions'),
  summary: 'The saved states of a job, newest first',
  request: { params: jobAddress },
  responses: {
    200: jsonAnswer('All that are still there.', z.object({ revisions: z.array(revisionSummary) })),
    ...problemAnswers('no-such-job'),
  },
});

const readRevision = createRoute({
  ...routeAt('readRevision'),
  summary: 'The job file of one revision',
  request: { params: revisionAddress, headers: ifNoneMatchHeader },
  responses: {
    200: storedAnswer('The job file, to the byte.', 'Job'),
    304: notModified,
    ...problemAnswers('no-such-revision'),
  },
});

const keepRevision = createRoute({
  ...routeAt('keepRevision'),
  summary: 'Keep a revision for good',
  request: { params: revisionAddress, body: textBody('KeepRevision') },
  responses: {
    204: { description: 'It stays, however many saves follow.' },
    ...problemAnswers('not-json', 'no-such-revision', 'body-unreadable'),
  },
});

const noSuchRevision = (id: string, revision: number): Problem =>
  new Problem('no-such-revision', `Job "${id}" has no revision ${revision}, or an autosave took its place.`);

/** The saved states of a job. */
export function revisionRoutes(): FirmApp {
  const app = resourceApp()
    .openapi(listRevisions, async (c) => {
      const { stores } = c.var;
      const { id } = c.req.valid('param');
      const revisions = await stores.jobs.revisions(id);
      if (revisions === null) throw noSuchJob(id);
      return c.json({ revisions: [...revisions] }, 200);
    })
    .openapi(readRevision, async (c) => {
      const { stores } = c.var;
      const { id, revision } = c.req.valid('param');
      const stored = await stores.jobs.readRevision(id, Number(revision));
      if (stored === null) throw noSuchRevision(id, Number(revision));
      c.header('ETag', etagOf(stored));
      if (isHeld(c, stored)) return c.body(null, 304);
      return c.body(stored.text, 200, { 'Content-Type': 'application/json' });
    })
    .openapi(keepRevision, async (c) => {
      const { stores } = c.var;
      const { id, revision } = c.req.valid('param');
      const body = checkFile(keepBody, parsedBody(await bodyText(c)));
      if (!body.ok)
        throw new Problem('body-unreadable', 'It wants { "keptFor": … }.', faultDetails(body.faults));
      if (!(await stores.jobs.keep(id, Number(revision), body.value.keptFor)))
        throw noSuchRevision(id, Number(revision));
      return c.body(null, 204);
    });
  app.openAPIRegistry.register('KeepRevision', keepBody);
  return app;
}
