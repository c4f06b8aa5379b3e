import { JOB_ENTRY } from './archive-entries.ts';
import { pictureEntries } from './picture-entries.ts';
import { zipOf } from './zip-of.ts';

/**
 * A job with its pictures as one ZIP archive: the job file to the byte, and each picture under its hash. Equal arguments give
 * equal bytes; the order of the pictures does not matter. Bytes that are no picture are left out.
 *
 * @param maker what makes it, with its version.
 */
export const writeArchive = (
  jobText: string,
  pictures: readonly Uint8Array[],
  maker: string,
): Promise<Uint8Array<ArrayBuffer>> =>
  zipOf([{ name: JOB_ENTRY, content: jobText }, ...pictureEntries(pictures)], maker);
