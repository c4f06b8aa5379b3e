import ExcelJS from 'exceljs';
import JSZip from 'jszip';

/** A workbook of one sheet with these rows. */
export async function bookOf(
  rows: readonly (readonly ExcelJS.CellValue[])[],
  change: (sheet: ExcelJS.Worksheet, book: ExcelJS.Workbook) => void = () => {},
): Promise<Uint8Array> {
  const book = new ExcelJS.Workbook();
  const sheet = book.addWorksheet('List');
  for (const row of rows) sheet.addRow([...row]);
  change(sheet, book);
  return new Uint8Array(await book.xlsx.writeBuffer());
}

/** A workbook with the XML of its first sheet changed by hand. */
export async function bookWithSheet(bytes: Uint8Array, change: (xml: string) => string): Promise<Uint8Array> {
  const archive = await JSZip.loadAsync(bytes);
  const name = 'xl/worksheets/sheet1.xml';
  const xml = (await archive.file(name)?.async('string')) ?? '';
  archive.file(name, change(xml));
  return archive.generateAsync({ type: 'uint8array', compression: 'DEFLATE' });
}
