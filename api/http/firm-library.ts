import { remembered } from '#engine/plan/remembered.ts';
import type { Library } from '#model/library.ts';
import type { LibraryStore, Version } from '../db/stores.ts';
import { tagOf } from '../db/tag-of.ts';
import { fromStored, libraryFromText } from './readable-job.ts';

/** The text that a firm's library is, and its version: revision 0 stands for the demo library before any save. */
export interface LibraryText extends Version {
  readonly text: string;
}

/** The library that a firm works with, with its text. */
export interface FirmLibrary extends LibraryText {
  readonly library: Library;
}

/** The demo library as it is handed out before any save. */
export const demoLibraryText = remembered((demo: Library): LibraryText => {
  const text = `${JSON.stringify(demo, null, 2)}\n`;
  return { text, revision: 0, tag: tagOf(text) };
});

/** What each store's library was when it was last asked for: it is read and checked once for each save, not for each request. */
const lastRead = new WeakMap<LibraryStore, FirmLibrary>();

/** The firm's own library, or the demo library before it has saved one. */
export async function firmLibrary(store: LibraryStore, demo: Library): Promise<FirmLibrary> {
  const stored = await store.read();
  if (stored === null) return { library: demo, ...demoLibraryText(demo) };
  const { text, revision, tag } = stored;
  const known = lastRead.get(store);
  if (known !== undefined && known.revision === revision && known.text === text) return known;
  const read = {
    library: fromStored(() => libraryFromText(text), 'Restore a backup, or save the library anew.'),
    text,
    revision,
    tag,
  };
  lastRead.set(store, read);
  return read;
}
