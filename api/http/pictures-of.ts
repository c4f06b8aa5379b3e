import type { Job } from '#model/job.ts';
import type { FirmParts } from './app-parts.ts';

/** The pictures that a job names, in its order; those that were not sent here yet are left out. */
export async function picturesOf(
  { stores }: Pick<FirmParts, 'stores'>,
  { assets }: Pick<Job, 'assets'>,
): Promise<readonly Uint8Array[]> {
  const stored = await Promise.all(assets.map((asset) => stores.assets.read(asset.id)));
  return stored.flatMap((one) => (one === null ? [] : [new Uint8Array(one.content)]));
}
