import { existsSync } from 'node:fs';
import { mkdir, open, rename, rm, stat } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Client, createClient } from '@libsql/client';
import { digestOf, SEAL, type StoreDigest } from './digest.ts';
import { OTHER_PROCESS_MS } from './open-database.ts';
import { type StorePlace, storePlace } from './store-place.ts';
import { StoreTrouble, storeTrouble } from './store-trouble.ts';

/** How often a copy is made again where the store was written to meanwhile, so that copy and store can be compared. */
const TRIES = 3;

/** A backup that was made and checked. */
export interface MadeBackup {
  readonly path: string;
  readonly bytes: number;
  readonly digest: StoreDigest;
  /** True: it was compared with the store, row by row. False: the store was written to all the while; it is sound by itself. */
  readonly compared: boolean;
}

/** Works with a database file, and tells its trouble in words. */
export async function withFile<T>(path: string, task: (client: Client) => Promise<T>): Promise<T> {
  // One connection: what is set on it holds for all that follows.
  const client = createClient({ url: pathToFileURL(path).href, concurrency: 1, timeout: OTHER_PROCESS_MS });
  try {
    return await task(client);
  } catch (error) {
    throw storeTrouble(path, error) ?? error;
  } finally {
    client.close();
  }
}

/** The file of a store; one on a server is backed up by that server's own means. */
export function fileOf(url: string): StorePlace & { readonly path: string } {
  const place = storePlace(url);
  if (place.path === null)
    throw new StoreTrouble(
      `The store ${place.shown} is on a server: back it up, and put it back, by the means of that server.`,
    );
  return { ...place, path: place.path };
}

/** What SQLite itself finds wrong with a file. */
export async function refuseUnsound(path: string, client: Client): Promise<void> {
  const { rows } = await client.execute('pragma integrity_check(1)');
  const said = String(rows[0]?.[0]);
  const { rows: orphans } = await client.execute('pragma foreign_key_check');
  const fault =
    said !== 'ok' ? said : orphans.length > 0 ? `${orphans.length} rows without what they belong to` : null;
  if (fault !== null) throw new StoreTrouble(`${path} is damaged (${fault}).`);
}

/** On the disk, also when the power goes. */
async function settle(path: string): Promise<void> {
  const file = await open(path, 'r+');
  try {
    await file.sync();
  } finally {
    await file.close();
  }
}

interface Copied {
  readonly digest: StoreDigest;
  readonly compared: boolean;
}

async function copyOnce(source: Client, to: string): Promise<Copied> {
  const before = await digestOf(source);
  await source.execute({ sql: 'vacuum into ?', args: [to] });
  const digest = await withFile(to, async (copy) => {
    await refuseUnsound(to, copy);
    return digestOf(copy);
  });
  if (digest.sha256 === before.sha256) return { digest, compared: true };
  const after = await digestOf(source);
  if (after.sha256 === before.sha256)
    throw new StoreTrouble(`The copy ${to} differs from the store. See to the disk.`);
  return { digest, compared: after.sha256 === digest.sha256 };
}

async function copyOf(source: Client, to: string): Promise<Copied> {
  for (let tries = 1; ; tries += 1) {
    await rm(to, { force: true });
    const copied = await copyOnce(source, to);
    if (copied.compared || tries === TRIES) return copied;
  }
}

/** Writes into the copy what it holds, so that a restore can tell whether it still does. */
async function seal(path: string, { sha256 }: StoreDigest, madeAt: string): Promise<void> {
  await withFile(path, (copy) =>
    copy.batch(
      [
        `drop table if exists ${SEAL}`,
        `create table ${SEAL} (made_at text not null, sha256 text not null)`,
        { sql: `insert into ${SEAL} values (?, ?)`, args: [madeAt, sha256] },
      ],
      'write',
    ),
  );
}

/** A moment as a part of a file's name: `2026-11-27T20-31-05Z`. */
export const stamp = (at: Date): string => at.toISOString().replace(/\.\d+/, '').replaceAll(':', '-');

async function targetOf(out: string, at: Date): Promise<string> {
  const found = await stat(out).catch(() => null);
  const path = found?.isDirectory() ? join(out, `ringwright-${stamp(at)}.db`) : out;
  if (existsSync(path)) throw new StoreTrouble(`${path} is there already: name another file, or a folder.`);
  await mkdir(dirname(path), { recursive: true });
  return path;
}

/**
 * Makes one file of a store, while a server works on it or not; reads it back, checks it and compares it. Under its name it is
 * there whole, or not at all.
 *
 * @param out a file that is not there yet, or a folder: then it is named by the moment.
 * @throws StoreTrouble in words, with nothing left behind.
 */
export async function backUp(url: string, out: string, at: Date): Promise<MadeBackup> {
  const { path: source } = fileOf(url);
  if (!existsSync(source))
    throw new StoreTrouble(`There is no store at ${source}: start the server once, or set DATABASE_URL.`);
  const path = await targetOf(out, at);
  const part = `${path}.part`;
  try {
    const copied = await withFile(source, (client) => copyOf(client, part));
    await seal(part, copied.digest, at.toISOString());
    await settle(part);
    await rename(part, path);
    return { path, bytes: (await stat(path)).size, ...copied };
  } catch (error) {
    await rm(part, { force: true });
    throw storeTrouble(part, error) ?? error;
  }
}
