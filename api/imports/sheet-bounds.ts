import { UnreadableSheet } from './sheet-fault.ts';

/** The most that is read of a file: some ten times a merchant's full list. */
export const sheetBounds = {
  bytes: 5 * 1024 * 1024,
  /** Of a workbook, unpacked: files of XML are packed some ten times, and a small one may be made to unpack to gigabytes. */
  inflatedBytes: 40 * 1024 * 1024,
  rows: 20_000,
  columns: 200,
  /** Of all rows together: files of separators alone keep a server busy for seconds. */
  cells: 1_000_000,
} as const;

const grouped = (value: number): string => String(value).replace(/\B(?=(?:\d{3})+$)/g, ',');

/** Refuses a file of more rows than are read. */
export function holdRows(count: number): void {
  if (count <= sheetBounds.rows) return;
  throw new UnreadableSheet({
    path: 'file',
    message: `it has more than ${grouped(sheetBounds.rows)} rows`,
    remedy: 'Leave out what you do not buy, or split it, and take in each part',
  });
}

/** Refuses a row of more columns than are read. */
export function holdColumns(count: number, row: number): void {
  if (count <= sheetBounds.columns) return;
  throw new UnreadableSheet({
    path: `row ${row}`,
    message: `it has more than ${sheetBounds.columns} columns`,
    remedy:
      'Leave out columns that are not of the price list; in a text file, look for a quotation mark that is not closed',
  });
}

/** Refuses a text of more cells than are read. */
export function holdCells(count: number): void {
  if (count <= sheetBounds.cells) return;
  throw new UnreadableSheet({
    path: 'file',
    message: `it has more than ${grouped(sheetBounds.cells)} cells`,
    remedy: 'Leave out columns and rows that are not of the price list',
  });
}
