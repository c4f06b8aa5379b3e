import { createRoute, z } from '@hono/zod-openapi';
import { jsonAnswer } from '../answers.ts';
import { routeAt } from '../guards.ts';
import { problems } from '../problems.ts';
import { type FirmApp, resourceApp } from '../resource-app.ts';

const listProblems = createRoute({
  ...routeAt('problems'),
  summary: 'Every problem code, with its status and title',
  responses: {
    200: jsonAnswer(
      'All of them.',
      z.object({
        problems: z.array(z.object({ code: z.string(), status: z.int(), title: z.string() })),
      }),
    ),
  },
});

const listed = Object.entries(problems).map(([code, { status, title }]) => ({ code, status, title }));

/** The list that the `type` of every problem leads to. */
export function problemRoutes(): FirmApp {
  return resourceApp().openapi(listProblems, (c) => c.json({ problems: listed }, 200));
}
