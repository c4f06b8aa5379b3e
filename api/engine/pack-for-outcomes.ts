import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { houseFor } from './schemes/house-for.ts';
import { type OutcomePacker, outcomePacker } from './schemes/outcomes/outcome-packer.ts';

/** Which scheme is bought for, and which others may be carried out in its stead. */
export interface SchemesToPack {
  readonly schemeId: string;
  /** In the order in which they are offered; the shown one among them is left out, as are unknown ids. */
  readonly otherIds: readonly string[];
}

/**
 * The front door for buying while things are still open: what to buy so that the job can be carried out however they turn
 * out, and what goes back then. Asked for apart from the estimate, since every outcome is worked through the stages. Pure:
 * equal arguments give equal answers; what was worked out for one question is kept for the next.
 *
 * @returns null for an unknown scheme.
 */
export function packForOutcomes(
  job: Job,
  ofFirm: Library,
  { schemeId, otherIds }: SchemesToPack,
): OutcomePacker | null {
  const shown = job.schemes.find(({ id }) => id === schemeId);
  if (shown === undefined) return null;
  const others = otherIds.flatMap((id) => job.schemes.filter((one) => one.id === id && one !== shown));
  const { library, house } = houseFor(job, ofFirm);
  return outcomePacker({ house, library, shown, others });
}
