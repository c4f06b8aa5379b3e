import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { createClient } from '@libsql/client';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openDatabase } from '../../api/db/open-database.ts';
import { frozenTexts } from '../../api/db/quotation-stores.ts';
import type { Stores } from '../../api/db/stores.ts';
import { storesOf } from '../../api/db/stores-of.ts';
import { everythingIn, leaveReleased, releasedSchemas } from './released-store.ts';

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'released-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const urlOf = (name: string): string => pathToFileURL(join(folder, name)).href;

/** Columns that may be empty in every row: what a newer schema added for what an older one never had. */
const emptyColumns = (rows: readonly string[], columns: readonly string[]): readonly string[] =>
  columns.filter((_, i) => rows.every((row) => JSON.parse(row)[i] === null));

/** Reads all that a firm has stored, by the ways that the server has. */
async function readAll({ jobs, library, quotations, assets }: Stores): Promise<number> {
  let texts = 0;
  const listed = [...(await jobs.list()), ...(await jobs.list({ removed: true }))];
  for (const { id, revision, tag } of listed) {
    expect(tag).not.toBe('');
    const kept = (await jobs.revisions(id)) ?? [];
    expect(kept[0]?.revision).toBe(revision);
    for (const one of kept) {
      const state = await jobs.readRevision(id, one.revision);
      expect(Buffer.byteLength(state?.text ?? '')).toBe(one.bytes);
      texts += 1;
    }
    for (const quotation of await quotations.list(id)) {
      expect(quotation.events[0]?.note.kind).toBe('issued');
      for (const which of frozenTexts)
        expect(await quotations.readText(id, quotation.id, which)).not.toBeNull();
      for (const { id: variation, photos } of quotation.variations) {
        expect(await quotations.readVariationJob(id, quotation.id, variation)).toContain('varied');
        for (const photo of photos) expect((await assets.read(photo))?.bytes).toBe(1);
      }
    }
  }
  expect((await library.read())?.text).toContain('prices');
  return texts;
}

const schemas = await releasedSchemas();

describe.each(schemas)('a store that a version of schema %s left', (schema) => {
  it('has something in every table and every column', async () => {
    const url = urlOf(`${schema}-full.db`);
    await leaveReleased(url, schema, folder);
    for (const { table, columns, rows } of await everythingIn(url)) {
      expect([table, rows.length > 0]).toEqual([table, true]);
      expect([table, emptyColumns(rows, columns)]).toEqual([table, []]);
    }
  });

  it('is brought forward with every row as it was, and can be read and saved', async () => {
    const url = urlOf(`${schema}.db`);
    await leaveReleased(url, schema, folder);
    const before = await everythingIn(url);
    const database = await openDatabase(url);
    try {
      expect(await everythingIn(url, before)).toEqual(before);
      const stores = await storesOf(database, 'own', () => new Date('2026-02-01T00:00:00Z'));
      expect(await readAll(stores)).toBe(schema === schemas[0] ? 3 : 4);
      const head = await stores.jobs.read('on');
      if (head === null) throw new Error('the job is gone');
      const heading = { id: 'on', reference: '', title: '', customer: '', wantedPoints: 0, schemes: 0 };
      expect(await stores.jobs.save(heading, 'third', head, 'by-hand')).toMatchObject({
        outcome: 'saved',
        revision: 3,
      });
      const client = createClient({ url });
      const { rows } = await client.execute('pragma integrity_check');
      expect([rows[0]?.[0], (await client.execute('pragma foreign_key_check')).rows]).toEqual(['ok', []]);
      client.close();
    } finally {
      await database.close();
    }
  });
});
