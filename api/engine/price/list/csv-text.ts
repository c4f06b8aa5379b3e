import { withoutTurns } from './without-turns.ts';

/**
 * A spreadsheet may take text for a formula at the start of a cell, and after what another country's spreadsheet takes for
 * the end of one (semicolon, tab, line end). The letters of full width count as the plain ones.
 */
const guards = {
  atStart: { bare: /^('*)(?=[=+\-@\t\r\n＝＋－＠])/, guarded: /^'('*)(?=[=+\-@\t\r\n＝＋－＠])/ },
  inside: {
    bare: /([;\t\r\n][" ]*)('*)(?=[=+\-@\t\r\n＝＋－＠])/g,
    guarded: /([;\t\r\n][" ]*)'('*)(?=[=+\-@\t\r\n＝＋－＠])/g,
  },
} as const;

/** A text that no spreadsheet takes for a formula, whichever separator it expects: an apostrophe stands before it. */
const withGuard = (text: string): string =>
  text.replace(guards.inside.bare, "$1'$2").replace(guards.atStart.bare, "'$1");

/** The text without the apostrophes that were put into it against being taken for a formula. */
export const withoutGuard = (text: string): string =>
  text.replace(guards.atStart.guarded, '$1').replace(guards.inside.guarded, '$1$2');

/** A cell: a number, in plain decimals, or a text. */
export type CsvCell = string | number;

/** Control characters but for tab and the ends of lines. */
const UNSEEN = /(?![\t\n\r])\p{Cc}/gu;

const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;

/** Texts are quoted whenever they hold anything but plain letters and digits. */
function cellOf(cell: CsvCell): string {
  if (typeof cell === 'number') return String(cell);
  const text = withGuard(withoutTurns(cell).replace(UNSEEN, ''));
  return /^[\p{L}\p{N} ./]*$/u.test(text) ? text : quoted(text);
}

/**
 * Rows as comma-separated text: UTF-8 with a byte-order mark, by which spreadsheets know it, and lines ended as RFC 4180
 * has them. Safe to open in any spreadsheet: text stays text.
 */
export function csvText(rows: readonly (readonly CsvCell[])[]): string {
  return `\ufeff${rows.map((row) => `${row.map(cellOf).join(',')}\r\n`).join('')}`;
}
