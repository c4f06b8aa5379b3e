import { documentSchemas } from './document-schemas.ts';
import { routeAt } from './guards.ts';
import type { FirmApp } from './resource-app.ts';

const description =
  'Jobs, estimates and papers of one firm. Jobs and libraries are kept as they are sent, to the byte; a save names in If-Match the revision that it replaces. Every problem has one shape, with a code; /api/problems lists them. An aid to a competent person, who remains responsible: nothing here is a certificate.';

/** Roles stand where OpenAPI 3.1 lets them: as names with the scheme. The cookie is `__Host-ringwright` over TLS. */
const sessionScheme = {
  type: 'apiKey',
  in: 'cookie',
  name: 'ringwright',
  description:
    'The session that POST /api/session begins. Read: everybody with an account; write: owner and estimator; own: owner. On the server’s own machine, where nobody else reaches it, none is needed.',
} as const;

/** Adds the OpenAPI document of every route that the app has by now; made once, when it is first asked for. */
export function addDocument(app: FirmApp, version: string): void {
  const { method, path, operationId, security } = routeAt('openapi');
  app.openAPIRegistry.registerPath({
    method,
    path,
    operationId,
    security,
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
    app.openAPIRegistry.registerComponent('securitySchemes', 'session', sessionScheme);
    const info = { title: 'Ringwright', version, description, license: { name: 'MIT' } };
    return JSON.stringify(app.getOpenAPI31Document({ openapi: '3.1.0', info }));
  };
  let text: string | null = null;
  app.get(path, (c) => {
    text ??= written();
    return c.body(text, 200, { 'Content-Type': 'application/json' });
  });
}
