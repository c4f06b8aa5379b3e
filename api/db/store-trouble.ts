/** The store cannot be opened or written: the message names the place and what to do. */
export class StoreTrouble extends Error {
  override readonly name = 'StoreTrouble';
}

const codeOf = (error: unknown): string => {
  if (!(error instanceof Error)) return '';
  if ('code' in error && typeof error.code === 'string') return error.code;
  return codeOf(error.cause);
};

const remedies: Readonly<Record<string, string>> = {
  SQLITE_NOTADB: 'is not a database of ours. Move it away, or name another file in DATABASE_URL.',
  SQLITE_CORRUPT: 'is damaged. Put a backup in its place, or name another file in DATABASE_URL.',
  SQLITE_CANTOPEN: 'cannot be opened. See that its folder exists and may be written to.',
  SQLITE_READONLY: 'may not be written to. See to the rights of the file and its folder.',
  SQLITE_FULL: 'has no room left: the disk is full.',
  SQLITE_BUSY: 'is in use by another program, which does not let go of it. End that one, then start again.',
};

/** What went wrong with a store at this address, in words; the cause stays with it. */
export function storeTrouble(url: string, error: unknown): StoreTrouble {
  const code = codeOf(error);
  const remedy = Object.entries(remedies).find(([known]) => code.startsWith(known))?.[1];
  const reason = error instanceof Error ? error.message : String(error);
  return new StoreTrouble(
    `The store ${url} ${remedy ?? `cannot be used (${code === '' ? reason : code}).`}`,
    {
      cause: error,
    },
  );
}
