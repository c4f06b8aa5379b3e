/** A file of the build as its list has it. */
export interface OfflineFile {
  /** From the root of the screen, beginning with a slash. */
  readonly path: string;
  /** SHA-256 of its bytes, hexadecimal. */
  readonly sha256: string;
}

/** All files of a build. */
export interface OfflineFiles {
  /** Of this build alone: the same files make the same one. */
  readonly version: string;
  /** By path. */
  readonly files: readonly OfflineFile[];
}

/** What the page tells a version that waits. A type alone: page and worker must not share a file. */
export type TakeOver = 'take-over';

/** The one page of the screen, which every place within it gets. */
const PAGE = '/index.html';
/** Where a customer reads a quotation: a page of its own. */
const SHARED = '/q';

const hex = (bytes: ArrayBuffer): string =>
  [...new Uint8Array(bytes)].map((byte) => byte.toString(16).padStart(2, '0')).join('');

/** Fetches a file and makes sure that it is this build's: a server may be changed over while its files are fetched. */
async function fetched({ path, sha256 }: OfflineFile, get: typeof fetch): Promise<Response> {
  const answer = await get(path, { cache: 'no-cache' });
  if (!answer.ok) throw new Error(`${path} was answered with ${answer.status}.`);
  const found = hex(await crypto.subtle.digest('SHA-256', await answer.clone().arrayBuffer()));
  if (found !== sha256) throw new Error(`${path} is of another version.`);
  return answer;
}

/**
 * Takes all files of a build down on the device. Rejects, and leaves nothing, where one cannot be had or is another
 * build's: the browser tries again later.
 */
export async function takeDown(
  { version, files }: OfflineFiles,
  store: CacheStorage,
  get: typeof fetch = fetch,
): Promise<void> {
  try {
    const cache = await store.open(version);
    await Promise.all(files.map(async (file) => cache.put(file.path, await fetched(file, get))));
  } catch (error) {
    await store.delete(version);
    throw error;
  }
}

/**
 * The file that a request is answered with; null where it goes to the server: what it keeps and makes is never kept here,
 * and neither is what is not of this build.
 */
export function fileFor(
  { files }: OfflineFiles,
  { method, url, mode }: Pick<Request, 'method' | 'url' | 'mode'>,
  origin: string,
): string | null {
  const { origin: asked, pathname } = new URL(url);
  if (method !== 'GET' || asked !== origin || pathname === '/api' || pathname.startsWith('/api/'))
    return null;
  if (mode === 'navigate') return pathname === SHARED ? `${SHARED}.html` : PAGE;
  return files.some(({ path }) => path === pathname) ? pathname : null;
}

/** A file as it was taken down; one that the browser has dropped is asked of the server. */
export async function answerFrom(version: string, path: string, request: Request): Promise<Response> {
  return (await (await caches.open(version)).match(path)) ?? fetch(request);
}
