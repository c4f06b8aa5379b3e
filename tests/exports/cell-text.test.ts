import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cellText, looksLikeFormula } from '#exports/workbook/cell-text.ts';

describe('a text for a cell', () => {
  it('is left as it is when there is nothing wrong with it', () => {
    expect(cellText('2.5 mm², 3.05 m, £486.40\nsecond line')).toBe('2.5 mm², 3.05 m, £486.40\nsecond line');
  });

  it('loses control characters and keeps tabs and line feeds', () => {
    expect(cellText('a\u0000b\u0007c\td\r\ne\rf\u007f')).toBe('abc\td\ne\nf');
  });

  it('has a lone half of a surrogate pair marked, and whole pairs kept', () => {
    expect(cellText('a\ud83dz')).toBe('a\ufffdz');
    expect(cellText('a\ud83d\udd0cz')).toBe('a\ud83d\udd0cz');
  });

  it('is cut at the limit of a cell, never inside a pair', () => {
    expect(cellText('x'.repeat(40_000))).toHaveLength(32_767);
    expect(cellText(`${'x'.repeat(32_766)}\ud83d\udd0c`)).toHaveLength(32_766);
  });

  it('has what the file format would take for an escape spelt out', () => {
    expect(cellText('_x0041_')).toBe('_x005F_x0041_');
    expect(cellText('_x41_')).toBe('_x41_');
  });

  it('is fit for XML whatever it was', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (text) => {
        // biome-ignore lint/suspicious/noControlCharactersInRegex: these must not be there
        expect(cellText(text)).not.toMatch(/[\u0000-\u0008\u000b-\u001f\ufffe\uffff]|\p{Surrogate}/u);
      }),
    );
  });
});

describe('what looks like a formula', () => {
  it.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1'])('is %j', (text) => {
    expect(looksLikeFormula(text)).toBe(true);
  });

  it.each(['W1', '1+1', ' =1', ''])('is not %j', (text) => {
    expect(looksLikeFormula(text)).toBe(false);
  });
});
