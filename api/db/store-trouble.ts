/**
 * What kind of trouble it is: `busy` and `away` pass by themselves (another program writes, a server of ours does not answer);
 * `here` wants a person.
 */
export type TroubleKind = 'busy' | 'away' | 'here';

/** The store cannot be opened, read or written: the message names the place and what to do. */
export class StoreTrouble extends Error {
  override readonly name = 'StoreTrouble';
  /** The same without the place, for whoever need not know how this machine's folders are called; null: not known. */
  readonly withoutPlace: string | null;
  readonly kind: TroubleKind;

  constructor(message: string, { withoutPlace = null, kind = 'here', ...options }: StoreTroubleOptions = {}) {
    super(message, options);
    this.withoutPlace = withoutPlace;
    this.kind = kind;
  }
}

interface StoreTroubleOptions extends ErrorOptions {
  readonly withoutPlace?: string | null;
  readonly kind?: TroubleKind;
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

/** What to do about a kind of fault. */
interface Remedy {
  readonly words: string;
  readonly kind: TroubleKind;
}

const here = (words: string): Remedy => ({ words, kind: 'here' });

const noPlace = here(
  'cannot be opened. See that its folder exists and that no folder stands in its place, or name another file in DATABASE_URL.',
);
const noRight = here(
  'may not be written to. See to the rights of the file and its folder, or name another file in DATABASE_URL.',
);
const noRoom = here('has no room left: the disk is full. Make room, then try again.');
const noSense = here('is damaged. Put a backup in its place, or name another file in DATABASE_URL.');
const held: Remedy = {
  words: 'is in use by another program, which does not let go of it. End that one, then try again.',
  kind: 'busy',
};
const noAnswer: Remedy = {
  words: 'does not answer. See that its server runs and that the address in DATABASE_URL is the right one.',
  kind: 'away',
};
const refused: Remedy = {
  words:
    'refuses what it is asked. See that the address and the authToken in DATABASE_URL are its own, and what its log says.',
  kind: 'away',
};

/** What to do, by how a code begins; the longer one of two goes first. */
const remedies: Readonly<Record<string, Remedy>> = {
  SQLITE_NOTADB: here('is not a database of ours. Move it away, or name another file in DATABASE_URL.'),
  SQLITE_CORRUPT: noSense,
  SQLITE_CANTOPEN: noPlace,
  SQLITE_READONLY_DBMOVED: here('was moved or deleted while it was in use. Put it back, then start again.'),
  SQLITE_READONLY: noRight,
  SQLITE_FULL: noRoom,
  SQLITE_IOERR: here(
    'cannot be read or written: the disk reports a fault. See to the disk before anything else.',
  ),
  SQLITE_BUSY: held,
  SQLITE_LOCKED: held,
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
  EHOSTUNREACH: noAnswer,
  ENETUNREACH: noAnswer,
  EPIPE: noAnswer,
  ETIMEDOUT: noAnswer,
  UND_ERR: noAnswer,
  HRANA_WEBSOCKET_ERROR: noAnswer,
  HRANA_CLOSED_ERROR: noAnswer,
  // By the number of the answer: 401 and 403 want another token, 429 and above 500 pass.
  SERVER_ERROR: refused,
  HRANA_PROTO_ERROR: refused,
  PROTOCOL_VERSION_ERROR: refused,
};

/** The trouble that was told already and lies under wrappers; null when there is none. */
export function troubleUnder(error: unknown): StoreTrouble | null {
  if (error instanceof StoreTrouble) return error;
  return error instanceof Error && error.cause !== undefined ? troubleUnder(error.cause) : null;
}

/** True where another program, or another connection, was writing at that moment: nothing was changed. */
export const isHeldUp = (error: unknown): boolean =>
  /^SQLITE_(?:BUSY|LOCKED)/.test(codedError(error)?.code ?? '');

/**
 * What went wrong with the store at a place, in words; null when it was not the store that failed.
 *
 * The cause is the bare error of the store: what wraps it carries the statement with its values, which are
 * customers' data and have no business in a log.
 */
export function storeTrouble(place: string, error: unknown): StoreTrouble | null {
  const told = troubleUnder(error);
  if (told !== null) return told;
  const coded = codedError(error);
  if (coded === null) return null;
  const remedy = Object.entries(remedies).find(([known]) => coded.code.startsWith(known))?.[1];
  return new StoreTrouble(
    `The store ${place} ${remedy?.words ?? `cannot be used (${coded.error.message}).`}`,
    {
      cause: coded.error,
      withoutPlace: remedy === undefined ? null : `The store ${remedy.words}`,
      kind: remedy?.kind ?? 'here',
    },
  );
}
