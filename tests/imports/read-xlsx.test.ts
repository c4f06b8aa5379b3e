import JSZip from 'jszip';
import { describe, expect, it } from 'vitest';
import type { SheetRow } from '#engine/price/list/sheet.ts';
import { readSheets } from '#imports/read-sheets.ts';
import { bookOf, bookWithSheet } from './hostile-books.ts';

async function rowsIn(bytes: Uint8Array): Promise<readonly SheetRow[]> {
  const read = await readSheets(bytes);
  if (!read.ok) throw new Error(read.fault.message);
  return read.sheets[0]?.rows ?? [];
}

async function faultOf(bytes: Uint8Array): Promise<string> {
  const read = await readSheets(bytes);
  return read.ok ? 'none' : `${read.fault.path}: ${read.fault.message}`;
}

describe('a workbook', () => {
  it('gives what its cells show: figures, words, days, percentages, results of formulas', async () => {
    const bytes = await bookOf(
      [
        ['Code', 'Price', 'Disc', 'Day', 'Sum', 'Rich', 'Link', 'Yes', 'Text'],
        [
          'A1',
          12.34,
          0.35,
          new Date('2026-11-02T00:00:00Z'),
          { formula: 'B2*2', result: 24.68, date1904: false },
          { richText: [{ text: 'Twin ' }, { text: 'socket' }] },
          { text: 'see', hyperlink: 'https://nowhere.invalid/' },
          true,
          '=1+1',
        ],
        [],
        ['B2', 0.1 + 0.2],
      ],
      (sheet) => {
        sheet.getCell('C2').numFmt = '0%';
      },
    );
    expect(await rowsIn(bytes)).toEqual([
      { number: 1, cells: ['Code', 'Price', 'Disc', 'Day', 'Sum', 'Rich', 'Link', 'Yes', 'Text'] },
      { number: 2, cells: ['A1', 12.34, 35, '2026-11-02', 24.68, 'Twin socket', 'see', 'yes', '=1+1'] },
      { number: 4, cells: ['B2', 0.3] },
    ]);
  });

  it('leaves hidden sheets out, and gives the others by name', async () => {
    const bytes = await bookOf([['Cover']], (_sheet, book) => {
      book.addWorksheet('Secret', { state: 'hidden' }).addRow(['x']);
      book.addWorksheet('Prices').addRow(['y']);
    });
    const read = await readSheets(bytes);
    expect(read.ok && read.sheets.map(({ name }) => name)).toEqual(['List', 'Prices']);
  });

  it('is not held up by ranges over the whole sheet', async () => {
    const whole = 'A1:XFD1048576';
    const bytes = await bookWithSheet(await bookOf([['Code', 'Price']]), (xml) =>
      xml.replace(
        '</sheetData>',
        `</sheetData><mergeCells count="1"><mergeCell ref="${whole}"/></mergeCells><dataValidations count="1"><dataValidation type="list" sqref="${whole}"><formula1>"a,b"</formula1></dataValidation></dataValidations>`,
      ),
    );
    const before = performance.now();
    expect(await rowsIn(bytes)).toEqual([{ number: 1, cells: ['Code', 'Price'] }]);
    expect(performance.now() - before).toBeLessThan(5000);
  });

  it('is refused where it unpacks to more than is read, whatever it says of its size', async () => {
    const archive = new JSZip();
    archive.file('xl/workbook.xml', new Uint8Array(60 * 1024 * 1024));
    const bytes = await archive.generateAsync({ type: 'uint8array', compression: 'DEFLATE' });
    expect(bytes.length).toBeLessThan(1024 * 1024);
    expect(await faultOf(bytes)).toBe('file: unpacked it is larger than 40 MB');
    // The size that its directory tells: a small one.
    const lying = new Uint8Array(bytes);
    const view = new DataView(lying.buffer);
    for (let at = 0; at + 4 < lying.length; at++)
      if (view.getUint32(at, true) === 0x02014b50) view.setUint32(at + 24, 10, true);
    expect(await faultOf(lying)).toMatch(/unpacked it is larger|cannot be read/);
  });

  it('names the row with too many columns, and counts rows', async () => {
    const wide = Array.from({ length: 201 }, () => 1);
    expect(await faultOf(await bookOf([['a'], wide]))).toBe('row 2: it has more than 200 columns');
    const many = Array.from({ length: 20_001 }, () => [1]);
    expect(await faultOf(await bookOf(many))).toBe('file: it has more than 20,000 rows');
  }, 60_000);

  it('is refused in words where it is damaged or of another kind', async () => {
    const bytes = await bookOf([['Code', 'Price']]);
    expect(await faultOf(bytes.slice(0, bytes.length >> 1))).toMatch(/cannot be read as one/);
    expect(await faultOf(new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 1, 2, 3]))).toMatch(/older kind \(XLS\)/);
    const archive = new JSZip();
    archive.file('letter.txt', 'Dear Sir');
    expect(await faultOf(await archive.generateAsync({ type: 'uint8array' }))).toMatch(/^file: /);
  });
});
