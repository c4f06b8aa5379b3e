import { mkdir, readFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Client, createClient } from '@libsql/client';
import { drizzle, type LibSQLDatabase } from 'drizzle-orm/libsql';
import { migrate } from 'drizzle-orm/libsql/migrator';
import { StoreTrouble, storeTrouble } from './store-trouble.ts';
import { WriteQueue } from './write-queue.ts';

const migrationsFolder = fileURLToPath(new URL('./migrations', import.meta.url));

/** How long a statement waits for another process that holds the file, ms. */
const OTHER_PROCESS_MS = 5000;

/**
 * An open database: whatever writes goes through `write`, one at a time on a connection of its own; whatever only
 * reads uses `reader`. Two writers at once on one client fail on SQLite, so there is no other way to write.
 */
export interface Database {
  readonly reader: LibSQLDatabase;
  readonly write: <T>(task: (writer: LibSQLDatabase) => Promise<T>) => Promise<T>;
  /** Finishes what was asked for, then lets go of the file. */
  readonly close: () => Promise<void>;
}

const isFile = (url: string): boolean => url.startsWith('file:');

async function makeFolder(url: string): Promise<void> {
  const path = url.startsWith('file://') ? fileURLToPath(url) : url.slice('file:'.length);
  await mkdir(dirname(path), { recursive: true });
}

/** A database that a newer version of the product has moved on is left alone. */
async function refuseNewer(url: string, client: Client): Promise<void> {
  const known = JSON.parse(
    await readFile(new URL('./migrations/meta/_journal.json', import.meta.url), 'utf8'),
  ) as {
    entries: readonly unknown[];
  };
  const table = await client.execute("select 1 from sqlite_master where name = '__drizzle_migrations'");
  if (table.rows.length === 0) return;
  const { rows } = await client.execute('select count(*) as done from __drizzle_migrations');
  if (Number(rows[0]?.done) > known.entries.length)
    throw new StoreTrouble(
      `The store ${url} was written by a newer version: start that one, or name another store.`,
    );
}

async function prepare(url: string, writer: Client): Promise<void> {
  if (isFile(url)) {
    await writer.execute('PRAGMA journal_mode = WAL');
    // An acknowledged save is on the disk, also when the power goes.
    await writer.execute('PRAGMA synchronous = FULL');
  }
  await refuseNewer(url, writer);
  await migrate(drizzle(writer), { migrationsFolder });
}

/**
 * Opens the store and brings its tables up to date.
 *
 * @param url `file:` with a path (folders are made), or the address of a libSQL server.
 * @throws StoreTrouble in words when it cannot be used.
 */
export async function openDatabase(url: string): Promise<Database> {
  const clients: Client[] = [];
  const open = (concurrency: number): Client => {
    const client = createClient({ url, concurrency, timeout: OTHER_PROCESS_MS });
    clients.push(client);
    return client;
  };
  try {
    if (isFile(url)) await makeFolder(url);
    const writer = open(1);
    await prepare(url, writer);
    const reader = drizzle(open(4));
    const queue = new WriteQueue();
    const db = drizzle(writer);
    return {
      reader,
      write: (task) => queue.run(() => task(db)),
      close: async () => {
        await queue.idle();
        for (const client of clients) client.close();
      },
    };
  } catch (error) {
    for (const client of clients) client.close();
    throw error instanceof StoreTrouble ? error : storeTrouble(url, error);
  }
}
