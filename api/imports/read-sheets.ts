import type { Sheet } from '#engine/price/list/sheet.ts';
import { decodedText } from './decode-text.ts';
import { readCsv } from './read-csv.ts';
import { readXlsx } from './read-xlsx.ts';
import { sheetBounds } from './sheet-bounds.ts';
import { type SheetFault, UnreadableSheet } from './sheet-fault.ts';

/** What came of reading a file: its sheets whole, or why there are none. */
export type ReadSheets =
  | { readonly ok: true; readonly sheets: readonly Sheet[] }
  | { readonly ok: false; readonly fault: SheetFault };

/** Kinds of file that are known by their first bytes and not read. */
const otherKinds = [
  {
    start: [0xd0, 0xcf, 0x11, 0xe0],
    message: 'it is a workbook of the older kind (XLS), or one with a password',
  },
  { start: [0x25, 0x50, 0x44, 0x46], message: 'it is a PDF' },
] as const;

const startsWith = (bytes: Uint8Array, start: readonly number[]): boolean =>
  start.every((byte, index) => bytes[index] === byte);

const refused = (message: string, remedy: string): UnreadableSheet =>
  new UnreadableSheet({ path: 'file', message, remedy });

async function sheetsIn(bytes: Uint8Array): Promise<readonly Sheet[]> {
  if (bytes.length > sheetBounds.bytes)
    throw refused(`it is larger than ${sheetBounds.bytes / 1024 / 1024} MB`, 'Leave out what you do not buy');
  const other = otherKinds.find(({ start }) => startsWith(bytes, start));
  if (other !== undefined)
    throw refused(other.message, 'Save it as CSV or as XLSX without a password, and choose that file');
  const sheets = startsWith(bytes, [0x50, 0x4b, 0x03, 0x04])
    ? await readXlsx(bytes)
    : [readCsv(decodedText(bytes))];
  const full = sheets.filter(({ rows }) => rows.length > 0);
  if (full.length === 0) throw refused('there is nothing in it', 'Choose the file with the prices');
  return full;
}

/**
 * Reads the bytes of a file as sheets of rows: XLSX, or text with separators in any usual encoding. Nothing is taken for
 * a formula, nothing is calculated. Whatever the bytes are, this answers: it never throws on them.
 *
 * @returns the sheets that hold anything, empty rows left out; or the one fault for which nothing was read.
 */
export async function readSheets(bytes: Uint8Array): Promise<ReadSheets> {
  try {
    return { ok: true, sheets: await sheetsIn(bytes) };
  } catch (error) {
    if (error instanceof UnreadableSheet) return { ok: false, fault: error.fault };
    throw error;
  }
}
