import { JOB_ENTRY } from '#archive/archive-entries.ts';
import { pictureEntries } from '#archive/picture-entries.ts';
import { zipOf } from '#archive/zip-of.ts';
import { MAKER } from '#engine/engine-version.ts';
import { type AllFilesRequest, allFiles } from './all-files.ts';
import { type PackRequest, packPdf } from './pack-pdf.ts';

/** What a pack with everything in it is made from. */
export interface PackZipRequest extends AllFilesRequest, PackRequest {
  /** The job file to the byte. */
  readonly jobText: string;
  /** Photos and traced pictures; bytes that are no picture are left out. */
  readonly pictures: readonly Uint8Array[];
}

/** The names of the pack and of the one archive of everything. */
export const PACK_PDF = 'papers.pdf';
export const PACK_ZIP = 'papers.zip';

/**
 * Everything of a job as one ZIP archive: the pack, every paper by itself, the job file and its pictures. Equal requests
 * give equal entries, but for the workbook, which tells when it was written.
 *
 * @param pack the pack, where it is made already.
 */
export async function packZip(request: PackZipRequest, pack?: Uint8Array): Promise<Uint8Array<ArrayBuffer>> {
  return zipOf(
    [
      { name: PACK_PDF, content: pack ?? (await packPdf(request)) },
      ...(await allFiles(request)),
      { name: JOB_ENTRY, content: request.jobText },
      ...pictureEntries(request.pictures),
    ],
    MAKER,
  );
}
