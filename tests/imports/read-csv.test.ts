import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readSheets } from '#imports/read-sheets.ts';
import { sheetBounds } from '#imports/sheet-bounds.ts';

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
const utf16 = (text: string, isBig: boolean): Uint8Array => {
  const bytes = new Uint8Array(text.length * 2);
  const view = new DataView(bytes.buffer);
  [...text].forEach((_, at) => {
    view.setUint16(at * 2, text.charCodeAt(at), !isBig);
  });
  return bytes;
};
const latin1 = (text: string): Uint8Array => Uint8Array.from(text, (letter) => letter.charCodeAt(0));

async function cellsIn(bytes: Uint8Array): Promise<unknown> {
  const read = await readSheets(bytes);
  return read.ok
    ? read.sheets[0]?.rows.map(({ cells }) => cells)
    : `${read.fault.path}: ${read.fault.message}`;
}

const plain = 'Code,Price\r\nA1,£1.20\r\n';
const expected = [
  ['Code', 'Price'],
  ['A1', '£1.20'],
];

describe('a text with separators', () => {
  it.each<[string, Uint8Array]>([
    ['UTF-8', utf8(plain)],
    ['UTF-8 with its mark', utf8(`\ufeff${plain}`)],
    ['UTF-16, little end first, with its mark', utf16(`\ufeff${plain}`, false)],
    ['UTF-16, big end first, with its mark', utf16(`\ufeff${plain}`, true)],
    ['UTF-16 without a mark', utf16(plain, false)],
    ['Latin 1', latin1(plain)],
    ['semicolons', utf8(plain.replaceAll(',', ';'))],
    ['tabs', utf8(plain.replaceAll(',', '\t'))],
    ['bars', utf8(plain.replaceAll(',', '|'))],
    ['line feeds alone', utf8(plain.replaceAll('\r\n', '\n'))],
    ['carriage returns alone', utf8(plain.replaceAll('\r\n', '\r'))],
    ['no line end at its end', utf8(plain.trimEnd())],
    ['quotation marks', utf8('"Code","Price"\n"A1","£1.20"\n')],
  ])('is read in %s', async (_name, bytes) => {
    expect(await cellsIn(bytes)).toEqual(expected);
  });

  it('has its separator told by most rows, not by the first', async () => {
    expect(await cellsIn(utf8('Prices, of November\nCode;Price;Per\nA;1,20;each\nB;2,30;each\n'))).toEqual([
      ['Prices, of November'],
      ['Code', 'Price', 'Per'],
      ['A', '1,20', 'each'],
      ['B', '2,30', 'each'],
    ]);
  });

  it('keeps separators, marks and line ends inside quotation marks, and inch marks outside them', async () => {
    expect(await cellsIn(utf8('a,b,c\n"x, y","say ""so""","two\nlines"\n2" pipe,1,2\n'))).toEqual([
      ['a', 'b', 'c'],
      ['x, y', 'say "so"', 'two lines'],
      ['2" pipe', '1', '2'],
    ]);
  });

  it('numbers rows as a spreadsheet shows them, empty ones counted', async () => {
    const read = await readSheets(utf8('a,b\n\n,\nc,d\n'));
    expect(read.ok && read.sheets[0]?.rows.map(({ number }) => number)).toEqual([1, 4]);
  });

  it('loses what is not seen, and keeps letters of every script', async () => {
    expect(
      await cellsIn(utf8('a\u0007b,\u202e50.1\u202c,שקע כפול,x\u200by,\u00a0z\u00a0\n1,2,3,4,5\n')),
    ).toEqual([
      ['ab', '50.1', 'שקע כפול', 'xy', 'z'],
      ['1', '2', '3', '4', '5'],
    ]);
  });

  it.each<[string, Uint8Array, RegExp]>([
    ['nothing', utf8(''), /^file: there is nothing in it/],
    ['blank rows', utf8('\n,,\n'), /^file: there is nothing in it/],
    ['a mark that is not closed', utf8('a,b\n1,"2\n3,4\n'), /^row 2: a quotation mark opens there/],
    ['one that swallows much', utf8(`a,b\n1,"2\n${'3,4\n'.repeat(50_000)}`), /^row 2: it is longer than/],
    ['too many columns', utf8(`a,b\n${'1,'.repeat(200)}\n`), /^row 2: it has more than 200 columns/],
    ['too many rows', utf8('a,b\n'.repeat(20_001)), /^file: it has more than 20,000 rows/],
    ['too many cells', utf8(`${','.repeat(199)}\n`.repeat(6000)), /^file: it has more than 1,000,000 cells/],
    ['a picture', Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0, 0, 0, 13, 1, 2, 3]), /^file: it is neither/],
    ['too many bytes', new Uint8Array(sheetBounds.bytes + 1), /^file: it is larger than 5 MB/],
  ])('is refused for %s', async (_name, bytes, message) => {
    expect(await cellsIn(bytes)).toMatch(message);
  });

  it('holds as many rows and columns as is said', async () => {
    const read = await readSheets(
      utf8(`${Array.from({ length: 200 }, () => 'x').join(',')}\n${'a,b\n'.repeat(19_999)}`),
    );
    expect(read.ok && read.sheets[0]?.rows.length).toBe(20_000);
  });
});

describe('any bytes', () => {
  const start = fc.constantFrom<number[]>(
    [],
    [0x50, 0x4b, 3, 4],
    [0xff, 0xfe],
    [0xfe, 0xff],
    [0xef, 0xbb, 0xbf],
  );
  const signs = fc.constantFrom(...[...',;\t|"\n\r=-+@£\0a1 '].map((sign) => sign.charCodeAt(0)));
  const bytes = fc
    .tuple(start, fc.oneof(fc.uint8Array({ maxLength: 200 }), fc.array(signs, { maxLength: 200 })))
    .map(([first, rest]) => Uint8Array.from([...first, ...rest]));

  it('are rows within bounds, or one fault that says what to do', async () => {
    await fc.assert(
      fc.asyncProperty(bytes, async (some) => {
        const read = await readSheets(some);
        if (!read.ok)
          expect([read.fault.path, read.fault.message, read.fault.remedy].every((text) => text !== '')).toBe(
            true,
          );
        else
          for (const { rows } of read.sheets)
            for (const { number, cells } of rows) {
              expect(number).toBeGreaterThan(0);
              for (const cell of cells) expect(String(cell)).not.toMatch(/[\p{Cc}\p{Cf}]|^\s|\s$/u);
            }
      }),
      { numRuns: 400 },
    );
  });
});
