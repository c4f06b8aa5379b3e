import { readFileSync } from 'node:fs';
import ExcelJS from 'exceljs';
import JSZip from 'jszip';
import { beforeAll, describe, expect, it } from 'vitest';
import { writeArchive } from '#archive/write-archive.ts';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { ENGINE_VERSION, MAKER } from '#engine/engine-version.ts';
import { packZip } from '#exports/pack/pack-zip.ts';
import { papersOf } from '#exports/papers.ts';
import { priceListBook } from '#exports/price-list-book.ts';
import { readingsJson } from '#exports/readings-json.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { readPdf } from './pdf-reader.ts';

const library = demoLibrary();
const job = demoJob('saltglass-row');
let zip: JSZip;

beforeAll(async () => {
  const papers = papersOf(job, library, { date: '2026-11-27', revision: 1, schemeId: null });
  if (papers === null) throw new Error('no papers');
  const request = { job, library, papers, found: null, moved: null, jobText: '{}', pictures: [] };
  zip = await JSZip.loadAsync(await packZip(request));
});

const bytesOf = async (name: string): Promise<Uint8Array> => {
  const file = zip.file(name);
  if (file === null) throw new Error(`no ${name}`);
  return file.async('uint8array');
};
const textOf = async (name: string): Promise<string> => Buffer.from(await bytesOf(name)).toString('utf8');

async function descriptionOf(bytes: Uint8Array): Promise<string> {
  const book = new ExcelJS.Workbook();
  await book.xlsx.load(Buffer.from(bytes) as unknown as ArrayBuffer);
  return book.description;
}

describe('the version of the program', () => {
  it('is the one of the package', () => {
    const { version } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8'));
    expect(ENGINE_VERSION).toBe(version);
  });

  it('is in every file of a pack that has a place for it', async () => {
    // CSV has no comment that every reader passes over, and a job file says by its format which versions read it.
    const without = new Set(['bill-of-materials.csv', 'labour.csv', 'shopping.csv', 'job.json']);
    const names = Object.keys(zip.files).filter((name) => !without.has(name));
    expect(names.length).toBeGreaterThan(12);
    for (const name of names) {
      if (name.endsWith('.pdf'))
        expect([name, (await readPdf(await bytesOf(name))).info.Creator]).toEqual([name, MAKER]);
      else if (name.endsWith('.xlsx'))
        expect([name, await descriptionOf(await bytesOf(name))]).toEqual([name, MAKER]);
      else if (name.endsWith('.json'))
        expect([name, JSON.parse(await textOf(name)).engine]).toEqual([name, ENGINE_VERSION]);
      else expect([name, (await textOf(name)).includes(MAKER)]).toEqual([name, true]);
    }
  });

  it('is in the archives themselves, the price list and the readings', async () => {
    const { comment } = zip as unknown as { comment: string };
    expect(comment).toBe(MAKER);
    const own = await JSZip.loadAsync(await writeArchive('{}', [], MAKER));
    expect(own).toMatchObject({ comment: MAKER });
    expect(await descriptionOf(await priceListBook(library.prices))).toBe(MAKER);
    expect(JSON.parse(readingsJson(job)).engine).toBe(ENGINE_VERSION);
  });
});
