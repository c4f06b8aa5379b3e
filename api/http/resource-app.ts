import { OpenAPIHono } from '@hono/zod-openapi';
import type { AppEnv } from './access-guard.ts';
import { faultDetails, Problem } from './problems.ts';

/** Routes whose handlers find the stores of the asker's firm with each request. */
export type FirmApp = OpenAPIHono<AppEnv>;

/** An app for one resource's routes, that refuses faulty addresses and headers in the one shape of all errors. */
export function resourceApp(): FirmApp {
  return new OpenAPIHono<AppEnv>({
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
