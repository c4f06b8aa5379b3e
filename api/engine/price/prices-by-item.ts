import type { Price, Prices } from '#model/library.ts';
import { remembered } from '../plan/remembered.ts';

/** The rows of a price list by item; where an item has several, its first row counts everywhere. */
export const pricesByItem = remembered(
  ({ items }: Prices): ReadonlyMap<string, Price> =>
    new Map(items.toReversed().map((price) => [price.item, price])),
);
