import type { ImageType } from './image-kind.ts';

/** The entry of an archive that is the job file, to the byte. */
export const JOB_ENTRY = 'job.json';

/** The ending of a picture's file by what it is. */
export const pictureEndings: Readonly<Record<ImageType, string>> = {
  'image/jpeg': 'jpg',
  'image/png': 'png',
  'image/webp': 'webp',
};

const pictureEntry = /^assets\/([0-9a-f]{64})\.(jpg|png|webp)$/;

/** Where a picture lies in an archive. */
export const entryOfPicture = (id: string, mediaType: ImageType): string =>
  `assets/${id}.${pictureEndings[mediaType]}`;

/** The picture that an entry is called to be: its id and its ending; null for an entry of another name. */
export function pictureOfEntry(name: string): { readonly id: string; readonly ending: string } | null {
  const [, id, ending] = pictureEntry.exec(name) ?? [];
  return id === undefined || ending === undefined ? null : { id, ending };
}

/** The most that is read of an archive: some ten times a large job with its photos. */
export const archiveBounds = {
  bytes: 256 * 1024 * 1024,
  entries: 2000,
  /** Of the job file, unpacked, as large as the server takes one. */
  jobBytes: 8 * 1024 * 1024,
  /** Of one picture, unpacked, as large as the server takes one. */
  pictureBytes: 6 * 1024 * 1024,
  /** Of all that is in it, unpacked. */
  inflatedBytes: 256 * 1024 * 1024,
} as const;
