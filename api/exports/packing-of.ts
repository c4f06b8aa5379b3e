import { packForOutcomes } from '#engine/pack-for-outcomes.ts';
import { otherSchemes } from '#engine/schemes/outcomes/other-schemes.ts';
import { type Packing, packingBy } from '#engine/schemes/outcomes/packing.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import type { Papers } from './papers.ts';

/** What to buy for the scheme that papers show while things are open, by what the job says is bought for; null for a job that has no scheme. */
export function packingOf(
  job: Job,
  library: Library,
  { result, chosen }: Pick<Papers, 'result' | 'chosen'>,
): Packing | null {
  if (chosen === null) return null;
  const { packFor = [] } = job;
  const otherIds = otherSchemes(result.schemes, chosen.id, packFor);
  const packer = packForOutcomes(job, library, { schemeId: chosen.id, otherIds });
  return packer === null ? null : packingBy(packer, packFor);
}
