import ExcelJS from 'exceljs';
import { MAKER } from '#engine/engine-version.ts';
import { ownTable } from '#engine/price/list/own-list.ts';
import type { Prices } from '#model/library.ts';
import { cellText } from './workbook/cell-text.ts';

/** Widths of the columns that hold words, in characters, by their headings; of the others one serves. */
const widths = new Map([
  ['Item id', 26],
  ['Item', 46],
  ['Counter', 22],
  ['Merchant', 22],
  ['Merchant’s words', 46],
]);
const USUAL_WIDTH = 12;

/** What stands as a figure on the sheet although the table has it as a text. */
const PRICE = /^\d+\.\d\d$/;

/**
 * A firm's price list as a workbook of one sheet, which can be taken in again: texts stay texts, and no cell holds a
 * formula.
 */
export async function priceListBook(list: Prices): Promise<Uint8Array> {
  const book = new ExcelJS.Workbook();
  const written = new Date(`${list.date}T00:00:00Z`);
  book.created = written;
  book.modified = written;
  book.description = MAKER;
  const sheet = book.addWorksheet('Price list', { views: [{ state: 'frozen', xSplit: 0, ySplit: 1 }] });
  const [headings = [], ...rows] = ownTable(list);
  const priceAt = headings.indexOf('Price £');
  sheet.addRow([...headings]).font = { bold: true };
  for (const row of rows)
    sheet.addRow(
      row.map((cell, at) => {
        if (typeof cell === 'number') return cell;
        return at === priceAt && PRICE.test(cell) ? Number(cell) : cellText(cell);
      }),
    );
  headings.forEach((heading, at) => {
    sheet.getColumn(at + 1).width = widths.get(String(heading)) ?? USUAL_WIDTH;
  });
  if (priceAt >= 0) sheet.getColumn(priceAt + 1).numFmt = '0.00';
  return new Uint8Array(await book.xlsx.writeBuffer());
}
