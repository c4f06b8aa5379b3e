import { execFile } from 'node:child_process';
import {
  closeSync,
  copyFileSync,
  existsSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { createClient } from '@libsql/client';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { backUp } from '../../api/db/backup.ts';
import { openDatabase } from '../../api/db/open-database.ts';
import { restoreFrom } from '../../api/db/restore.ts';
import { projectRoot } from '../http/test-app.ts';
import { heading, openTestStore, startSaving, type TestStore } from './test-store.ts';

const at = new Date('2026-11-27T20:31:05.250Z');

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'backup-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

let made = 0;
const fresh = (name: string): string => {
  made += 1;
  return join(folder, `${made}-${name}`);
};

/** A store with jobs, a library and a photo in it; open, as a server has it. */
async function filledStore(): Promise<TestStore & { readonly path: string }> {
  const store = await openTestStore();
  const { jobs, library, assets } = store.stores;
  for (const id of ['a', 'b', 'c']) await jobs.create(heading(id), `first of ${id}`);
  await jobs.save(heading('a'), 'second of a, MARKED, é🔌', 1, 'by-hand');
  await library.save('prices', 0);
  await assets.keep(new Uint8Array(100_000).fill(7), 'image/png');
  return { ...store, path: new URL(store.url).pathname };
}

/**
 * A store that no program has open any more. The library lets go of a closed store's file only when its process ends, so that a
 * copy stands for one that was stopped.
 */
async function stopped(store: TestStore & { readonly path: string }): Promise<{ url: string; path: string }> {
  await store.database.close();
  const path = join(fresh('stopped'), 'store.db');
  mkdirSync(dirname(path));
  copyFileSync(store.path, path);
  return { path, url: pathToFileURL(path).href };
}

/** The texts of a store's file, read anew. */
async function textsIn(path: string): Promise<readonly unknown[]> {
  const client = createClient({ url: pathToFileURL(path).href });
  const { rows } = await client.execute('select text from job_revisions order by job_id, revision');
  client.close();
  return rows.map((row) => row.text);
}

const filled = ['first of a', 'second of a, MARKED, é🔌', 'first of b', 'first of c'];

/** Overwrites some bytes where a word stands. */
function spoil(path: string, word: string, by: string): void {
  const position = readFileSync(path).indexOf(word);
  expect(position).toBeGreaterThan(0);
  const file = openSync(path, 'r+');
  writeSync(file, by, position);
  closeSync(file);
}

describe('a backup', () => {
  it('of a store in use is one file, compared with the store, and goes back whole', async () => {
    const store = await filledStore();
    try {
      const out = fresh('one.db');
      const backup = await backUp(store.url, out, at);
      expect(backup).toMatchObject({ path: out, compared: true });
      expect(backup.digest.rows).toMatchObject({ jobs: 3, job_revisions: 4, libraries: 1, assets: 1 });
      expect(await textsIn(out)).toEqual(filled);
      await store.stores.jobs.save(heading('a'), 'third of a', 2, 'by-hand');
      const { path, url } = await stopped(store);
      const restored = await restoreFrom(url, out, at);
      expect(restored).toMatchObject({ madeAt: at.toISOString(), digest: backup.digest });
      expect(restored.keptAside).toBe(`${path}.before-2026-11-27T20-31-05Z`);
      expect(await textsIn(path)).toEqual(filled);
      expect(await textsIn(restored.keptAside ?? '')).toContain('third of a');
      const again = await openTestStore(url);
      expect((await again.stores.jobs.read('a'))?.text).toBe('second of a, MARKED, é🔌');
      await again.close();
    } finally {
      await store.close();
    }
  });

  it('into a folder is named by the moment; a file that is there is left alone', async () => {
    const store = await filledStore();
    try {
      const { path } = await backUp(store.url, folder, at);
      expect(basename(path)).toBe('ringwright-2026-11-27T20-31-05Z.db');
      const before = readFileSync(path);
      await expect(backUp(store.url, folder, at)).rejects.toThrow(/is there already/);
      expect(readFileSync(path).equals(before)).toBe(true);
    } finally {
      await store.close();
    }
  });

  it('made while a program saves on and on is sound, and holds every save up to one moment', async () => {
    const store = await openTestStore();
    const program = startSaving(store.url, 'saved');
    try {
      await expect.poll(() => program.told().length).toBeGreaterThan(5);
      const told = program.told().at(-1) ?? 0;
      const out = fresh('busy.db');
      const { digest } = await backUp(store.url, out, at);
      const kept = digest.rows.job_revisions ?? 0;
      expect(kept).toBeGreaterThanOrEqual(told);
      const texts = await textsIn(out);
      expect(texts.map((text) => JSON.parse(String(text)).revision)).toEqual(
        Array.from({ length: kept }, (_, i) => i + 1),
      );
    } finally {
      program.child.kill('SIGKILL');
      await program.ended;
      await store.close();
    }
  });

  it('that cannot be written leaves nothing behind, and says why', async () => {
    const store = await filledStore();
    try {
      writeFileSync(join(folder, 'a-file'), '');
      await expect(backUp(store.url, join(folder, 'a-file', 'x.db'), at)).rejects.toThrow();
      await expect(backUp(pathToFileURL(fresh('none.db')).href, fresh('x.db'), at)).rejects.toThrow(
        /no store at/,
      );
      await expect(backUp('libsql://there.example', fresh('x.db'), at)).rejects.toThrow(
        /on a server.*means of that server/,
      );
      expect(readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual([]);
    } finally {
      await store.close();
    }
  });
});

describe('a restore', () => {
  it('refuses a backup of which one letter has changed, though the file is sound, and touches nothing', async () => {
    const store = await filledStore();
    try {
      const out = fresh('changed.db');
      await backUp(store.url, out, at);
      spoil(out, 'MARKED', 'MARRED');
      const { path, url } = await stopped(store);
      const before = readFileSync(path);
      await expect(restoreFrom(url, out, at)).rejects.toThrow(/not what it was when it was made/);
      expect(readFileSync(path).equals(before)).toBe(true);
      expect(readdirSync(dirname(path))).toEqual([basename(path)]);
    } finally {
      await store.close();
    }
  });

  it.each([
    ['cut short', (path: string) => writeFileSync(path, readFileSync(path).subarray(0, 9000))],
    ['no database', (path: string) => writeFileSync(path, 'notes '.repeat(999))],
    ['empty', (path: string) => writeFileSync(path, '')],
  ])('refuses a backup that is %s', async (_, harm) => {
    const store = await filledStore();
    try {
      const out = fresh('harmed.db');
      await backUp(store.url, out, at);
      harm(out);
      const { path, url } = await stopped(store);
      await expect(restoreFrom(url, out, at)).rejects.toThrow(/damaged|not a database|another program/);
      expect(await textsIn(path)).toEqual(filled);
    } finally {
      await store.close();
    }
  });

  it('refuses while a server has the store open, also one that is idle', async () => {
    const store = await filledStore();
    try {
      const out = fresh('held.db');
      await backUp(store.url, out, at);
      await expect(restoreFrom(store.url, out, at)).rejects.toThrow(/has the store .* open: stop it first/);
      await store.stores.jobs.save(heading('a'), 'third of a', 2, 'by-hand');
      expect((await store.stores.jobs.read('a'))?.text).toBe('third of a');
    } finally {
      await store.close();
    }
  });

  it('refuses the backup of a newer version', async () => {
    const store = await filledStore();
    try {
      const newer = fresh('newer.db');
      const { path, url } = await stopped(store);
      copyFileSync(path, newer);
      const client = createClient({ url: pathToFileURL(newer).href });
      await client.execute(
        "insert into __drizzle_migrations (hash, created_at) values ('later', 9999999999999)",
      );
      client.close();
      await expect(restoreFrom(url, newer, at)).rejects.toThrow(/newer version/);
      expect(await textsIn(path)).toEqual(filled);
    } finally {
      await store.close();
    }
  });

  it('takes a plain copy, puts it where nothing is, and goes over a store that is damaged', async () => {
    const store = await filledStore();
    try {
      await store.database.close();
      const target = fresh('target.db');
      const url = pathToFileURL(target).href;
      expect(await restoreFrom(url, store.path, at)).toMatchObject({ keptAside: null, madeAt: null });
      expect(await textsIn(target)).toEqual(filled);
      writeFileSync(target, 'rubbish '.repeat(999));
      writeFileSync(`${target}-wal`, 'rubbish');
      const { keptAside } = await restoreFrom(url, store.path, at);
      expect(existsSync(`${target}-wal`)).toBe(false);
      expect(await textsIn(target)).toEqual(filled);
      expect(readFileSync(keptAside ?? '', 'utf8')).toContain('rubbish');
      await (await openDatabase(url)).close();
    } finally {
      await store.close();
    }
  });
});

describe('the commands', () => {
  const run = (script: string, args: readonly string[], url: string) =>
    new Promise<{ code: number; out: string; err: string }>((resolve) => {
      const env = { PATH: process.env.PATH, HOME: process.env.HOME, DATABASE_URL: url };
      execFile(
        process.execPath,
        ['--import', 'tsx', `scripts/${script}.ts`, ...args],
        { env, cwd: projectRoot },
        (error, out, err) => resolve({ code: typeof error?.code === 'number' ? error.code : 0, out, err }),
      );
    });

  it('make a backup and put it back, and say what they did', async () => {
    const store = await filledStore();
    try {
      const out = fresh('command.db');
      const backup = await run('backup', ['--out', out], store.url);
      expect([backup.code, backup.err]).toEqual([0, '']);
      expect(backup.out).toMatch(/3 jobs, 4 states of jobs.*\n.*equal to the store row by row/);
      const held = await run('restore', [out], store.url);
      expect([held.code, held.out]).toEqual([2, '']);
      expect(held.err).toMatch(/stop it first/);
      const { url } = await stopped(store);
      const restored = await run('restore', [out], url);
      expect([restored.code, restored.err]).toEqual([0, '']);
      expect(restored.out).toMatch(/Put back: 3 jobs.*\n.*kept in .*before-/);
      const unclear = await run('backup', [], store.url);
      expect([unclear.code, unclear.err]).toEqual([2, expect.stringContaining('--out')]);
    } finally {
      await store.close();
    }
  });
});
