import type { ArchiveFault } from '#archive/archive-fault.ts';
import type { ArchivedPicture } from '#archive/read-archive.ts';
import type { Fault } from '#model/fault.ts';
import type { Asset, Job } from '#model/job.ts';
import { readJobText } from '#model/read-job.ts';

/** A job that was read from a file, or why it could not be. */
export type OpenedFile =
  | {
      readonly ok: true;
      readonly job: Job;
      /** Of an archive; of a job file alone none. */
      readonly pictures: readonly ArchivedPicture[];
      /** Pictures that the job names and an archive has not. Of a job file alone none: nobody expects them there. */
      readonly missing: readonly Asset[];
    }
  | { readonly ok: false; readonly faults: readonly Fault[] }
  | { readonly ok: false; readonly archiveFault: ArchiveFault };

/**
 * Reads a job from a file: a job file, or an archive of one with its pictures, whatever the file is called. Rejects where what reads
 * archives cannot be had for want of a connection.
 */
export async function openedFile(file: Blob): Promise<OpenedFile> {
  const first = new Uint8Array(await file.slice(0, 4).arrayBuffer());
  if (first[0] !== 0x50 || first[1] !== 0x4b) {
    const read = readJobText(await file.text());
    return read.ok ? { ok: true, job: read.job, pictures: [], missing: [] } : read;
  }
  // What reads archives is large, and seldom wanted.
  const { readArchive } = await import('#archive/read-archive.ts');
  const read = await readArchive(new Uint8Array(await file.arrayBuffer()));
  if (read.ok) return read;
  return read.what === 'job' ? { ok: false, faults: read.faults } : { ok: false, archiveFault: read.fault };
}
