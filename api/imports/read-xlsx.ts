import ExcelJS from 'exceljs';
import type { Sheet, SheetCell, SheetRow } from '#engine/price/list/sheet.ts';
import { cleanCell } from './clean-cell.ts';
import { holdInflated } from './hold-inflated.ts';
import { holdColumns, holdRows } from './sheet-bounds.ts';
import { UnreadableSheet } from './sheet-fault.ts';

/**
 * What of a sheet is not read: nothing but its cells is wanted, and some of these are spread over every cell of a range,
 * which may be the whole sheet.
 */
const ignoreNodes = [
  'autoFilter',
  'cols',
  'conditionalFormatting',
  'dataValidations',
  'drawing',
  'extLst',
  'headerFooter',
  'hyperlinks',
  'mergeCells',
  'pageMargins',
  'pageSetup',
  'picture',
  'printOptions',
  'rowBreaks',
  'sheetProtection',
  'sheetViews',
  'tableParts',
];

/** Digits that a spreadsheet shows of a number; beyond them stands what binary fractions leave. */
const DIGITS = 15;

const tidy = (value: number): number => Number(value.toPrecision(DIGITS));

const isGroup = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null;

function numberCell(value: number, format: string): SheetCell {
  if (!Number.isFinite(value)) return '';
  return tidy(format.includes('%') ? value * 100 : value);
}

/** What a cell shows, as far as a price list goes: a formula its result, rich text its words, a date as ISO has it. */
function shownOf(value: unknown, format: string): SheetCell {
  if (typeof value === 'number') return numberCell(value, format);
  if (typeof value === 'string') return cleanCell(value);
  if (value instanceof Date) return Number.isNaN(value.getTime()) ? '' : value.toISOString().slice(0, 10);
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (!isGroup(value)) return '';
  if ('error' in value) return cleanCell(String(value.error));
  if (Array.isArray(value.richText))
    return cleanCell(value.richText.map((run: unknown) => (isGroup(run) ? String(run.text) : '')).join(''));
  if ('text' in value) return shownOf(value.text, format);
  return 'result' in value ? shownOf(value.result, format) : '';
}

function rowsOf(worksheet: ExcelJS.Worksheet, before: number): SheetRow[] {
  const rows: SheetRow[] = [];
  worksheet.eachRow({ includeEmpty: false }, (row, number) => {
    const cells: SheetCell[] = [];
    row.eachCell({ includeEmpty: false }, (cell, at) => {
      const value = shownOf(cell.value, cell.numFmt ?? '');
      if (value === '') return;
      holdColumns(at, number);
      while (cells.length < at - 1) cells.push('');
      cells.push(value);
    });
    if (cells.length === 0) return;
    rows.push({ number, cells });
    holdRows(before + rows.length);
  });
  return rows;
}

async function opened(bytes: Uint8Array): Promise<ExcelJS.Workbook> {
  const book = new ExcelJS.Workbook();
  try {
    await holdInflated(bytes);
    const buffer = new ArrayBuffer(bytes.byteLength);
    new Uint8Array(buffer).set(bytes);
    await book.xlsx.load(buffer, { ignoreNodes });
    return book;
  } catch (error) {
    if (error instanceof UnreadableSheet) throw error;
    throw new UnreadableSheet({
      path: 'file',
      message:
        'it begins as a workbook does, and cannot be read as one: it is damaged, or it is another kind of file',
      remedy: 'Open it in a spreadsheet, save it as XLSX or as CSV, and choose that file',
    });
  }
}

/** Reads a workbook: the cells of every sheet that is not hidden. */
export async function readXlsx(bytes: Uint8Array): Promise<readonly Sheet[]> {
  const book = await opened(bytes);
  const sheets: Sheet[] = [];
  let rows = 0;
  for (const worksheet of book.worksheets.filter(({ state }) => state === 'visible' || state === undefined)) {
    const sheet = { name: cleanCell(worksheet.name), rows: rowsOf(worksheet, rows) };
    rows += sheet.rows.length;
    sheets.push(sheet);
  }
  return sheets;
}
