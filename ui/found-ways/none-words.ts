import type { BestOfKind } from '#engine/schemes/search/found-schemes.ts';
import { counted, pounds } from '../written.ts';

/**
 * Why there is no way of a kind, as it is known: what bars it where it is impossible; where the search gave it up or did not
 * look at all of it that, and what the first that was tried fails by. Null where there is one.
 */
export function noneWords({ why, reason, examined, boundPence }: Omit<BestOfKind, 'kind'>): string | null {
  if (why === null) return null;
  const told = reason ?? '';
  if (why === 'impossible') return told;
  if (why === 'not-searched') return `Not searched in full, so it may be possible. ${told}`.trimEnd();
  const least = boundPence === null ? '' : `; any other costs at least ${pounds(boundPence)} to do`;
  const looked = `Given up after ${counted(examined, 'way')} that failed${least}. It may be possible.`;
  return told === '' ? looked : `${looked} The first failed by: ${told}`;
}
