import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { houseFor } from './schemes/house-for.ts';
import { priceAsCounted } from './schemes/price-scheme-with-range.ts';
import { type ShallowBox, shallowBoxes } from './schemes/shallow-boxes.ts';
import { workScheme } from './schemes/work-scheme.ts';

/**
 * The front door for the boxes that one scheme finds too shallow: exchanged or under a spacer frame, and what the other of the
 * two comes to. Asked for apart from the estimate, since each is worked and priced whole. Pure; equal arguments give equal
 * results.
 *
 * @returns boxes by point; none for an unknown scheme.
 */
export function boxChoices(job: Job, ofFirm: Library, schemeId: string): readonly ShallowBox[] {
  const scheme = job.schemes.find(({ id }) => id === schemeId);
  if (scheme === undefined) return [];
  const { library, house } = houseFor(job, ofFirm);
  const worked = workScheme(house, scheme);
  const { totals, contingencyPercent } = priceAsCounted({ house, worked, library }).price;
  return shallowBoxes({
    ...{ house, library, scheme, worked, contingencyPercent },
    runs: worked.runs,
    grossPence: totals.grossPence,
  });
}
