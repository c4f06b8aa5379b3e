/**
 * Where a spreadsheet may take text for a formula: at the start of a cell, and after what another country's spreadsheet
 * takes for the end of one (semicolon, tab, line end). The letters of full width count as the plain ones.
 */
const guardable = /(^|[;\t\r\n][" ]*)('*)(?=[=+\-@\t\r＝＋－＠])/g;
const guarded = /(^|[;\t\r\n][" ]*)'('*)(?=[=+\-@\t\r＝＋－＠])/g;

/** A text that no spreadsheet takes for a formula, whichever separator it expects: an apostrophe stands before it. */
const withGuard = (text: string): string => text.replace(guardable, "$1'$2");

/** The text without the apostrophe that was put before it against being taken for a formula. */
export const withoutGuard = (text: string): string => text.replace(guarded, '$1$2');

/** A cell: a number, in plain decimals, or a text. */
export type CsvCell = string | number;

const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;

/** Texts are quoted whenever they hold anything but plain letters and digits. */
function cellOf(cell: CsvCell): string {
  if (typeof cell === 'number') return String(cell);
  const text = withGuard(cell);
  return /^[\p{L}\p{N} ./]*$/u.test(text) ? text : quoted(text);
}

/**
 * Rows as comma-separated text: UTF-8 with a byte-order mark, by which spreadsheets know it, and lines ended as RFC 4180
 * has them. Safe to open in any spreadsheet: text stays text.
 */
export function csvText(rows: readonly (readonly CsvCell[])[]): string {
  return `\ufeff${rows.map((row) => `${row.map(cellOf).join(',')}\r\n`).join('')}`;
}
