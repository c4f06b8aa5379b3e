import type { Library } from '#model/library.ts';
import type { LibraryStore } from '../db/stores.ts';
import { libraryFromText } from './readable-job.ts';

/** The library that a firm works with, and its revision: 0 stands for the demo library before any save. */
export interface FirmLibrary {
  readonly library: Library;
  readonly revision: number;
}

/** The firm's own library, or the demo library before it has saved one. */
export async function firmLibrary(store: LibraryStore, demo: Library): Promise<FirmLibrary> {
  const stored = await store.read();
  return stored === null
    ? { library: demo, revision: 0 }
    : { library: libraryFromText(stored.text), revision: stored.revision };
}
