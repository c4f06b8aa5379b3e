import { createRoute, z } from '@hono/zod-openapi';
import { jsonAnswer, problemAnswers } from '../answers.ts';
import type { AppParts } from '../app-parts.ts';
import { routeAt } from '../guards.ts';
import { type FirmApp, resourceApp } from '../resource-app.ts';

const health = createRoute({
  ...routeAt('health'),
  summary: 'Whether the server is up',
  responses: {
    200: jsonAnswer(
      'It is.',
      z.object({ ok: z.literal(true), name: z.literal('Ringwright'), version: z.string() }).openapi('Health'),
    ),
  },
});

const ready = createRoute({
  ...routeAt('ready'),
  summary:
    'Whether the server can do its work: the store answers, its tables are up to date, and it takes a write',
  responses: {
    200: jsonAnswer('It can.', z.object({ ok: z.literal(true), version: z.string() }).openapi('Ready')),
    ...problemAnswers('store-trouble', 'store-away'),
  },
});

/** Whether the server is up, and which it is; whether it can do its work. */
export function healthRoutes({ settings, probe }: AppParts): FirmApp {
  const { version } = settings;
  return resourceApp()
    .openapi(health, (c) => c.json({ ok: true as const, name: 'Ringwright' as const, version }, 200))
    .openapi(ready, async (c) => {
      await probe();
      return c.json({ ok: true as const, version }, 200);
    });
}
