import type { Library } from '#model/library.ts';
import type { LibraryEdit } from '../library-events.ts';

/** Puts a library that was read from a file in the place of the firm's: details, prices, norms, limits and terms. */
export const takeLibraryIn = (library: Library, fileName: string): LibraryEdit => ({
  label: `Take in ${fileName}`,
  change: (draft) => {
    Object.assign(draft, library);
  },
});

/** A library as the text of its file. */
export const libraryText = (library: Library): string => `${JSON.stringify(library, null, 2)}\n`;
