import { mkdir, stat } from 'node:fs/promises';
import { dirname } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { type Client, createClient } from '@libsql/client';
import { sql } from 'drizzle-orm';
import { drizzle, type LibSQLDatabase } from 'drizzle-orm/libsql';
import { migrate } from 'drizzle-orm/libsql/migrator';
import { readMigrationFiles } from 'drizzle-orm/migrator';
import { type StorePlace, storePlace } from './store-place.ts';
import { isHeldUp, StoreTrouble, storeTrouble } from './store-trouble.ts';
import { WriteQueue } from './write-queue.ts';

const migrationsFolder = fileURLToPath(new URL('./migrations', import.meta.url));

/** How long a statement waits for another process that holds the file, ms. */
export const OTHER_PROCESS_MS = 5000;

/**
 * How long it waits at a time, ms: a local statement holds up all else that this process does, so that it is tried again and
 * again instead, with rests between.
 */
const AT_A_TIME_MS = 20;

/** The longest rest between two tries, ms; how long it is in each case is left to chance, so that two programs do not keep step. */
const REST_MS = 40;

/** Connections that read at once. */
const READERS = 4;

/** How often it is looked whether another process has written, ms. */
const LOOK_MS = 50;

/**
 * An open database: whatever writes goes through `write`, one task at a time on a connection of its own; whatever
 * only reads uses `reader`. Writers at once on one client fail on SQLite, so there is no other way to write.
 */
export interface Database {
  readonly reader: Pick<LibSQLDatabase, 'select'>;
  /** Rejects with `StoreTrouble` where it is the store that failed, a full disk for one. */
  readonly write: <T>(task: (writer: LibSQLDatabase) => Promise<T>) => Promise<T>;
  /** Asks for an answer, for up-to-date tables and for a write that changes nothing; rejects with `StoreTrouble`. */
  readonly probe: () => Promise<void>;
  /**
   * A word that stays the same as long as nothing is written: what was read under it holds while it does. Own writes change it at
   * once, those of another process within `LOOK_MS`. Null where that cannot be told: a server's store has other writers.
   */
  readonly state: () => Promise<string | null>;
  /** Finishes what was asked for, then lets go of the file. */
  readonly close: () => Promise<void>;
}

/** A database of a newer version, or of another program, is left as it is. */
async function refuseForeign({ path, shown }: StorePlace, client: Client): Promise<void> {
  const tables = await client.execute(
    "select name from sqlite_master where type = 'table' and name not like 'sqlite\\_%' escape '\\'",
  );
  if (!tables.rows.some(({ name }) => name === '__drizzle_migrations')) {
    // A server may keep tables of its own in a database that is new to us; a file has none.
    if (path === null || tables.rows.length === 0) return;
    throw new StoreTrouble(
      `The store ${shown} is a database of another program. Name another file in DATABASE_URL.`,
    );
  }
  const known = new Set(readMigrationFiles({ migrationsFolder }).map(({ folderMillis }) => folderMillis));
  const { rows } = await client.execute('select created_at from __drizzle_migrations');
  if (rows.some(({ created_at }) => !known.has(Number(created_at))))
    throw new StoreTrouble(
      `The store ${shown} was written by a newer version. Start that version, or name another store in DATABASE_URL.`,
    );
}

async function bringUp(writer: Client): Promise<void> {
  const db = drizzle(writer);
  try {
    await migrate(db, { migrationsFolder });
  } catch {
    // Another process that started at the same moment may have made the tables first: then there is nothing left to
    // do. Each migration is one transaction, so a real fault shows again.
    await migrate(db, { migrationsFolder });
  }
}

/** An acknowledged save is on the disk, also when the power goes. The writer has one connection, so this holds for it. */
async function writeThrough(writer: Client): Promise<void> {
  await writer.execute('PRAGMA synchronous = FULL');
  await writer.execute(`PRAGMA busy_timeout = ${AT_A_TIME_MS}`);
}

/**
 * Gives the writer a new connection after a write that failed: a statement that another program held up is left
 * standing in the old one, and no later transaction could be committed there.
 */
async function startAfresh({ path }: StorePlace, writer: Client): Promise<void> {
  if (path === null) return;
  await writer.reconnect();
  await writeThrough(writer);
}

/** Brings what is written ahead into the file itself, so that whoever copies a stopped store need copy that alone. */
async function intoOneFile({ path }: StorePlace, writer: Client): Promise<void> {
  if (path === null) return;
  // Another process may be reading: then it stays beside the file, where nothing is lost either.
  await writer.execute('PRAGMA wal_checkpoint(TRUNCATE)').catch(() => undefined);
}

/** Takes the right to write and gives it back: a file that may only be read opens without complaint. */
const writeNothing = sql`delete from __drizzle_migrations where false`;

/**
 * A file holds every row to what it belongs to. A server may not, and no statement can make it over the net, where each may
 * come on a connection of its own: every write here asks for what it refers to itself, and at the start it is looked
 * whether all of it is there.
 */
async function refuseOrphans({ path, shown }: StorePlace, writer: Client): Promise<void> {
  if (path !== null) return;
  const { rows: held } = await writer.execute('PRAGMA foreign_keys');
  if (Number(held[0]?.[0]) === 1) return;
  const { rows: orphans } = await writer.execute('PRAGMA foreign_key_check');
  if (orphans.length > 0)
    throw new StoreTrouble(
      `The store ${shown} has ${orphans.length} rows without what they belong to, and does not hold to foreign keys. Put a backup in its place.`,
    );
}

async function prepare(place: StorePlace, writer: Client): Promise<void> {
  await refuseForeign(place, writer);
  if (place.path !== null) {
    await writer.execute('PRAGMA journal_mode = WAL');
  }
  await bringUp(writer);
  await refuseOrphans(place, writer);
  // Ask for a write now, not at somebody's first save.
  await drizzle(writer).run(writeNothing);
  if (place.path !== null) await writeThrough(writer);
}

