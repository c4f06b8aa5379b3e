import ExcelJS from 'exceljs';
import { describe, expect, it } from 'vitest';
import { readBook, recalculated } from './spreadsheet.ts';

/** A file whose formula carries a result that is wrong. */
async function bookWithWrongResult(): Promise<Uint8Array> {
  const book = new ExcelJS.Workbook();
  const sheet = book.addWorksheet('Sums');
  sheet.getCell('A1').value = 2;
  sheet.getCell('B1').value = { formula: 'A1*3', result: 999, date1904: false };
  book.definedNames.add('Sums!$B$1', 'Product');
  return new Uint8Array(await book.xlsx.writeBuffer());
}

describe('the spreadsheet that the tests calculate with', () => {
  it('calculates a formula afresh although the file carries a wrong result', async () => {
    const bytes = await bookWithWrongResult();
    const [calculated] = await recalculated([bytes]);
    expect((await readBook(bytes)).value('Sums', 'B1')).toBe(999);
    expect(calculated?.value('Sums', 'B1')).toBe(6);
    expect(calculated?.named('Product')).toBe(6);
  }, 120_000);
});
