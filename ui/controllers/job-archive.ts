import { MAKER } from '#engine/engine-version.ts';
import type { Asset, Job } from '#model/job.ts';
import type { Pictures } from './pictures.ts';

/** A job with its pictures as one file, and the pictures that could not be put into it. */
export interface MadeArchive {
  readonly file: Blob;
  readonly missing: readonly Asset[];
}

/** Makes an archive of a job on the device: with what is there, also what was not sent yet; the rest is fetched where it can be. */
export async function archiveOf(job: Job, pictures: Pick<Pictures, 'see'>): Promise<MadeArchive> {
  const seen = await Promise.all(
    job.assets.map(async (asset) => ({ asset, picture: await pictures.see(asset.id) })),
  );
  const there = seen.flatMap(({ picture }) => (typeof picture === 'string' ? [] : [picture]));
  const bytes = await Promise.all(there.map(async (picture) => new Uint8Array(await picture.arrayBuffer())));
  const { writeArchive } = await import('#archive/write-archive.ts');
  const file = new Blob([await writeArchive(JSON.stringify(job), bytes, MAKER)], { type: 'application/zip' });
  return {
    file,
    missing: seen.flatMap(({ asset, picture }) => (typeof picture === 'string' ? [asset] : [])),
  };
}

/** What an archive of a job is called: its reference, in letters that every system takes. */
export const archiveName = ({ reference }: Pick<Job, 'reference'>): string =>
  `${reference.replace(/[^\p{L}\p{N}-]+/gu, '-').replace(/^-+|-+$/g, '') || 'job'}-job.zip`;
