import { addPhoto } from '../edits/photos.ts';
import { errorWords } from '../error-words.ts';
import type { JobEventDetails } from '../job-events.ts';
import type { JobDesk } from './job-desk.ts';
import type { Pictures } from './pictures.ts';
import { smallerPhoto } from './smaller-photo.ts';

/** What photos are taken with. */
export interface TakenWith {
  readonly pictures: Pick<Pictures, 'keep'>;
  readonly desk: Pick<JobDesk, 'edit' | 'say'>;
  /** As the browser makes a photo smaller, unless a test brings its own. */
  readonly smaller?: (file: Blob) => Promise<Blob>;
}

/** Why a photo could not be kept, as the end of a sentence. */
export const photoTroubleWords = (error: unknown): string => {
  if (error instanceof DOMException && error.name === 'QuotaExceededError')
    return 'this device has no room left for it';
  return errorWords(error);
};

/** Keeps photos on the device, each smaller, and puts each to its thing: one step back a photo. What cannot be kept is said. */
export async function takePhotos(
  { of, name, files }: JobEventDetails['photos-taken'],
  { pictures, desk, smaller = smallerPhoto }: TakenWith,
): Promise<void> {
  for (const file of files) {
    try {
      const asset = await pictures.keep(await smaller(file), `Photo of ${name}`);
      desk.edit(addPhoto(of, name, asset));
    } catch (error) {
      desk.say(`The photo was not added: ${photoTroubleWords(error)}`);
    }
  }
}
