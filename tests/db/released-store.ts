import { cp, mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Client, createClient } from '@libsql/client';
import { drizzle } from 'drizzle-orm/libsql';
import { migrate } from 'drizzle-orm/libsql/migrator';

const migrations = fileURLToPath(new URL('../../api/db/migrations', import.meta.url));

interface Journal {
  readonly entries: readonly { readonly tag: string }[];
}

const readJournal = async (folder: string): Promise<Journal> =>
  JSON.parse(await readFile(join(folder, 'meta', '_journal.json'), 'utf8'));

/** The names of all schemas that were released, the first one first. */
export async function releasedSchemas(): Promise<readonly string[]> {
  return (await readJournal(migrations)).entries.map(({ tag }) => tag);
}

/** The migrations as they were when the n-th schema was the newest. */
async function migrationsOf(count: number, into: string): Promise<string> {
  const folder = join(into, `migrations-${count}`);
  await mkdir(folder, { recursive: true });
  await cp(migrations, folder, { recursive: true });
  const journal = await readJournal(folder);
  const text = JSON.stringify({ ...journal, entries: journal.entries.slice(0, count) });
  await writeFile(join(folder, 'meta', '_journal.json'), text);
  return folder;
}

/** What a version of some schema wrote, as statements. */
async function rowsOf(tag: string): Promise<string> {
  try {
    return await readFile(new URL(`./released/${tag}.sql`, import.meta.url), 'utf8');
  } catch {
    throw new Error(
      `tests/db/released/${tag}.sql is missing: write into it rows as a version with that schema stores them, every new column filled.`,
    );
  }
}

/**
 * Makes a store as a version of some schema left it: each schema before it in turn, with what was written while it was the
 * newest.
 */
export async function leaveReleased(url: string, schema: string, folder: string): Promise<void> {
  const schemas = await releasedSchemas();
  const client = createClient({ url, concurrency: 1 });
  try {
    for (const [i, tag] of schemas.slice(0, schemas.indexOf(schema) + 1).entries()) {
      await migrate(drizzle(client), { migrationsFolder: await migrationsOf(i + 1, folder) });
      await client.executeMultiple(await rowsOf(tag));
    }
  } finally {
    client.close();
  }
}

/** The rows of a table, by the columns that it had. */
export interface TableRows {
  readonly table: string;
  readonly columns: readonly string[];
  readonly rows: readonly string[];
}

async function names(client: Client, sql: string): Promise<string[]> {
  return (await client.execute(sql)).rows.map((row) => String(row[0]));
}

const textOf = (value: unknown): unknown =>
  value instanceof ArrayBuffer ? `bytes ${Buffer.from(value).toString('hex')}` : value;

/** All that stands in a table, as texts that can be compared. */
async function rowsIn(client: Client, table: string, columns: readonly string[]): Promise<TableRows> {
  const { rows } = await client.execute(`select ${columns.join(', ')} from ${table}`);
  const texts = rows.map((row) => JSON.stringify(columns.map((_, i) => textOf(row[i]))));
  return { table, columns, rows: texts.sort() };
}

/** All of a store, or those tables and columns of it that an older one had. */
export async function everythingIn(url: string, asIn?: readonly TableRows[]): Promise<readonly TableRows[]> {
  const client = createClient({ url });
  try {
    if (asIn !== undefined)
      return await Promise.all(asIn.map(({ table, columns }) => rowsIn(client, table, columns)));
    const tables = await names(
      client,
      "select name from sqlite_master where type = 'table' and name not like '\\_\\_%' escape '\\' and name not like 'sqlite%' order by name",
    );
    const all: TableRows[] = [];
    for (const table of tables) {
      const columns = await names(client, `select name from pragma_table_info('${table}') order by cid`);
      all.push(await rowsIn(client, table, columns));
    }
    return all;
  } finally {
    client.close();
  }
}
