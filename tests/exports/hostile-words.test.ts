import { parse } from 'csv-parse/sync';
import ExcelJS from 'exceljs';
import JSZip from 'jszip';
import { beforeAll, describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { packZip } from '#exports/pack/pack-zip.ts';
import { papersOf } from '#exports/papers.ts';
import type { Job } from '#model/job.ts';
import { readJob } from '#model/read-job.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { readPdf } from './pdf-reader.ts';

/** What may do harm where it is taken for more than words, each with a mark that it is found by. */
const hostile = [
  '=HYPERLINK("http://evil.example","EVIL")',
  '+EVIL|cmd',
  '-EVIL+1',
  '@EVIL(1)',
  '\t=EVIL',
  'EVIL\u202egnp.exe',
  'EVIL\u0007\u001b[2J',
  'EVIL<script>alert(1)</script>',
  '<image href="/etc/passwd" xlink:href="http://evil.example/x.png"/>EVIL',
  '"><use href="http://evil.example#x"/>EVIL',
  'EVIL]]><!--',
  '%%u EVIL ^J',
] as const;

const wordy = new Set([
  'title',
  'reference',
  'customer',
  'name',
  'label',
  'note',
  'notes',
  'words',
  'contact',
  'reason',
]);

/** A job with hostile words wherever a person may have typed some. */
function spoken(value: unknown, next: () => string): unknown {
  if (Array.isArray(value)) return value.map((one) => spoken(one, next));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, inner]) => {
      if (typeof inner === 'string' && wordy.has(key)) return [key, next()];
      if (key === 'address' && Array.isArray(inner)) return [key, inner.map(next)];
      return [key, spoken(inner, next)];
    }),
  );
}

function hostileJob(): Job {
  let at = 0;
  const next = (): string => {
    at += 1;
    return hostile[at % hostile.length] ?? '';
  };
  const read = readJob(spoken(demoJob('saltglass-row'), next));
  if (!read.ok) throw new Error(JSON.stringify(read.faults.slice(0, 5)));
  expect(at).toBeGreaterThan(30);
  return read.job;
}

let zip: JSZip;
beforeAll(async () => {
  const job = hostileJob();
  const demo = demoLibrary();
  const library = {
    ...demo,
    firm: { ...demo.firm, name: hostile[0], contact: hostile[8], address: [hostile[5], hostile[7]] },
  };
  const papers = papersOf(job, library, { date: '2026-11-27', revision: 1, schemeId: null });
  if (papers === null) throw new Error('no papers');
  const request = { job, library, papers, found: null, moved: null, jobText: '{}', pictures: [] };
  zip = await JSZip.loadAsync(await packZip(request));
});

const namesOf = (ending: string): readonly string[] => {
  const names = Object.keys(zip.files).filter((name) => name.endsWith(ending));
  expect(names.length).toBeGreaterThan(0);
  return names;
};
const bytesOf = async (name: string): Promise<Uint8Array> =>
  (await zip.file(name)?.async('uint8array')) ?? new Uint8Array();
const textOf = async (name: string): Promise<string> => Buffer.from(await bytesOf(name)).toString('utf8');

/** Control characters but for tab and the ends of lines, and marks that turn the line round. Source: Unicode, UAX 9. */
const UNSEEN = /(?![\t\n\r])[\p{Cc}\u202a-\u202e\u2066-\u2069]/u;

describe('hostile words in a job and a firm', () => {
  it('are words in every CSV: no cell begins as a formula does', async () => {
    for (const name of namesOf('.csv')) {
      const text = await textOf(name);
      const rows: string[][] = parse(text, { bom: true, relax_column_count: true });
      const formulas = rows
        .flat()
        .filter((cell) => /^[=+\-@\t\r]/.test(cell) && !/^[+-]?\d+(?:\.\d+)?$/.test(cell));
      expect([name, formulas]).toEqual([name, []]);
      expect([name, UNSEEN.exec(text)]).toEqual([name, null]);
    }
  });

  it('are words in the workbook: no formula and no link holds any', async () => {
    for (const name of namesOf('.xlsx')) {
      const book = new ExcelJS.Workbook();
      await book.xlsx.load(Buffer.from(await bytesOf(name)) as unknown as ArrayBuffer);
      let words = 0;
      for (const sheet of book.worksheets)
        sheet.eachRow((row) =>
          row.eachCell((cell) => {
            if (String(cell.value).includes('EVIL')) words += 1;
            expect(cell.formula ?? '').not.toMatch(/EVIL|HYPERLINK|cmd/);
            expect(cell.hyperlink).toBeUndefined();
            if (typeof cell.value === 'string') expect(UNSEEN.exec(cell.value)).toBeNull();
          }),
        );
      expect(words).toBeGreaterThan(5);
    }
  });

  it('are words in every drawing: no element, no reference, nothing that runs', async () => {
    for (const name of namesOf('.svg')) {
      const svg = await textOf(name);
      expect(svg).toContain('EVIL');
      // Whatever is in a tag, texts left out.
      const tags = [...svg.matchAll(/<[^>]*>/g)].map(([tag]) => tag).join('\n');
      expect(tags).not.toMatch(
        /<(?:script|image|use|foreignObject|a|iframe)\b|href|\son\w+=|evil|EVIL(?!")/i,
      );
      expect([name, UNSEEN.exec(svg)]).toEqual([name, null]);
    }
  });

  it('are words in every PDF: no link, no picture, no action, no file', async () => {
    for (const name of namesOf('.pdf')) {
      const bytes = await bytesOf(name);
      const raw = Buffer.from(bytes).toString('latin1');
      expect([name, /\/(?:URI|JavaScript|JS|Launch|EmbeddedFile|GoToR|SubmitForm)\b/.exec(raw)]).toEqual([
        name,
        null,
      ]);
      const { images, pages } = await readPdf(bytes);
      expect([name, images]).toEqual([name, 0]);
      expect([name, UNSEEN.exec(pages.join('').replaceAll('\f', ''))]).toEqual([name, null]);
    }
  });

  it('are words in drawings for drafting programs and in plain text', async () => {
    for (const name of [...namesOf('.dxf'), ...namesOf('.txt')]) {
      const text = await textOf(name);
      expect([name, UNSEEN.exec(text)]).toEqual([name, null]);
      if (name.endsWith('.dxf')) expect(text).toMatch(/^[ -~\r\n]*$/);
    }
  });

  it('are escaped in every JSON, which reads back as it was', async () => {
    for (const name of namesOf('.json')) {
      const text = await textOf(name);
      JSON.parse(text);
      expect([name, /(?!\n)\p{Cc}/u.exec(text)]).toEqual([name, null]);
    }
  });
});
