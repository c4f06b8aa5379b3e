import { withoutTurns } from '#engine/price/list/without-turns.ts';

/** The most characters that a spreadsheet's cell holds. Source: Microsoft, "Excel specifications and limits". */
const CELL_LIMIT = 32_767;

/** Characters that make some spreadsheets take a text for a formula when it is typed in again. */
const formulaStart = /^[=+\-@\t\r]/;

/** Everything below a space but tab and line feed, and delete: not allowed in the file's XML, or unseen. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is taken out
const control = /[\u0000-\u0008\u000b-\u001f\u007f\ufffe\uffff]/g;

/** `_x0041_` in the file means the letter A: the underscore is written in that way itself. */
const escapeLike = /_(?=x[0-9a-f]{4}_)/gi;

/**
 * A text as a cell can hold it: no control characters, no marks that turn it round, no lone surrogates, no more than the limit, and what
 * looks like an escape of the file format spelt out.
 */
export function cellText(text: string): string {
  const whole = withoutTurns(text)
    .replace(/\r\n?/g, '\n')
    .replace(control, '')
    .replace(/\p{Surrogate}/gu, '\ufffd');
  return clamp(whole).replace(escapeLike, '_x005F_');
}

/** Cuts at the limit without cutting a pair of surrogates in two. */
function clamp(text: string): string {
  return text.length <= CELL_LIMIT ? text : text.slice(0, CELL_LIMIT).replace(/[\ud800-\udbff]$/, '');
}

/** Whether a text begins as a formula would. */
export function looksLikeFormula(text: string): boolean {
  return formulaStart.test(text);
}
