import { z } from '@hono/zod-openapi';
import type { Job } from '#model/job.ts';
import { isoDate } from '#model/primitives.ts';
import { Problem } from './problems.ts';

/** The day printed on papers and the scheme that they show, as an address asks for them; empty is as good as absent. */
export const papersQuery = z.object({
  date: z
    .union([isoDate, z.literal('')])
    .optional()
    .meta({ description: 'The day that the papers carry; today when absent.', example: '2026-11-25' }),
  scheme: z
    .string()
    .optional()
    .meta({ description: 'The id of a scheme; absent: the cheapest that does not fail, else the first.' }),
});

/** The day that papers carry: the one asked for, else today in UTC. */
export const dayAsked = (asked: string | undefined, now: () => Date): string =>
  asked || now().toISOString().slice(0, 10);

/** The problem of a scheme that the job does not have. */
export function noSuchScheme(job: Job, schemeId: string): Problem {
  const choices = job.schemes.map(({ id }) => id);
  const list = choices.length === 0 ? 'none' : choices.join(', ');
  return new Problem('no-such-scheme', `Not "${schemeId}"; it has: ${list}.`, { choices });
}
