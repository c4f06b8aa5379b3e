import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { houseToTry } from './house-to-try.ts';
import { priceAsCounted } from './schemes/price-scheme-with-range.ts';
import { type RcdChoices, rcdChoices } from './schemes/rcd-choices.ts';
import { workScheme } from './schemes/work-scheme.ts';

/**
 * The front door for the ways to an RCD of one scheme, each with what it costs and what the checks still say of it. Asked for
 * apart from the estimate, since every way is worked, checked and priced whole. Pure; equal arguments give equal results.
 *
 * @returns the circuits that need one by id; none for an unknown scheme, or where every circuit has one already.
 */
export function protectionChoices(job: Job, ofFirm: Library, schemeId: string): readonly RcdChoices[] {
  const scheme = job.schemes.find(({ id }) => id === schemeId);
  if (scheme === undefined) return [];
  const tried = houseToTry(job, ofFirm);
  const worked = workScheme(tried.house, scheme);
  const { totals, contingencyPercent } = priceAsCounted({ ...tried, worked }).price;
  return rcdChoices({
    ...tried,
    ...{ scheme, worked, contingencyPercent },
    runs: worked.runs,
    grossPence: totals.grossPence,
  });
}
