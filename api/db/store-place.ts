import { fileURLToPath } from 'node:url';
import { StoreTrouble } from './store-trouble.ts';

/** Where a store is. */
export interface StorePlace {
  /** As it was given. */
  readonly url: string;
  /** The file, as a path; null for a server. */
  readonly path: string | null;
  /** How messages name it: without the token that an address may carry. */
  readonly shown: string;
}

const inMemory = (path: string): boolean => path === '' || path === ':memory:';

function pathOf(url: string): string {
  if (url.startsWith('file://')) return fileURLToPath(url.replace(/[?#].*$/s, ''));
  // `file:jobs.db` is a path from the folder that the program runs in; the standard's URLs know no such thing.
  return decodeURIComponent(url.slice('file:'.length).replace(/[?#].*$/s, ''));
}

/**
 * The place that an address names.
 *
 * @param url `file:` with a path, or the address of a libSQL server.
 * @throws StoreTrouble for a store in memory, which would be gone with the program and which its second connection
 * could not see; for an address with a password in it; and for one that cannot be read.
 */
export function storePlace(url: string): StorePlace {
  try {
    if (url.startsWith('file:')) {
      const path = pathOf(url);
      if (inMemory(path)) throw new StoreTrouble('DATABASE_URL names no file: write file: and then a path.');
      return { url, path, shown: path };
    }
    const { protocol, host, pathname, username, password } = new URL(url);
    if (username !== '' || password !== '')
      throw new StoreTrouble(
        'DATABASE_URL holds a name or a password: give the token as ?authToken= instead.',
      );
    return { url, path: null, shown: `${protocol}//${host}${pathname}` };
  } catch (error) {
    if (error instanceof StoreTrouble) throw error;
    throw new StoreTrouble('DATABASE_URL is no address: write file: and a path, or libsql: and a server.', {
      cause: error,
    });
  }
}
