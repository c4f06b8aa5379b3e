import { createRoute } from '@hono/zod-openapi';
import { readingsJson } from '#exports/readings-json.ts';
import { problemAnswers, textAnswer, textBody } from '../answers.ts';
import { bodyText, parsedBody } from '../body-text.ts';
import { routeAt } from '../guards.ts';
import { jobFrom } from '../readable-job.ts';
import { type FirmApp, resourceApp } from '../resource-app.ts';

const readingsPosted = createRoute({
  ...routeAt('readingsPosted'),
  summary: 'Says what the readings of a job that is sent tell of its circuits; nothing is kept',
  request: { body: textBody('Job') },
  responses: {
    200: textAnswer('What the readings say, a circuit each.', 'Readings'),
    ...problemAnswers('not-json', 'body-too-large', 'wrong-content-type', 'job-unreadable'),
  },
});

/** What the readings of a sent job say. */
export const readingsRoutes = (): FirmApp =>
  resourceApp().openapi(readingsPosted, async (c) => {
    const job = jobFrom(parsedBody(await bodyText(c)));
    return c.body(readingsJson(job), 200, { 'Content-Type': 'application/json' });
  });
