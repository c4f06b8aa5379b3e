import type { Context } from 'hono';
import { Problem } from './problems.ts';

/** A revision as an entity tag: the number in double quotes. */
export const etagOf = (revision: number): string => `"${revision}"`;

/** The revision that the client has read and means to replace; a missing or faulty `If-Match` is a problem. */
export function ifMatchOf(c: Context): number {
  const header = c.req.header('if-match')?.trim();
  if (header === undefined || header === '')
    throw new Problem('if-match-missing', 'Send the ETag that you read as If-Match, such as "3".');
  const revision = /^"(\d{1,15})"$/.exec(header)?.[1];
  if (revision === undefined)
    throw new Problem('request-faulty', 'If-Match takes one revision in double quotes, such as "3".');
  return Number(revision);
}

/** Whether the client says it holds this very revision already. */
export function isHeld(c: Context, revision: number): boolean {
  const header = c.req.header('if-none-match');
  if (header === undefined) return false;
  const tags = header.split(',').map((tag) => tag.trim().replace(/^W\//, ''));
  return tags.includes(etagOf(revision)) || tags.includes('*');
}

/** The problem of a save that came too late: nothing was changed. */
export function staleRevision(current: { readonly revision: number; readonly savedAt: string }): Problem {
  return new Problem(
    'stale-revision',
    `Revision ${current.revision} is the newest. Read it, bring your changes into it, and save again.`,
    { currentRevision: current.revision, savedAt: current.savedAt },
  );
}
