import type { ColumnMap } from '#model/library.ts';

/** What a column of a list may say. Those after `date` stand in lists of our own alone. */
export type ColumnRole =
  | keyof ColumnMap['columns']
  | 'item'
  | 'place'
  | 'kind'
  | 'least'
  | 'charge'
  | 'counter'
  | 'supplier'
  | 'toldDiscount'
  | 'vat';

/** How a list is read: which column says what, and what holds where no column does. */
export interface ListReading {
  readonly name: string;
  readonly columns: Partial<Readonly<Record<ColumnRole, number>>>;
  readonly basis: ColumnMap['basis'];
  readonly vat: ColumnMap['vat'];
  /** Taken off where a row names no discount of its own; 0 takes nothing off. */
  readonly discountPercent: number;
  readonly decimal: ColumnMap['decimal'];
  /** What a person has said of its rows. */
  readonly matches: ColumnMap['matches'];
  /** True for a list that this product wrote: it says everything of a price, and an empty cell says that there is nothing. */
  readonly isOwn: boolean;
}

/** A merchant's list as its map has it. */
export function readingOf(map: ColumnMap): ListReading {
  const columns: Partial<Record<ColumnRole, number>> = {};
  for (const [role, column] of Object.entries(map.columns) as [
    keyof ColumnMap['columns'],
    number | undefined,
  ][])
    if (column !== undefined) columns[role] = column;
  return { ...map, columns, discountPercent: map.discountPercent ?? 0, isOwn: false };
}
