import { CsvError, parse } from 'csv-parse/sync';
import { withoutGuard } from '#engine/price/list/csv-text.ts';
import type { Sheet, SheetRow } from '#engine/price/list/sheet.ts';
import { cleanCell } from './clean-cell.ts';
import { holdCells, holdColumns, holdRows, sheetBounds } from './sheet-bounds.ts';
import { UnreadableSheet } from './sheet-fault.ts';

const separators = [',', ';', '\t', '|'] as const;
type Separator = (typeof separators)[number];

/** How many rows, of how many characters together, tell which separator a text has. */
const LOOKED_AT = 60;
const LOOKED_AT_LENGTH = 60_000;
/** The most characters of a row: a mark that is not closed would make one of all that follows. */
const LONGEST_ROW = 100_000;

const records = (text: string, delimiter: Separator, to: number): string[][] =>
  parse(text, {
    delimiter,
    to,
    relax_column_count: true,
    // An inch mark in the middle of a cell is no quotation mark.
    relax_quotes: true,
    max_record_size: LONGEST_ROW,
    skip_empty_lines: false,
  });

/** How well a separator fits: columns that most rows agree on, times the rows that do. */
function fitOf(text: string, separator: Separator): number {
  let rows: string[][];
  try {
    rows = records(text, separator, LOOKED_AT);
  } catch {
    return 0;
  }
  const counts = new Map<number, number>();
  for (const { length } of rows) if (length > 1) counts.set(length, (counts.get(length) ?? 0) + 1);
  return Math.max(0, ...[...counts].map(([columns, times]) => times * (1 + columns / 100)));
}

function separatorOf(whole: string): Separator {
  const text = whole.slice(0, LOOKED_AT_LENGTH);
  const [best] = separators
    .map((separator) => ({ separator, fits: fitOf(text, separator) }))
    .sort((a, b) => b.fits - a.fits);
  return best?.separator ?? ',';
}

function times(text: string, sign: string): number {
  let count = 0;
  for (let at = text.indexOf(sign); at >= 0; at = text.indexOf(sign, at + 1)) count++;
  return count;
}

function parsed(text: string): string[][] {
  const separator = separatorOf(text);
  holdCells(times(text, separator));
  try {
    return records(text, separator, sheetBounds.rows + 1);
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const isLong = error.code === 'CSV_MAX_RECORD_SIZE';
    throw new UnreadableSheet({
      path: placeOf(error),
      message: isLong
        ? `it is longer than ${LONGEST_ROW} characters: a quotation mark in it may not be closed`
        : 'a quotation mark opens there and is not closed, or closes in the middle of a cell',
      remedy: 'Put that row right in a spreadsheet, save it as CSV again, and choose that file',
    });
  }
}

/** The row in which what could not be read begins; the file where that is not told. */
function placeOf(error: CsvError): string {
  const { records: before } = error as CsvError & { readonly records?: number };
  return before === undefined ? 'file' : `row ${before + 1}`;
}

/** Reads separated values: comma, semicolon, tab or bar, whichever the text has; quotation marks as RFC 4180 has them. */
export function readCsv(text: string): Sheet {
  const all = parsed(text);
  holdRows(all.length);
  const rows: SheetRow[] = [];
  all.forEach((record, index) => {
    const number = index + 1;
    holdColumns(record.length, number);
    const cells = record.map((cell) => cleanCell(withoutGuard(cell)));
    if (cells.some((cell) => cell !== '')) rows.push({ number, cells });
  });
  return { name: '', rows };
}
