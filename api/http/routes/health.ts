import { createRoute, z } from '@hono/zod-openapi';
import { jsonAnswer } from '../answers.ts';
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

/** Whether the server is up, and which it is. */
export function healthRoutes({ settings }: AppParts): FirmApp {
  return resourceApp().openapi(health, (c) =>
    c.json({ ok: true as const, name: 'Ringwright' as const, version: settings.version }, 200),
  );
}
