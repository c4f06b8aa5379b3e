import { createRoute, z } from '@hono/zod-openapi';
import { jsonAnswer } from '../answers.ts';
import type { AppParts } from '../app-parts.ts';
import { routeAt } from '../guards.ts';
import { putBackDemos } from '../put-back-demos.ts';
import { type FirmApp, resourceApp } from '../resource-app.ts';

const putBack = createRoute({
  ...routeAt('putBackDemos'),
  summary: 'Puts missing demo jobs back on the list',
  responses: {
    200: jsonAnswer(
      'Done; demo jobs on the list were left as they are.',
      z.object({ added: z.array(z.string()), kept: z.array(z.string()) }),
    ),
  },
});

/** The demo jobs. */
export function demoRoutes({ demoJobs }: AppParts): FirmApp {
  return resourceApp().openapi(putBack, async (c) => c.json(await putBackDemos(c.var.stores, demoJobs), 200));
}
