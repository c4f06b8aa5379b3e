import type { Context } from 'hono';
import type { Version } from '../db/stores.ts';
import { Problem } from './problems.ts';

/** A version as an entity tag, such as `"3-5f1c0a9be2d47c33"`: never the number alone, which other texts have too. */
export const etagOf = ({ revision, tag }: Version): string => `"${revision}-${tag}"`;

/** Whatever handles an answer on its way may have marked it weak, by compressing it for one; the version is the same. */
const unweakened = (tag: string): string => tag.trim().replace(/^W\//, '');

/**
 * The version that the client has read and means to replace; a missing or faulty `If-Match` is a problem. A number
 * without a tag has the empty one, which no version fits.
 */
export function ifMatchOf(c: Context): Version {
  const header = c.req.header('if-match')?.trim();
  if (header === undefined || header === '')
    throw new Problem('if-match-missing', 'Send the ETag that you read as If-Match.');
  const [, revision, tag = ''] = /^"(\d{1,15})(?:-([0-9a-z]{1,64}))?"$/.exec(unweakened(header)) ?? [];
  if (revision === undefined) throw new Problem('request-faulty', 'If-Match takes one ETag, as it was read.');
  return { revision: Number(revision), tag };
}

/** Whether the client says it holds this very version already. */
export function isHeld(c: Context, version: Version): boolean {
  const header = c.req.header('if-none-match');
  if (header === undefined) return false;
  const tags = header.split(',').map(unweakened);
  return tags.includes(etagOf(version)) || tags.includes('*');
}

/** The problem of a save that came too late, or that was made from another store's text: nothing was changed. */
export function staleRevision(current: Version & { readonly savedAt?: string }): Problem {
  return new Problem(
    'stale-revision',
    `Revision ${current.revision} is the newest. Read it, bring your changes into it, and save again.`,
    {
      currentRevision: current.revision,
      currentEtag: etagOf(current),
      ...(current.savedAt === undefined ? {} : { savedAt: current.savedAt }),
    },
  );
}
