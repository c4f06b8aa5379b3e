import { OpenAPIHono } from '@hono/zod-openapi';
import { faultDetails, Problem } from './problems.ts';

/** An app for one resource's routes, that refuses faulty addresses and headers in the one shape of all errors. */
export function resourceApp(): OpenAPIHono {
  return new OpenAPIHono({
    defaultHook: (result) => {
      if (result.success) return;
      const faults = result.error.issues.map((issue) => ({
        path: [result.target, ...issue.path].join('.'),
        message: issue.message,
        remedy: 'See /api/openapi.json for what belongs there',
      }));
      throw new Problem(
        'request-faulty',
        'A part of the address or a header is faulty.',
        faultDetails(faults),
      );
    },
  });
}
