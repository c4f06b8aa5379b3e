import { execFile } from 'node:child_process';
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { promisify } from 'node:util';
import ExcelJS from 'exceljs';
import { findProgram, spreadsheet } from '../../scripts/product/find-program.ts';

const run = promisify(execFile);

/**
 * LibreOffice keeps the results that a file carries, and would only show us our own figures; this setting
 * makes it calculate every formula afresh when it opens a file (0: always).
 */
const recalculateAlways = `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>
`;

/** A workbook as a spreadsheet sees it. */
export interface CalculatedBook {
  /** What a cell shows: its text, its number, or what its formula comes to; null when empty. */
  readonly value: (sheet: string, cell: string) => number | string | null;
  /** What a named cell shows. */
  readonly named: (name: string) => number | string | null;
}

/** The program that the set-up script found (or installed). */
function spreadsheetPath(): string {
  const path = findProgram(spreadsheet);
  if (path === null) throw new Error('LibreOffice Calc is missing: npm run -s pretest says how to get it.');
  return path;
}

/** Opens workbooks in a spreadsheet program that is not ours, has every formula calculated, reads them back. */
export async function recalculated(books: readonly Uint8Array[]): Promise<readonly CalculatedBook[]> {
  const folder = await mkdtemp(join(tmpdir(), 'spreadsheet-'));
  try {
    const program = spreadsheetPath();
    const profile = join(folder, 'profile');
    const out = join(folder, 'out');
    await mkdir(join(profile, 'user'), { recursive: true });
    await writeFile(join(profile, 'user', 'registrymodifications.xcu'), recalculateAlways);
    const names = books.map((_book, index) => `book-${index}.xlsx`);
    await Promise.all(books.map((book, index) => writeFile(join(folder, names[index] ?? ''), book)));
    await run(
      program,
      [
        `-env:UserInstallation=${pathToFileURL(profile).href}`,
        '--headless',
        '--convert-to',
        'xlsx:Calc MS Excel 2007 XML',
        '--outdir',
        out,
        ...names.map((name) => join(folder, name)),
      ],
      { timeout: 240_000 },
    );
    const calculated: CalculatedBook[] = [];
    for (const name of names) calculated.push(await readBook(await readFile(join(out, name))));
    return calculated;
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** Reads a workbook without calculating anything: what its cells hold or carry. */
export async function readBook(bytes: Uint8Array): Promise<CalculatedBook> {
  const book = await openBook(bytes);
  const value = (sheet: string, cell: string): number | string | null => {
    const worksheet = book.getWorksheet(sheet);
    if (worksheet === undefined) throw new Error(`The workbook has no sheet "${sheet}".`);
    return plainValue(worksheet.getCell(cell));
  };
  return {
    value,
    named: (name) => {
      const { sheet, cell } = placeOfName(book, name);
      return value(sheet, cell);
    },
  };
}

/** A workbook to look at or to change by hand. */
export async function openBook(bytes: Uint8Array): Promise<ExcelJS.Workbook> {
  const book = new ExcelJS.Workbook();
  const buffer = new ArrayBuffer(bytes.byteLength);
  new Uint8Array(buffer).set(bytes);
  await book.xlsx.load(buffer);
  return book;
}

/** Where a named cell is. */
export function placeOfName(book: ExcelJS.Workbook, name: string): { sheet: string; cell: string } {
  const range = book.definedNames.getRanges(name).ranges[0];
  const parts = /^'?(.+?)'?!\$?([A-Z]+)\$?(\d+)$/.exec(range ?? '');
  if (parts === null) throw new Error(`The workbook has no cell named "${name}".`);
  return { sheet: parts[1] ?? '', cell: `${parts[2]}${parts[3]}` };
}

function plainValue(cell: ExcelJS.Cell): number | string | null {
  const value = cell.type === ExcelJS.ValueType.Formula ? cell.result : cell.value;
  if (value === null || value === undefined) return null;
  if (typeof value === 'number' || typeof value === 'string') return value;
  throw new Error(`Cell ${cell.address} holds neither a number nor a text: ${JSON.stringify(value)}.`);
}
