import { execFileSync } from 'node:child_process';
import {
  closeSync,
  copyFileSync,
  mkdtempSync,
  openSync,
  readFileSync,
  renameSync,
  rmSync,
  writeSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { createClient } from '@libsql/client';
import { sql } from 'drizzle-orm';
import { afterEach, describe, expect, it } from 'vitest';
import { type Database, openDatabase } from '../../api/db/open-database.ts';
import { storesOf } from '../../api/db/stores-of.ts';
import { tinyPng } from './photos.ts';
import { demoText, etagFor, saltglass, saltglassId, testApp } from './test-app.ts';

const undone: (() => unknown)[] = [];
afterEach(async () => {
  for (const undo of undone.splice(0).reverse()) await undo();
});

const newFolder = (): string => {
  const folder = mkdtempSync(join(tmpdir(), 'faults-'));
  undone.push(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
};

const other = demoText('fernlow-close');
const otherId: string = JSON.parse(other).id;

/** A server's app on a store in a file of its own, with two jobs in it. */
async function appOn(folder: string, now = () => new Date('2026-11-25T09:00:00Z')) {
  const url = `file:${join(folder, 'jobs.db')}`;
  const database = await openDatabase(url);
  undone.push(() => database.close().catch(() => undefined));
  const { probe } = database;
  const made = await testApp({ stores: await storesOf(database, 'own', now), now, probe });
  for (const text of [saltglass, other]) await made.send('POST', '/api/jobs', text);
  const save = (padding: string, etag = etagFor(1, saltglass)) =>
    made.send('PUT', `/api/jobs/${saltglassId}`, `${saltglass}${padding}`, { 'if-match': etag });
  return { ...made, url, database, save, file: join(folder, 'jobs.db') };
}

type FaultyApp = Awaited<ReturnType<typeof appOn>>;

/** An answer that tells a trouble of the store: which, in which words, when to ask again. */
async function troubleOf(answer: Response) {
  const { code, detail } = await answer.json();
  return [answer.status, code, detail, answer.headers.get('retry-after')];
}

const trouble = (words: RegExp, retryAfter: string | null = null) => [
  503,
  'store-trouble',
  expect.stringMatching(words),
  retryAfter,
];

/** Whatever does not need what is at fault still answers. */
async function expectTheRestWorks({ get, send }: FaultyApp): Promise<void> {
  for (const path of ['/api/health', '/api/jobs', `/api/jobs/${otherId}`, '/api/library', '/api/catalogue'])
    expect([path, (await get(path)).status]).toEqual([path, 200]);
  expect((await send('POST', '/api/estimate', other)).status).toBe(200);
}

/** So that a full disk shows at once: more than any free page holds. */
const LARGE = ' '.repeat(2_000_000);

describe('a disk without room', () => {
  it('refuses the save with the remedy, keeps what is there, and takes it once there is room', async () => {
    const made = await appOn(newFolder());
    await made.database.write((writer) => writer.run(sql`pragma max_page_count = 1`));
    // The pragma cannot go below what the file has: the next page that is wanted is one too many.
    expect(await troubleOf(await made.save(LARGE))).toEqual(
      trouble(/^Nothing was changed\..*disk is full.*Make room/),
    );
    expect(await (await made.get(`/api/jobs/${saltglassId}`)).text()).toBe(saltglass);
    await expectTheRestWorks(made);
    expect((await made.save(LARGE)).status).toBe(200);
  });

  const canMount = (() => {
    const folder = mkdtempSync(join(tmpdir(), 'mount-'));
    try {
      execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=64k', 'tmpfs', folder], { stdio: 'ignore' });
      execFileSync('umount', [folder]);
      return true;
    } catch {
      return false;
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  })();

  it.skipIf(!canMount)(
    'of four megabytes, really full: saves and photos are refused, all else works',
    async () => {
      const folder = newFolder();
      execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=4m', 'tmpfs', folder]);
      undone.push(() => execFileSync('umount', ['-l', folder]));
      const made = await appOn(folder);
      let [last, answer] = [saltglass, new Response()];
      for (let revision = 1; revision < 30; revision += 1) {
        const padding = ' '.repeat(500_000 + revision);
        answer = await made.save(padding, etagFor(revision, last));
        if (answer.status !== 200) break;
        last = `${saltglass}${padding}`;
      }
      expect(await troubleOf(answer)).toEqual(trouble(/disk is full.*Make room/));
      const photo = await made.app.request('/api/assets', {
        method: 'POST',
        headers: { 'content-type': 'application/octet-stream' },
        body: Buffer.concat([tinyPng, Buffer.alloc(3_000_000, 7)]),
      });
      expect(await troubleOf(photo)).toEqual(trouble(/disk is full/));
      expect(await (await made.get(`/api/jobs/${saltglassId}`)).text()).toBe(last);
      await expectTheRestWorks(made);
      execFileSync('mount', ['-o', 'remount,size=16m', folder]);
      const { etag } = Object.fromEntries((await made.get(`/api/jobs/${saltglassId}`)).headers);
      expect((await made.save('', etag)).status).toBe(200);
    },
  );
});

describe('a store that another program holds', () => {
  it('keeps one save waiting and nobody else, then says when to try again', async () => {
    const made = await appOn(newFolder());
    const holder = createClient({ url: made.url });
    undone.push(() => holder.close());
    const transaction = await holder.transaction('write');
    await transaction.execute("update jobs set title = 'held'");
    const saving = made.save(' ');
    await pause(50);
    const began = performance.now();
    await expectTheRestWorks(made);
    // Some seconds less than the save waits; a local statement that waits holds the whole process up.
    expect(performance.now() - began).toBeLessThan(3000);
    expect(await troubleOf(await saving)).toEqual(trouble(/in use by another program/, '2'));
    expect(await troubleOf(await made.get('/api/ready'))).toEqual(trouble(/in use by another program/, '2'));
    await transaction.rollback();
    expect((await made.save(' ')).status).toBe(200);
  });

  it('for less than a while: the save goes in', async () => {
    const made = await appOn(newFolder());
    const holder = createClient({ url: made.url });
    undone.push(() => holder.close());
    const transaction = await holder.transaction('write');
    await transaction.execute("update jobs set title = 'held'");
    const saving = made.save(' ');
    await pause(500);
    await transaction.rollback();
    expect((await saving).status).toBe(200);
  });
});

describe('a store that is moved away under the server', () => {
  it('takes no save that nobody would find, until it is back', async () => {
    const folder = newFolder();
    const made = await appOn(folder);
    const away = join(folder, 'elsewhere.db');
    renameSync(made.file, away);
    expect(await troubleOf(await made.save(' '))).toEqual(trouble(/moved, deleted or replaced.*start again/));
    expect((await made.get('/api/health')).status).toBe(200);
    expect((await made.get('/api/problems')).status).toBe(200);
    copyFileSync(away, made.file);
    expect(await troubleOf(await made.save(' '))).toEqual(trouble(/moved, deleted or replaced/));
    expect(await troubleOf(await made.get('/api/ready'))).toEqual(trouble(/moved, deleted or replaced/));
    renameSync(away, made.file);
    expect((await made.save(' ')).status).toBe(200);
    expect((await made.get('/api/ready')).status).toBe(200);
  });
});

describe('a store that a newer version has brought up to date meanwhile', () => {
  it('is not ready', async () => {
    const made = await appOn(newFolder());
    expect((await made.get('/api/ready')).status).toBe(200);
    await made.database.write((writer) =>
      writer.run(sql`insert into __drizzle_migrations (hash, created_at) values ('later', 9999999999999)`),
    );
    expect(await troubleOf(await made.get('/api/ready'))).toEqual(trouble(/tables of another version/));
  });
});

describe('a row that is damaged', () => {
  it.each(['{"format": "ringwr', '\u0000\u0001', '', '[[[['])(
    'the job’s text is no JSON: %j',
    async (text) => {
      const made = await appOn(newFolder());
      await made.database.write((writer) =>
        writer.run(sql`update job_revisions set text = ${text} where job_id = ${saltglassId}`),
      );
      for (const path of ['estimate', 'exports/bill-of-materials.csv', 'exports/job.zip']) {
        const answer = await made.get(`/api/jobs/${saltglassId}/${path}`);
        expect([path, ...(await troubleOf(answer))]).toEqual([
          path,
          500,
          'stored-damaged',
          expect.stringContaining('restore a backup'),
          null,
        ]);
      }
      expect((await made.get(`/api/jobs/${saltglassId}/revisions`)).status).toBe(200);
      await expectTheRestWorks(made);
    },
  );

  it('the library is no JSON: jobs are read, estimates say so', async () => {
    const made = await appOn(newFolder());
    const library = await made.get('/api/library');
    const etag = library.headers.get('etag') ?? '';
    await made.send('PUT', '/api/library', await library.text(), { 'if-match': etag });
    await made.database.write((writer) => writer.run(sql`update libraries set text = 'x'`));
    const answer = await made.get(`/api/jobs/${saltglassId}/exports/labour.csv`);
    expect((await troubleOf(answer)).slice(0, 2)).toEqual([500, 'stored-damaged']);
    expect((await made.get(`/api/jobs/${saltglassId}`)).status).toBe(200);
  });
});

describe('a page of the file that is damaged', () => {
  it('is told for what lies on it, and for nothing else', async () => {
    const folder = newFolder();
    const made = await appOn(folder);
    const marked = 'mark'.repeat(10_000);
    await made.save(JSON.stringify({ marked }).replace(/./g, ' ') + ' '.repeat(40_000));
    await made.database.write((writer) =>
      writer.run(
        sql`update job_revisions set text = text || ${marked} where job_id = ${saltglassId} and revision = 2`,
      ),
    );
    await made.database.close();
    breakChain(made.file, 'markmark');
    const again = await againOn(made.url);
    expect(await troubleOf(await again.get(`/api/jobs/${saltglassId}`))).toEqual(
      trouble(/is damaged\. Put a backup in its place/),
    );
    await expectTheRestWorks({ ...made, ...again });
  });
});

/** Overwrites where a page of a long text says which page comes next. Source: the SQLite file format, "Cell Payload Overflow Pages". */
function breakChain(path: string, within: string): void {
  const bytes = readFileSync(path);
  const pageBytes = bytes.readUInt16BE(16);
  const inside = bytes.indexOf(within) + 2 * pageBytes;
  const file = openSync(path, 'r+');
  writeSync(file, Buffer.from([0x7f, 0xff, 0xff, 0xff]), 0, 4, Math.floor(inside / pageBytes) * pageBytes);
  closeSync(file);
}

async function againOn(url: string): Promise<Awaited<ReturnType<typeof testApp>> & { database: Database }> {
  const database = await openDatabase(url);
  undone.push(() => database.close().catch(() => undefined));
  return { ...(await testApp({ stores: await storesOf(database, 'own', () => new Date()) })), database };
}

describe('a clock that is set back', () => {
  it('by a year between saves: revisions go on, the newest is read, nothing is let go of', async () => {
    let at = Date.UTC(2026, 10, 25, 9);
    const made = await appOn(newFolder(), () => new Date(at));
    const photo = await made.app.request('/api/assets', {
      method: 'POST',
      headers: { 'content-type': 'application/octet-stream' },
      body: tinyPng,
    });
    expect(photo.status).toBe(201);
    const path = `/api/jobs/${saltglassId}`;
    let [last, revision] = [saltglass, 1];
    for (const backMs of [0, 365 * 86_400_000, 60_000, -86_400_000]) {
      at -= backMs;
      for (const how of ['autosave', 'by-hand']) {
        const text = `${saltglass}${' '.repeat(revision)}`;
        const saved = await made.send('PUT', `${path}?how=${how}`, text, {
          'if-match': etagFor(revision, last),
        });
        expect([saved.status, (await saved.json()).revision]).toEqual([200, revision + 1]);
        [last, revision] = [text, revision + 1];
      }
    }
    expect(await (await made.get(path)).text()).toBe(last);
    const { revisions } = await (await made.get(`${path}/revisions`)).json();
    expect(revisions.map((one: { revision: number }) => one.revision)).toEqual([9, 8, 7, 6, 5, 4, 3, 2, 1]);
    expect(await (await made.send('POST', '/api/photo-sweeps')).json()).toMatchObject({ removed: 0 });
    expect((await made.get('/api/jobs')).status).toBe(200);
  });
});
