import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { shoppingRows } from '#drawing/shopping/shopping-rows.ts';
import { entriesOf } from '#drawing/shopping/shopping-sheet.ts';
import { csvText, withoutGuard } from '#engine/price/list/csv-text.ts';
import { formulasIn, nasty, savedBySpreadsheet } from '#tests/exports/saved-by-spreadsheet.ts';
import { saltglassShopped } from './sheet-of.ts';

/** Merchants, counters and numbers that spreadsheets would like to work out. */
const hostile = saltglassShopped({
  job: (job) => ({ ...job, stock: [{ item: 'grommet-20', quantity: 2 }] }),
  library: (library) => {
    library.prices.items = library.prices.items.map((price, i) => {
      const text = nasty[i % nasty.length] ?? '';
      return { ...price, counter: text, supplier: text, supplierWords: text, code: text };
    });
    return library;
  },
});

const readBack = (csv: string): readonly (readonly string[])[] =>
  parse(csv, { bom: true, relax_column_count: false });

describe('the shopping list as CSV', () => {
  const rows = shoppingRows(hostile.sheet);
  const back = readBack(csvText(rows));

  it('comes back whole through a reader that is not ours, each row with all its cells', () => {
    expect(back.map((row) => row.map(withoutGuard))).toEqual(rows.map((row) => row.map(String)));
    expect(back[0]?.slice(0, 6)).toEqual(['where', 'merchant', 'counter', 'item', 'description', 'ask for']);
  });

  it('has a row for each size that is asked for, and its columns add up to the list', () => {
    const { list } = hostile.sheet;
    const entries = entriesOf(list);
    expect(rows.length - 1).toBe(entries.reduce((sum, { asks }) => sum + asks.length, 0));
    const sum = (head: string): number => {
      const at = back[0]?.indexOf(head) ?? -1;
      return back.slice(1).reduce((all, row) => all + Number(row[at]), 0);
    };
    expect(sum('cost, pounds')).toBeCloseTo(list.pence / 100, 6);
    expect(sum('used')).toBeCloseTo(
      entries.reduce((all, { used }) => all + used, 0),
      6,
    );
  });

  it('holds no formula in a spreadsheet that is not ours, whatever it takes for the end of a cell', async () => {
    for (const separator of [44, 59]) {
      const [opened] = await savedBySpreadsheet({ 's.csv': csvText(rows) }, separator);
      expect(await formulasIn(opened ?? new Uint8Array())).toEqual([]);
    }
  }, 360_000);
});
