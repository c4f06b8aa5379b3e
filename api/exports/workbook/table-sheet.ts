import type { Worksheet } from 'exceljs';
import { cellText } from './cell-text.ts';
import { type CellContent, writeCell } from './cell-value.ts';
import type { CellRole, FormatName } from './sheet-style.ts';
import type { WorkbookContext } from './workbook-context.ts';

/** A column of a table sheet. */
export interface Column {
  readonly header: string;
  /** In characters of the standard font. */
  readonly width: number;
  readonly role: CellRole;
  readonly format?: FormatName;
}

/** The row of the header; data follows from the next one. */
export const HEADER_ROW = 3;
/** The first row of data of a table sheet. */
export const FIRST_ROW = HEADER_ROW + 1;

/** Text in a page's foot: an ampersand starts a code there, and the whole foot holds 255 characters. */
function footText(text: string, length: number): string {
  return cellText(text).replace(/\n/g, ' ').slice(0, length).replaceAll('&', '&&');
}

function footOf({ estimate, state, demoNote }: WorkbookContext): string {
  const left = `${footText(estimate.reference, 40)}  ${estimate.date}  state ${state}`;
  const demo = demoNote === null ? '' : 'Demonstration: see Summary. ';
  return `&L${left}&C${demo}${footText(estimate.edition, 80)}&RPage &P of &N`;
}

/** An empty sheet set up for printing on A4, lying, as wide as the page. */
export function addSheet(context: WorkbookContext, name: string, repeatRows: string | null): Worksheet {
  const sheet = context.book.addWorksheet(name, {
    pageSetup: {
      paperSize: 9,
      orientation: 'landscape',
      fitToPage: true,
      fitToWidth: 1,
      fitToHeight: 0,
      margins: { left: 0.4, right: 0.4, top: 0.5, bottom: 0.6, header: 0.2, footer: 0.3 },
    },
    headerFooter: { oddFooter: footOf(context) },
  });
  if (repeatRows !== null) sheet.pageSetup.printTitlesRow = repeatRows;
  return sheet;
}

/** A sheet with a title, a note and a header that stays in sight and on every page. */
export function addTableSheet(
  context: WorkbookContext,
  name: string,
  note: string,
  columns: readonly Column[],
): Worksheet {
  const sheet = addSheet(context, name, `1:${HEADER_ROW}`);
  sheet.views = [{ state: 'frozen', xSplit: 0, ySplit: HEADER_ROW, showGridLines: false }];
  writeCell(sheet.getCell(1, 1), `${name}: ${context.estimate.title}, ${context.scheme.name}`, 'title');
  writeCell(sheet.getCell(2, 1), note, 'note');
  columns.forEach(({ header, width, role }, index) => {
    sheet.getColumn(index + 1).width = width;
    const isNumber = role === 'number' || role === 'input';
    writeCell(sheet.getCell(HEADER_ROW, index + 1), header, isNumber ? 'number-header' : 'header');
  });
  const texts = columns.map(({ header, width }) => ({ text: header, widthChars: width }));
  fitHeight(sheet, HEADER_ROW, texts);
  return sheet;
}

/** Height of a line of text on these sheets, in points. */
const LINE_PT = 13.5;

/** How many lines a text takes in a column; set by hand, because not every viewer finds row heights itself. */
function linesOf(text: CellContent, widthChars: number): number {
  if (typeof text !== 'string') return 1;
  return text
    .split('\n')
    .reduce((lines, line) => lines + Math.max(1, Math.ceil(line.length / (widthChars - 2))), 0);
}

/** Makes a row as high as its fullest text; a cell's text never stands over the next row. */
export function fitHeight(
  sheet: Worksheet,
  row: number,
  texts: readonly { readonly text: CellContent; readonly widthChars: number }[],
): void {
  const lines = Math.max(1, ...texts.map(({ text, widthChars }) => linesOf(text, widthChars)));
  // 409 points is the most that the file format allows.
  sheet.getRow(row).height = Math.min(409, LINE_PT * lines + 2);
}

/** Writes one row of data below the header. */
export function writeRow(
  sheet: Worksheet,
  row: number,
  columns: readonly Column[],
  contents: readonly CellContent[],
): void {
  columns.forEach(({ role, format }, index) => {
    writeCell(sheet.getCell(row, index + 1), contents[index] ?? null, role, format);
  });
  const texts = columns.map(({ width }, index) => ({ text: contents[index] ?? null, widthChars: width }));
  fitHeight(sheet, row, texts);
}

/** A column's title: over text, or over numbers. */
export type TableTitle = string | { readonly overNumbers: string };

/** A small table under the main one: its heading, its header, then rows in the same columns. */
export function writeHeading(
  sheet: Worksheet,
  row: number,
  heading: string,
  headers: readonly TableTitle[],
): void {
  writeCell(sheet.getCell(row, 1), heading, 'heading');
  headers.forEach((title, index) => {
    const isText = typeof title === 'string';
    const words = isText ? title : title.overNumbers;
    writeCell(sheet.getCell(row + 1, index + 1), words, isText ? 'header' : 'number-header');
  });
  const texts = headers.map((title, index) => ({
    text: typeof title === 'string' ? title : title.overNumbers,
    widthChars: sheet.getColumn(index + 1).width ?? 10,
  }));
  fitHeight(sheet, row + 1, texts);
}
