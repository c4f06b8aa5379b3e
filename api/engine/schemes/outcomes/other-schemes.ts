import type { PackFor } from '#model/job.ts';
import type { SchemeEstimate } from '../estimate-result.ts';
import { WHICH_SCHEME } from './outcome-plan.ts';

/** So many other schemes are offered: as many as are put before a customer beside the shown one. */
const MOST_OTHERS = 2;

/**
 * The schemes that may be carried out in the stead of the shown one: of those that fail nothing the cheapest, and those
 * that are bought for already; in the job's order. One that fails is never bought for.
 */
export function otherSchemes(
  schemes: readonly SchemeEstimate[],
  shownId: string,
  packFor: readonly PackFor[] = [],
): readonly string[] {
  const chosen = packFor.find(({ question }) => question === WHICH_SCHEME)?.outcomes ?? [];
  const possible = schemes.filter(({ id, complies }) => id !== shownId && complies !== 'no');
  const cheapest = possible
    .toSorted((a, b) => a.totals.grossPence - b.totals.grossPence)
    .slice(0, MOST_OTHERS)
    .map(({ id }) => id);
  return possible.flatMap(({ id }) => (cheapest.includes(id) || chosen.includes(id) ? [id] : []));
}
