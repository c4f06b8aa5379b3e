import { existsSync } from 'node:fs';
import { copyFile, link, mkdir, rename, rm, stat } from 'node:fs/promises';
import { dirname } from 'node:path';
import { pathToFileURL } from 'node:url';
import { fileOf, refuseUnsound, stamp, withFile } from './backup.ts';
import { digestOf, SEAL, type StoreDigest } from './digest.ts';
import { openDatabase } from './open-database.ts';
import { StoreTrouble, storeTrouble } from './store-trouble.ts';

/** What a restore came to. */
export interface Restored {
  /** Where the store that was there before is kept; null: there was none. */
  readonly keptAside: string | null;
  readonly digest: StoreDigest;
  /** When the backup was made, ISO 8601 in UTC; null: a plain copy without a seal, sound by itself. */
  readonly madeAt: string | null;
}

const besides = ['-wal', '-shm', '-journal'] as const;

/** What a backup holds, once it is known to hold what it did when it was made. */
async function checked(path: string, named: string): Promise<Pick<Restored, 'digest' | 'madeAt'>> {
  return withFile(path, async (client) => {
    await refuseUnsound(named, client);
    const digest = await digestOf(client);
    if (digest.rows.__drizzle_migrations === undefined)
      throw new StoreTrouble(`${named} is a database of another program.`);
    const { rows } = await client.execute(`select 1 from sqlite_master where name = '${SEAL}'`);
    if (rows.length === 0) return { digest, madeAt: null };
    const { rows: seals } = await client.execute(`select made_at, sha256 from ${SEAL}`);
    if (seals[0]?.sha256 !== digest.sha256)
      throw new StoreTrouble(`${named} is not what it was when it was made. Take another backup.`);
    await client.execute(`drop table ${SEAL}`);
    return { digest, madeAt: String(seals[0].made_at) };
  });
}

/**
 * Makes sure that no server has the store open, and brings all of it into its one file. SQLite leaves the mode in which servers
 * write only where nobody else is connected.
 */
async function refuseHeld(path: string): Promise<void> {
  const held = new StoreTrouble(`A server has the store ${path} open: stop it first, then restore.`);
  try {
    const mode = await withFile(path, (client) => client.execute('pragma journal_mode = delete'));
    if (mode.rows[0]?.[0] !== 'delete') throw held;
  } catch (error) {
    const trouble = storeTrouble(path, error);
    if (trouble?.kind === 'busy') throw held;
    // What is damaged beyond opening is what is put back over: it is kept aside as it is.
    if (trouble === null || !/is damaged|not a database/.test(trouble.message)) throw error;
  }
}

/** Keeps what is at a place under another name as well, until the new one takes its place in one step. */
async function keepAside(path: string, aside: string): Promise<void> {
  await link(path, aside).catch(() => copyFile(path, aside));
  for (const end of besides) if (existsSync(path + end)) await rename(path + end, aside + end);
}

/**
 * Puts a backup in the place of a store: on a copy it is checked and brought to this version's tables first, and what was
 * there is kept aside.
 *
 * @throws StoreTrouble in words, with the store as it was: for a backup that is damaged, of another program or of a newer
 * version, and while a server has the store open.
 */
export async function restoreFrom(url: string, backupPath: string, at: Date): Promise<Restored> {
  const { path } = fileOf(url);
  if (!existsSync(backupPath)) throw new StoreTrouble(`There is no backup at ${backupPath}.`);
  await mkdir(dirname(path), { recursive: true });
  const copy = `${path}.restoring`;
  try {
    await copyFile(backupPath, copy);
    // A plain copy of a store that was not stopped has its last saves beside it.
    if (existsSync(`${backupPath}-wal`)) await copyFile(`${backupPath}-wal`, `${copy}-wal`);
    const found = await checked(copy, backupPath);
    await (await openDatabase(pathToFileURL(copy).href)).close();
    const left = await stat(`${copy}-wal`).catch(() => null);
    if (left !== null && left.size > 0)
      throw new StoreTrouble(`${copy} is open in another program. Try again once that has ended.`);
    const wasThere = existsSync(path);
    const keptAside = wasThere ? `${path}.before-${stamp(at)}` : null;
    if (wasThere) await refuseHeld(path);
    if (keptAside !== null) await keepAside(path, keptAside);
    await rename(copy, path);
    return { keptAside, ...found };
  } catch (error) {
    throw storeTrouble(backupPath, error) ?? error;
  } finally {
    for (const end of ['', ...besides]) await rm(copy + end, { force: true });
  }
}
