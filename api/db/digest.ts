import { createHash, type Hash } from 'node:crypto';
import type { Client, Row, Value } from '@libsql/client';

/** What a store holds: how many rows each table has, and one word for all that stands in them. */
export interface StoreDigest {
  readonly rows: Readonly<Record<string, number>>;
  readonly sha256: string;
}

/** Where the digest of a backup stands, in the backup itself. */
export const SEAL = 'backup_seal';

const quoted = (name: string): string => `"${name.replaceAll('"', '""')}"`;

/** Every value with its kind and length, so that no two rows run into one another. */
function feed(hash: Hash, value: Value | undefined): void {
  const bytes = value instanceof ArrayBuffer ? Buffer.from(value) : Buffer.from(String(value));
  const kind = value instanceof ArrayBuffer ? 'blob' : value === null ? 'null' : typeof value;
  hash.update(`${kind} ${bytes.length} `);
  hash.update(bytes);
}

const cells = (row: Row): (Value | undefined)[] => Array.from({ length: row.length }, (_, i) => row[i]);

async function firstColumn(client: Client, sql: string): Promise<readonly string[]> {
  return (await client.execute(sql)).rows.map((row) => String(row[0]));
}

/** The columns that a table's rows are told apart by; all of them where it has no key. */
async function keyOf(client: Client, table: string): Promise<readonly string[]> {
  const columns = await firstColumn(client, `select name from pragma_table_info('${table}') order by cid`);
  const keys = await firstColumn(
    client,
    `select name from pragma_table_info('${table}') where pk > 0 order by pk`,
  );
  return keys.length === 0 ? columns : keys;
}

/** Feeds a table's rows in the order of its key, one at a time: photos alone may be more than memory holds. */
async function feedTable(client: Client, table: string, hash: Hash): Promise<number> {
  const key = await keyOf(client, table);
  const columns = key.map(quoted).join(', ');
  const { rows: keys } = await client.execute(`select ${columns} from ${quoted(table)} order by ${columns}`);
  const sql = `select * from ${quoted(table)} where ${key.map((name) => `${quoted(name)} is ?`).join(' and ')}`;
  for (const one of keys) {
    const args = cells(one).map((cell) => cell ?? null);
    const { rows } = await client.execute({ sql, args });
    for (const row of rows) for (const value of cells(row)) feed(hash, value);
  }
  return keys.length;
}

/** Reads all of a store and says what it holds; the seal of a backup is no part of it. */
export async function digestOf(client: Client): Promise<StoreDigest> {
  const tables = await firstColumn(
    client,
    `select name from sqlite_master where type = 'table' and name not like 'sqlite\\_%' escape '\\'
      and name <> '${SEAL}' order by name`,
  );
  const hash = createHash('sha256');
  const rows: Record<string, number> = {};
  for (const table of tables) {
    hash.update(`table ${table} `);
    rows[table] = await feedTable(client, table, hash);
  }
  return { rows, sha256: hash.digest('hex') };
}
