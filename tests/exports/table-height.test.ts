import { describe, expect, it } from 'vitest';
import { HALF_PAGE_PT, tableHeightPt } from '#exports/quotation/table-height.ts';

const of = (...rows: readonly (readonly unknown[])[]): number =>
  tableHeightPt({ heads: ['Room', 'What'], rows }, [100, 300]);

describe('how high a table comes to', () => {
  it('grows by a line and its padding with every row, and by the highest of its cells', () => {
    expect(of(['a', 'b'], ['a', 'b']) - of(['a', 'b'])).toBeCloseTo(13.8 + 8, 6);
    const twoLines = of(['a'.repeat(25), 'b']) - of(['a', 'b']);
    expect(twoLines).toBeCloseTo(13.8, 6);
    expect(of(['a', 'b'.repeat(25)])).toBe(of(['a', 'b']));
  });

  it('counts each line of a list, and words in parts as one text', () => {
    const list = { ul: ['one', 'two', 'three'] };
    expect(of(['a', list]) - of(['a', 'b'])).toBeCloseTo(2 * 13.8, 6);
    const parts = { text: [{ text: 'Option A: ', bold: true }, 'x'.repeat(80)] };
    expect(of(['a', parts])).toBe(of(['a', 'x'.repeat(90)]));
  });

  it('is more than half a page for what is sure to be', () => {
    expect(of(...Array.from({ length: 40 }, () => ['a', 'b']))).toBeGreaterThan(HALF_PAGE_PT);
    expect(of(['a', 'b'])).toBeLessThan(HALF_PAGE_PT);
  });
});
