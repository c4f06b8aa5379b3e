import type { OpenAPIHono } from '@hono/zod-openapi';
import { documentSchemas } from './document-schemas.ts';
import { routeAt } from './guards.ts';

const description =
  'Jobs, estimates and papers of one firm. Jobs and libraries are kept as they are sent, to the byte; a save names in If-Match the revision that it replaces. Every problem has one shape, with a code; /api/problems lists them. An aid to a competent person, who remains responsible: nothing here is a certificate.';

/** Adds the OpenAPI document of every route that the app has by now; made once, when it is first asked for. */
export function addDocument(app: OpenAPIHono, version: string): void {
  const { method, path, operationId } = routeAt('openapi');
  app.openAPIRegistry.registerPath({
    method,
    path,
    operationId,
    summary: 'This document',
    responses: {
      200: {
        description: 'OpenAPI 3.1.',
        content: { 'application/json': { schema: { type: 'object' } } },
      },
    },
  });
  const written = (): string => {
    for (const { name, schema } of documentSchemas())
      app.openAPIRegistry.registerComponent('schemas', name, schema);
    const info = { title: 'Ringwright', version, description, license: { name: 'MIT' } };
    return JSON.stringify(app.getOpenAPI31Document({ openapi: '3.1.0', info }));
  };
  let text: string | null = null;
  app.get(path, (c) => {
    text ??= written();
    return c.body(text, 200, { 'Content-Type': 'application/json' });
  });
}
