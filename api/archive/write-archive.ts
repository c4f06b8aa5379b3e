import JSZip from 'jszip';
import { entryOfPicture, JOB_ENTRY } from './archive-entries.ts';
import { imageKind } from './image-kind.ts';
import { pictureId } from './picture-id.ts';

/** ZIP cannot tell a time before, and equal jobs are to give equal archives. */
const NO_TIME = new Date(Date.UTC(1980, 0, 1));

/**
 * A job with its pictures as one ZIP archive: the job file to the byte, and each picture under its hash. Equal arguments give
 * equal bytes; the order of the pictures does not matter. Bytes that are no picture are left out.
 */
export async function writeArchive(
  jobText: string,
  pictures: readonly Uint8Array[],
): Promise<Uint8Array<ArrayBuffer>> {
  const archive = new JSZip();
  archive.file(JOB_ENTRY, jobText, { date: NO_TIME, compression: 'DEFLATE' });
  const entries = new Map<string, Uint8Array>();
  for (const bytes of pictures) {
    const kind = imageKind(bytes);
    if (kind !== null) entries.set(entryOfPicture(pictureId(bytes), kind), bytes);
  }
  // A picture is packed already.
  for (const [name, bytes] of [...entries].toSorted(([a], [b]) => (a < b ? -1 : 1)))
    archive.file(name, bytes, { date: NO_TIME, compression: 'STORE', createFolders: false });
  const packed = await archive.generateAsync({ type: 'uint8array', platform: 'DOS' });
  return new Uint8Array(packed);
}
