import { execFile } from 'node:child_process';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { promisify } from 'node:util';
import ExcelJS from 'exceljs';
import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { findList } from '#engine/price/list/find-columns.ts';
import { importPlan } from '#engine/price/list/import-plan.ts';
import { ownReading, priceListCsv } from '#engine/price/list/own-list.ts';
import { priceListBook } from '#exports/price-list-book.ts';
import { readSheets } from '#imports/read-sheets.ts';
import type { Prices } from '#model/library.ts';
import { listOf, priceOfOne } from '#tests/engine/price/list/list-material.ts';
import { openBook } from '#tests/exports/spreadsheet.ts';
import { findProgram, spreadsheet } from '../../scripts/product/find-program.ts';

const run = promisify(execFile);

/**
 * Has LibreOffice Calc, a spreadsheet that is not ours, open files and save them as workbooks.
 *
 * @param separator the code of the sign that the spreadsheet takes for the end of a cell: 44 comma, 59 semicolon, 9 tab.
 */
async function savedBySpreadsheet(files: Readonly<Record<string, Uint8Array | string>>, separator = 44) {
  const program = findProgram(spreadsheet);
  if (program === null)
    throw new Error('LibreOffice Calc is missing: npm run -s pretest says how to get it.');
  const folder = await mkdtemp(join(tmpdir(), 'price-list-'));
  try {
    const paths = Object.keys(files).map((name) => join(folder, name));
    for (const [name, bytes] of Object.entries(files)) await writeFile(join(folder, name), bytes);
    const profile = `-env:UserInstallation=${pathToFileURL(join(folder, 'profile')).href}`;
    const isText = paths.every((path) => path.endsWith('.csv'));
    // Cells are read as they would be when a person opens the file: UTF-8 (76), figures and formulas looked for.
    const reading = isText
      ? [`--infilter=Text - txt - csv (StarCalc):${separator},34,76,1,,0,false,true,false,false,false`]
      : [];
    const out = join(folder, 'out');
    await run(
      program,
      [
        profile,
        '--headless',
        ...reading,
        '--convert-to',
        'xlsx:Calc MS Excel 2007 XML',
        '--outdir',
        out,
        ...paths,
      ],
      {
        timeout: 110_000,
      },
    );
    const saved: Uint8Array[] = [];
    for (const name of Object.keys(files))
      saved.push(new Uint8Array(await readFile(join(out, name.replace(/\.\w+$/, '.xlsx')))));
    return saved;
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

async function planOf(bytes: Uint8Array, into: Prices) {
  const read = await readSheets(bytes);
  if (!read.ok) throw new Error(read.fault.message);
  const found = findList(read.sheets, []);
  return importPlan(found?.rows ?? [], into, ownReading, { date: '2026-11-26', leftOut: new Set() });
}

const formulasIn = async (bytes: Uint8Array): Promise<readonly string[]> => {
  const found: string[] = [];
  (await openBook(bytes)).eachSheet((sheet) =>
    sheet.eachRow((row) =>
      row.eachCell((cell) => {
        if (cell.type === ExcelJS.ValueType.Formula || cell.type === ExcelJS.ValueType.Hyperlink)
          found.push(cell.address);
      }),
    ),
  );
  return found;
};

const nasty = [
  '=1+1',
  '+1+1',
  '-1+1',
  '@SUM(A1:A2)',
  '=HYPERLINK("https://nowhere.invalid/","tap")',
  '=cmd|x!A0',
  'a;=1+1;b',
  '"; =2+2',
  "'=3+3",
  '\t=4+4',
  'x\ty\n=5+5',
];

const { prices } = demoLibrary();
const nastyCsv = priceListCsv(
  listOf(
    nasty.map((text, at) =>
      priceOfOne('socket-twin', 100 + at, { counter: text, supplier: text, supplierWords: text, code: text }),
    ),
  ),
);

describe('a price list in a spreadsheet that is not ours', () => {
  it('comes back whole after it was opened and saved there, from CSV and from XLSX, and holds no formula', async () => {
    const [fromCsv, opened, bare] = await savedBySpreadsheet({
      'a.csv': priceListCsv(prices),
      'n.csv': nastyCsv,
      'bare.csv': '=1+1,2\n',
    });
    const [fromBook] = await savedBySpreadsheet({ 'b.xlsx': await priceListBook(prices) });
    for (const bytes of [fromCsv, fromBook]) {
      const plan = await planOf(bytes ?? new Uint8Array(), prices);
      expect([plan.faults, plan.changes, plan.unmatched]).toEqual([[], [], []]);
      expect(plan.same).toBe(prices.items.reduce((all, { packs }) => all + 1 + (packs?.length ?? 0), 0));
    }
    expect(await formulasIn(opened ?? new Uint8Array())).toEqual([]);
    // The check itself finds formulas where there are some.
    expect(await formulasIn(bare ?? new Uint8Array())).toEqual(['A1']);
  }, 240_000);

  it.each([
    ['semicolons', 59],
    ['tabs', 9],
  ])(
    'holds no formula where %s are taken for the ends of cells',
    async (_name, separator) => {
      const [opened] = await savedBySpreadsheet({ 'n.csv': nastyCsv }, separator);
      expect(await formulasIn(opened ?? new Uint8Array())).toEqual([]);
    },
    240_000,
  );
});
