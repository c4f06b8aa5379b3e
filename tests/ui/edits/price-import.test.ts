import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { importPlan } from '#engine/price/list/import-plan.ts';
import { readingOf } from '#engine/price/list/list-reading.ts';
import type { ColumnMap } from '#model/library.ts';
import { readLibraryText } from '#model/read-library.ts';
import { plainMap, rowsOf } from '#tests/engine/price/list/list-material.ts';
import { EditHistory } from '../../../ui/controllers/edit-history.ts';
import { importPrices, setStaleDays } from '../../../ui/edits/price-import.ts';
import { setPrice } from '../../../ui/edits/prices.ts';

const map = plainMap({ matches: [{ row: 'S2', item: 'socket-twin' }] });
const rows = rowsOf(['S2', 'Twin', '3.95'], ['', '13 A single socket-outlet', '2.95']);

function edited(how: ColumnMap | null = map, name = 'november.csv') {
  const history = new EditHistory(demoLibrary());
  const plan = importPlan(rows, history.now.prices, readingOf(map), {
    date: '2026-11-20',
    leftOut: new Set(),
  });
  history.edit(importPrices(plan, how, name));
  return history;
}

describe('taking a merchant’s list in', () => {
  it('is one step, named by its file, and one step back', () => {
    const history = edited();
    expect(history.undoLabel).toBe('Take in 2 prices from november.csv');
    const { items } = history.now.prices;
    expect(items.find(({ item }) => item === 'socket-twin')).toMatchObject({
      pricePence: 395,
      date: '2026-11-20',
    });
    expect(readLibraryText(JSON.stringify(history.now)).ok).toBe(true);
    history.undo();
    expect(history.now).toEqual(demoLibrary());
    expect(history.undoLabel).toBeNull();
  });

  it('remembers how the list is read, once for its headings', () => {
    const history = edited();
    expect(history.now.prices.columnMaps).toEqual([map]);
    const plan = { changes: [], items: history.now.prices.items };
    const other = plainMap({ headers: ['Other'] });
    for (const one of [{ ...map, name: 'Renamed' }, other]) history.edit(importPrices(plan, one, 'x.csv'));
    expect(history.now.prices.columnMaps?.map(({ name, headers }) => [name, headers.length])).toEqual([
      ['Renamed', 7],
      ['Quarry Lane', 1],
    ]);
  });

  it('remembers nothing of a list of our own, or of one without headings', () => {
    expect(edited(null).now.prices).not.toHaveProperty('columnMaps');
    expect(edited({ ...map, headers: [] }).now.prices).not.toHaveProperty('columnMaps');
  });
});

describe('the day of a price', () => {
  const item = { id: 'socket-twin', unit: 'each', description: 'Twin' } as const;
  const rowOf = (history: EditHistory<ReturnType<typeof demoLibrary>>) =>
    history.now.prices.items.find((price) => price.item === item.id);

  it('is the day on which it is set by hand', () => {
    const history = edited();
    history.edit(setPrice(item, 400, '2026-11-26'));
    expect(rowOf(history)).toMatchObject({ pricePence: 400, date: '2026-11-26' });
    history.edit(setPrice(item, 410, history.now.prices.date));
    expect(rowOf(history)).not.toHaveProperty('date');
  });

  it('is that of a new price, too', () => {
    const history = edited();
    history.edit(setPrice(item, null));
    history.edit(setPrice(item, 400, '2026-11-26'));
    expect(rowOf(history)?.date).toBe('2026-11-26');
  });

  it('counts as old after as many days as the firm says', () => {
    const history = edited();
    history.edit(setStaleDays(30));
    expect(history.now.prices.staleDays).toBe(30);
    history.edit(setStaleDays(null));
    expect(history.now.prices).not.toHaveProperty('staleDays');
  });
});
