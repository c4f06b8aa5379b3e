/** The store cannot be opened, read or written: the message names the place and what to do. */
export class StoreTrouble extends Error {
  override readonly name = 'StoreTrouble';
  /** The same without the place, for whoever need not know how this machine's folders are called; null: not known. */
  readonly withoutPlace: string | null;

  constructor(message: string, { withoutPlace = null, ...options }: StoreTroubleOptions = {}) {
    super(message, options);
    this.withoutPlace = withoutPlace;
  }
}

interface StoreTroubleOptions extends ErrorOptions {
  readonly withoutPlace?: string | null;
}

/** The error of the file system, of SQLite or of the net that lies under wrappers; null when there is none. */
function codedError(error: unknown): { readonly code: string; readonly error: Error } | null {
  if (!(error instanceof Error)) return null;
  // The native library gives no code where it cannot open a file at all: only its number, at the end of the message.
  if (/^ConnectionFailed\(.*: 14"?\)$/s.test(error.message)) return { code: 'SQLITE_CANTOPEN', error };
  if ('code' in error && typeof error.code === 'string' && error.code !== '')
    return { code: error.code, error };
  // A request that got no answer; its cause mostly says why.
  const bare = error.message === 'fetch failed' ? { code: 'FETCH_FAILED', error } : null;
  return codedError(error.cause) ?? bare;
}

const noPlace =
  'cannot be opened. See that its folder exists and that no folder stands in its place, or name another file in DATABASE_URL.';
const noRight =
  'may not be written to. See to the rights of the file and its folder, or name another file in DATABASE_URL.';
const noRoom = 'has no room left: the disk is full. Make room, then try again.';
const noAnswer =
  'does not answer. See that its server runs and that the address in DATABASE_URL is the right one.';

/** What to do, by how a code begins. */
const remedies: Readonly<Record<string, string>> = {
  SQLITE_NOTADB: 'is not a database of ours. Move it away, or name another file in DATABASE_URL.',
  SQLITE_CORRUPT: 'is damaged. Put a backup in its place, or name another file in DATABASE_URL.',
  SQLITE_CANTOPEN: noPlace,
  SQLITE_READONLY: noRight,
  SQLITE_FULL: noRoom,
  SQLITE_IOERR: 'cannot be read or written: the disk reports a fault. See to the disk before anything else.',
  SQLITE_BUSY: 'is in use by another program, which does not let go of it. End that one, then try again.',
  EACCES: noRight,
  EPERM: noRight,
  EROFS: noRight,
  ENOENT: noPlace,
  ENOTDIR: noPlace,
  EEXIST: noPlace,
  ENOSPC: noRoom,
  FETCH_FAILED: noAnswer,
  ECONNREFUSED: noAnswer,
  ECONNRESET: noAnswer,
  ENOTFOUND: noAnswer,
  EAI_AGAIN: noAnswer,
  ETIMEDOUT: noAnswer,
};

/**
 * What went wrong with the store at a place, in words; null when it was not the store that failed.
 *
 * The cause is the bare error of the store: what wraps it carries the statement with its values, which are
 * customers' data and have no business in a log.
 */
export function storeTrouble(place: string, error: unknown): StoreTrouble | null {
  if (error instanceof StoreTrouble) return error;
  const coded = codedError(error);
  if (coded === null) return null;
  const remedy = Object.entries(remedies).find(([known]) => coded.code.startsWith(known))?.[1];
  return new StoreTrouble(`The store ${place} ${remedy ?? `cannot be used (${coded.error.message}).`}`, {
    cause: coded.error,
    withoutPlace: remedy === undefined ? null : `The store ${remedy}`,
  });
}