/** Which file a path names at this moment, by the system's own number; null: none, or the store is a server. */
async function fileAt({ path }: StorePlace): Promise<string | null> {
  if (path === null) return null;
  const found = await stat(path, { bigint: true }).catch(() => null);
  return found === null ? null : `${found.dev}/${found.ino}`;
}

/**
 * Refuses to write into a file that is not at its place any more: it could still be written to, and what is written there is
 * lost with the next start, as nobody finds it.
 */
async function refuseMoved(place: StorePlace, opened: string | null): Promise<void> {
  if ((await fileAt(place)) === opened) return;
  const words =
    'was moved, deleted or replaced while it was in use. Stop the server, see to the file, and start again.';
  throw new StoreTrouble(`The store ${place.shown} ${words}`, { withoutPlace: `The store ${words}` });
}

/** Tells of a read that failed as of a write. */
function tellingReader(place: StorePlace, client: Client): Client {
  const told = (error: unknown): never => {
    throw storeTrouble(place.shown, error) ?? error;
  };
  return new Proxy(client, {
    get: (target, key) => {
      if (key === 'execute')
        return (...args: Parameters<Client['execute']>) => target.execute(...args).catch(told);
      const value: unknown = Reflect.get(target, key, target);
      return typeof value === 'function' ? value.bind(target) : value;
    },
  });
}

/**
 * A task that writes, tried again while another program holds the file. What was held up changed nothing, as each task
 * writes in one statement or one batch.
 */
async function triedAgain<T>(place: StorePlace, client: Client, task: () => Promise<T>): Promise<T> {
  const began = performance.now();
  for (;;) {
    try {
      return await task();
    } catch (error) {
      const trouble = storeTrouble(place.shown, error);
      if (trouble === null) throw error;
      // What keeps it from starting afresh will show at the next write; this one is told what it failed of itself.
      await startAfresh(place, client).catch(() => undefined);
      if (!isHeldUp(error) || performance.now() - began > OTHER_PROCESS_MS) throw trouble;
      await pause(1 + Math.random() * REST_MS);
    }
  }
}

const migrationsHere = (): number => readMigrationFiles({ migrationsFolder }).length;

async function refuseOutdated({ shown }: StorePlace, client: Client, known: number): Promise<void> {
  const { rows } = await client.execute('select count(*) from __drizzle_migrations');
  if (Number(rows[0]?.[0]) === known) return;
  const words = 'has tables of another version. Start the server anew.';
  throw new StoreTrouble(`The store ${shown} ${words}`, { withoutPlace: `The store ${words}` });
}

/** Tells whether a file was written to: by how many own writes began and ended, and by what SQLite counts of others'. */
class Watch {
  readonly #watcher: Client | null;
  #ownWrites = 0;
  #others = '';
  #lookedMs = Number.NEGATIVE_INFINITY;

  /** @param watcher a connection that nothing else uses: the count is each connection's own. Null: nobody can tell. */
  constructor(watcher: Client | null) {
    this.#watcher = watcher;
  }

  async during<T>(task: () => Promise<T>): Promise<T> {
    this.#ownWrites += 1;
    try {
      return await task();
    } finally {
      this.#ownWrites += 1;
    }
  }

  async state(): Promise<string | null> {
    if (this.#watcher === null) return null;
    if (performance.now() - this.#lookedMs > LOOK_MS) {
      const { rows } = await this.#watcher.execute('PRAGMA data_version');
      this.#others = String(rows[0]?.data_version);
      this.#lookedMs = performance.now();
    }
    return `${this.#ownWrites} ${this.#others}`;
  }
}

async function openAt(place: StorePlace, clients: Client[]): Promise<Database> {
  const open = (concurrency: number): Client => {
    const client = createClient({ url: place.url, concurrency, timeout: OTHER_PROCESS_MS });
    clients.push(client);
    return client;
  };
  if (place.path !== null) await mkdir(dirname(place.path), { recursive: true });
  const writer = open(1);
  await prepare(place, writer);
  const readers = tellingReader(place, open(READERS));
  const known = migrationsHere();
  const watch = new Watch(place.path === null ? null : open(1));
  const queue = new WriteQueue();
  const db = drizzle(writer);
  const opened = await fileAt(place);
  const write: Database['write'] = (task) =>
    queue.run(() =>
      watch.during(async () => {
        await refuseMoved(place, opened);
        return triedAgain(place, writer, () => task(db));
      }),
    );
  return {
    reader: drizzle(readers),
    write,
    probe: async () => {
      await refuseOutdated(place, readers, known);
      await write((now) => now.run(writeNothing));
    },
    state: () => watch.state(),
    close: async () => {
      await queue.idle();
      await intoOneFile(place, writer);
      for (const client of clients) client.close();
    },
  };
}

/**
 * Opens the store and brings its tables up to date.
 *
 * @param url `file:` with a path (folders are made), or the address of a libSQL server. Not a store in memory: reader
 * and writer are two connections, and each would have a store of its own; tests use a file in a folder of theirs.
 * @throws StoreTrouble in words when it cannot be used.
 */
export async function openDatabase(url: string): Promise<Database> {
  const place = storePlace(url);
  const clients: Client[] = [];
  try {
    return await openAt(place, clients);
  } catch (error) {
    for (const client of clients) client.close();
    const reason = error instanceof Error ? error.message : String(error);
    throw (
      storeTrouble(place.shown, error) ??
      new StoreTrouble(`The store ${place.shown} cannot be used (${reason}).`, { cause: error })
    );
  }
}
