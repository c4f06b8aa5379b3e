import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Database, openDatabase } from '../../api/db/open-database.ts';
import { OWN_FIRM, storesOf } from '../../api/db/stores-of.ts';
import { demoText, variantOf } from '../http/test-app.ts';

const heading = { id: 'a', reference: 'A', title: 'A', customer: '', wantedPoints: 0, schemes: 0 };
const text = (title: string): string => variantOf(demoText('quarrel-court'), { id: 'a', title });
const now = (): Date => new Date('2026-11-25T09:00:00Z');

describe('a store that another process writes to as well', () => {
  let folder = '';
  let own: Database;
  let other: Database;
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'ringwright-'));
    const url = pathToFileURL(join(folder, 'store.db')).href;
    own = await openDatabase(url);
    other = await openDatabase(url);
  });
  afterAll(async () => {
    await own.close();
    await other.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it('hands out what the other saved, moments after, and what it saved itself at once', async () => {
    const [{ jobs: ours }, { jobs: theirs }] = await Promise.all([
      storesOf(own, OWN_FIRM, now),
      storesOf(other, OWN_FIRM, now),
    ]);
    const made = await ours.create(heading, text('first'));
    expect((await ours.read('a'))?.text).toBe(text('first'));
    const base = await theirs.read('a');
    if (base === null || made.outcome !== 'created') throw new Error('The job was not kept.');
    await theirs.save(heading, text('second'), base, 'by-hand');
    await expect.poll(async () => (await ours.read('a'))?.text).toBe(text('second'));
    const second = await ours.read('a');
    if (second === null) throw new Error('The job has gone.');
    await ours.save(heading, text('third'), second, 'by-hand');
    expect((await ours.read('a'))?.text).toBe(text('third'));
    await ours.remove('a', { ...second, ...(await ours.read('a')) });
    expect(await ours.read('a')).toBeNull();
  });
});
