import { createRoute, type OpenAPIHono, z } from '@hono/zod-openapi';
import { jsonAnswer } from '../answers.ts';
import type { AppParts } from '../app-parts.ts';
import { routeAt } from '../guards.ts';
import { putBackDemos } from '../put-back-demos.ts';
import { resourceApp } from '../resource-app.ts';

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
export function demoRoutes({ stores, demoJobs }: AppParts): OpenAPIHono {
  return resourceApp().openapi(putBack, async (c) => c.json(await putBackDemos(stores, demoJobs), 200));
}
