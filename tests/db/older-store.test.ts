import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { createClient } from '@libsql/client';
import { drizzle } from 'drizzle-orm/libsql';
import { migrate } from 'drizzle-orm/libsql/migrator';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openDatabase } from '../../api/db/open-database.ts';
import type { Stores } from '../../api/db/stores.ts';
import { storesOf } from '../../api/db/stores-of.ts';
import { tagOf } from '../../api/db/tag-of.ts';
import { heading } from './test-store.ts';

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'older-'));
});
afterAll(async () => {
  await rm(folder, { recursive: true, force: true });
});

const urlOf = (name: string): string => pathToFileURL(join(folder, name)).href;

/** The migrations as the first version had them: one. */
async function firstMigrations(): Promise<string> {
  const first = join(folder, 'migrations');
  await cp(fileURLToPath(new URL('../../api/db/migrations', import.meta.url)), first, { recursive: true });
  const journalPath = join(first, 'meta', '_journal.json');
  const journal = JSON.parse(await readFile(journalPath, 'utf8'));
  await writeFile(journalPath, JSON.stringify({ ...journal, entries: journal.entries.slice(0, 1) }));
  return first;
}

/** A store as the first version left it: a job of two revisions, a removed one, and a library of two revisions. */
async function leaveFirstStore(url: string): Promise<void> {
  const client = createClient({ url });
  await migrate(drizzle(client), { migrationsFolder: await firstMigrations() });
  await client.executeMultiple(`
    insert into firms values ('own', 1);
    insert into jobs values ('own', 'on', 2, '2026-01-02', null, 'R', 'On', 'C', 1, 1);
    insert into jobs values ('own', 'off', 1, '2026-01-01', '2026-01-03', 'R', 'Off', 'C', 1, 1);
    insert into job_revisions values ('own', 'on', 1, 'first', '2026-01-01', 'by-hand', '2026-01-01', 0, 'quoted', 5);
    insert into job_revisions values ('own', 'on', 2, 'second', '2026-01-02', 'autosave', '2026-01-02', 0, null, 6);
    insert into job_revisions values ('own', 'off', 1, 'away', '2026-01-01', 'by-hand', '2026-01-01', 1, null, 4);
    insert into libraries values ('own', 1, 'old prices', '2026-01-01');
    insert into libraries values ('own', 2, 'new prices', '2026-01-02');
  `);
  client.close();
}

async function withStores(url: string, steps: (stores: Stores) => Promise<void>): Promise<void> {
  const database = await openDatabase(url);
  try {
    await steps(await storesOf(database, 'own', () => new Date(0)));
  } finally {
    await database.close();
  }
}

describe('a store that the first version left', () => {
  it('is read as it was, each version with a tag that stays', async () => {
    const url = urlOf('read.db');
    await leaveFirstStore(url);
    const seen: unknown[] = [];
    for (const _round of [1, 2])
      await withStores(url, async ({ jobs, library }) => {
        const head = await jobs.read('on');
        expect(head).toMatchObject({
          text: 'second',
          revision: 2,
          tag: expect.stringMatching(/^[0-9a-f]{16}$/),
        });
        expect((await jobs.readRevision('on', 2))?.tag).toBe(head?.tag);
        const first = await jobs.readRevision('on', 1);
        expect(first?.text).toBe('first');
        expect((await jobs.list()).map(({ id, tag }) => [id, tag])).toEqual([['on', head?.tag]]);
        const prices = await library.read();
        expect(prices?.text).toBe('new prices');
        const tags = [head?.tag, first?.tag, prices?.tag, (await library.readRevision(1))?.tag];
        expect(new Set(tags).size).toBe(4);
        seen.push(tags);
      });
    expect(seen[1]).toEqual(seen[0]);
  });

  it('takes saves on what was read from it, and no others', async () => {
    const url = urlOf('saved.db');
    await leaveFirstStore(url);
    await withStores(url, async ({ jobs, library }) => {
      const head = await jobs.read('on');
      if (head === null) throw new Error('the job is gone');
      for (const tag of ['', tagOf('second')])
        expect(await jobs.save(heading('on'), 'x', { revision: 2, tag }, 'by-hand')).toMatchObject({
          outcome: 'stale',
          revision: 2,
        });
      expect(await jobs.save(heading('on'), 'third', head, 'by-hand')).toMatchObject({
        outcome: 'saved',
        revision: 3,
        tag: tagOf('third'),
      });
      const prices = await library.read();
      if (prices === null) throw new Error('the library is gone');
      expect(await library.save('x', { revision: 2, tag: '' })).toMatchObject({ outcome: 'stale' });
      expect(await library.save('newest', prices)).toMatchObject({ outcome: 'saved', revision: 3 });
      expect(await jobs.restore('off')).toMatchObject({ outcome: 'saved', revision: 1 });
      expect(await jobs.read('off')).toMatchObject({ text: 'away', revision: 1 });
    });
  });
});

describe('a store that was put back from a copy', () => {
  it('refuses what was made from the texts that it has no more, and tells its own', async () => {
    const [url, copy] = [urlOf('now/store.db'), urlOf('copy/store.db')];
    await withStores(url, async ({ jobs }) => {
      await jobs.create(heading('job'), 'first');
    });
    // The file alone: once a store is stopped, it holds all.
    await cp(join(folder, 'now/store.db'), join(folder, 'copy/store.db'), { recursive: true });
    const save = (at: string, text: string) =>
      withStores(at, async ({ jobs }) => {
        const base = await jobs.read('job');
        if (base === null) throw new Error('the job is gone');
        expect(base.text).toBe('first');
        await jobs.save(heading('job'), text, base, 'by-hand');
      });
    await save(url, 'what a page holds');
    await save(copy, 'what the copy has');
    await withStores(copy, async ({ jobs }) => {
      const held = { revision: 2, tag: tagOf('what a page holds') };
      const refused = { outcome: 'stale', revision: 2, tag: tagOf('what the copy has') };
      expect(await jobs.save(heading('job'), 'made from that', held, 'autosave')).toMatchObject(refused);
      expect(await jobs.remove('job', held)).toMatchObject(refused);
      expect((await jobs.read('job'))?.text).toBe('what the copy has');
    });
  });
});
