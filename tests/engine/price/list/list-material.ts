import { type ListReading, readingOf } from '#engine/price/list/list-reading.ts';
import type { SheetCell, SheetRow } from '#engine/price/list/sheet.ts';
import type { ColumnMap, Price, Prices } from '#model/library.ts';

/** A map of a list with the columns code, description, price, per, pack, discount and date, in that order. */
export const plainMap = (changes: Partial<ColumnMap> = {}): ColumnMap => ({
  name: 'Quarry Lane',
  headers: ['Code', 'Description', 'Price', 'Per', 'Pack', 'Disc', 'Date'],
  columns: { code: 0, description: 1, price: 2, per: 3, pack: 4, discount: 5, date: 6 },
  basis: 'each',
  vat: 'excluded',
  decimal: '.',
  matches: [],
  ...changes,
});

export const plainReading = (changes: Partial<ColumnMap> = {}): ListReading => readingOf(plainMap(changes));

/** Rows of a list, numbered from 2: the headings stand in the first. */
export const rowsOf = (...rows: readonly (readonly SheetCell[])[]): SheetRow[] =>
  rows.map((cells, index) => ({ number: index + 2, cells }));

export const listOf = (items: readonly Price[], changes: Partial<Prices> = {}): Prices => ({
  source: 'Own',
  date: '2026-11-01',
  vat: 'excluded',
  items: [...items],
  ...changes,
});

/** A price of one thing, sold singly. */
export const priceOfOne = (item: string, pricePence: number, changes: Partial<Price> = {}): Price => ({
  item,
  unit: 'each',
  pricePence,
  perQuantity: 1,
  packQuantity: 1,
  charge: 'packs',
  ...changes,
});
