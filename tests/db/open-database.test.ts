import { chmod, mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { createClient } from '@libsql/client';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openDatabase } from '../../api/db/open-database.ts';
import { StoreTrouble } from '../../api/db/store-trouble.ts';
import { storesOf } from '../../api/db/stores-of.ts';
import { heading } from './test-store.ts';

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'open-'));
});
afterAll(async () => {
  await rm(folder, { recursive: true, force: true });
});

const urlOf = (name: string): string => pathToFileURL(join(folder, name)).href;

describe('openDatabase', () => {
  it('makes its folder, brings its tables up, and does so again without harm', async () => {
    const url = urlOf('a/b/store.db');
    for (const round of [1, 2, 3]) {
      const database = await openDatabase(url);
      const { jobs } = await storesOf(database, 'own', () => new Date(0));
      await jobs.create(heading(`job${round}`), 'x');
      expect(await jobs.list()).toHaveLength(round);
      await database.close();
    }
  });

  it('takes a path from the folder that it runs in', async () => {
    const database = await openDatabase(`file:${join(folder, 'plain.db')}`);
    await database.close();
    await expect(rm(join(folder, 'plain.db'))).resolves.toBeUndefined();
  });

  it('writes so that an acknowledged save outlives a power cut', async () => {
    const database = await openDatabase(urlOf('safe.db'));
    const pragmas = await database.write(async (writer) => [
      await writer.all('pragma journal_mode'),
      await writer.all('pragma synchronous'),
      await writer.all('pragma foreign_keys'),
    ]);
    expect(pragmas).toEqual([[{ journal_mode: 'wal' }], [{ synchronous: 2 }], [{ foreign_keys: 1 }]]);
    await database.close();
  });

  it('says in words that a file is none of ours', async () => {
    await writeFile(join(folder, 'notes.txt'), 'shopping list '.repeat(100));
    await expect(openDatabase(urlOf('notes.txt'))).rejects.toThrow(StoreTrouble);
    await expect(openDatabase(urlOf('notes.txt'))).rejects.toThrow(
      /notes\.txt.*not a database.*DATABASE_URL/s,
    );
  });

  it('says in words that a folder stands in its place', async () => {
    await mkdir(join(folder, 'dir.db'));
    await expect(openDatabase(urlOf('dir.db'))).rejects.toThrow(/dir\.db.*cannot be/s);
  });

  it('leaves a store of a newer version alone', async () => {
    const url = urlOf('newer.db');
    await (await openDatabase(url)).close();
    const client = createClient({ url });
    await client.execute(
      "insert into __drizzle_migrations (hash, created_at) values ('later', 9999999999999)",
    );
    client.close();
    await expect(openDatabase(url)).rejects.toThrow(/newer version/);
  });

  it.skipIf(process.getuid?.() === 0)('says in words that it may not write', async () => {
    await mkdir(join(folder, 'locked'));
    await chmod(join(folder, 'locked'), 0o500);
    await expect(openDatabase(urlOf('locked/store.db'))).rejects.toThrow(StoreTrouble);
  });
});
