import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csvText, withoutGuard } from '#engine/price/list/csv-text.ts';

const cellOf = (text: string): string => csvText([[text]]).slice(1, -2);

describe('comma-separated text', () => {
  it('has a byte-order mark, line ends as RFC 4180 has them, and quotation marks where they are needed', () => {
    expect(
      csvText([
        ['Code', 'Price'],
        ['a,b', 1.5],
        ['say "so"', 0],
      ]),
    ).toBe('\ufeffCode,Price\r\n"a,b",1.5\r\n"say ""so""",0\r\n');
  });

  it.each([
    ['=1+1', `"'=1+1"`],
    ['+44 20', `"'+44 20"`],
    ['@x', `"'@x"`],
    ['\t=1', `"'\t'=1"`],
    ['＝1', `"'＝1"`],
    ['a;=1', `"a;'=1"`],
    ["'=1", `"''=1"`],
  ])('%j is no formula', (text, written) => {
    expect(cellOf(text)).toBe(written);
  });

  it('never begins a cell as a formula does, and gives its texts back', () => {
    const signs = fc.constantFrom(...[...'=+-@\t\r\n;"\' a＝']);
    const text = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.array(signs).map((some) => some.join('')),
    );
    fc.assert(
      fc.property(text, (some) => {
        const written = cellOf(some);
        const bare = written.startsWith('"') ? written.slice(1, -1).replaceAll('""', '"') : written;
        expect(bare).not.toMatch(/^[=+\-@\t\r\n＝＋－＠]|[;\t\r\n][" ]*[=+\-@＝＋－＠]/);
        // But for what nobody sees: control characters, and marks that turn the line round.
        const seen = some.replace(/(?![\t\n\r])\p{Cc}|[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu, '');
        expect(withoutGuard(bare)).toBe(seen);
      }),
      { numRuns: 1000 },
    );
  });
});
