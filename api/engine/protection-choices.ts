import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { allRules } from './all-rules.ts';
import { libraryFor } from './labour/multipliers.ts';
import { factsOf } from './schemes/facts-of.ts';
import { priceWorked } from './schemes/price-worked.ts';
import { type RcdChoices, rcdChoices } from './schemes/rcd-choices.ts';
import { tariffFor } from './schemes/tariff.ts';
import { workHouse, workScheme } from './schemes/work-scheme.ts';
import { defaultLengthAllowances } from './ways/length-allowances.ts';

/**
 * The front door for the ways to an RCD of one scheme, each with what it costs and what the checks still say of it. Asked for
 * apart from the estimate, since every way is worked, checked and priced whole. Pure; equal arguments give equal results.
 *
 * @returns the circuits that need one by id; none for an unknown scheme, or where every circuit has one already.
 */
export function protectionChoices(job: Job, ofFirm: Library, schemeId: string): readonly RcdChoices[] {
  const scheme = job.schemes.find(({ id }) => id === schemeId);
  if (scheme === undefined) return [];
  const library = libraryFor(job, ofFirm);
  const house = workHouse(job, tariffFor(job, library), defaultLengthAllowances);
  const worked = workScheme(house, scheme);
  const { price } = priceWorked(worked, library);
  return rcdChoices({
    ...{ house, scheme, worked, library, rules: allRules },
    proofsFound: factsOf(workScheme(house, null), library, null).proofs,
    runs: worked.runs,
    grossPence: price.totals.grossPence,
    contingencyPercent: price.contingencyPercent,
  });
}
