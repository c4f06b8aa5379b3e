import { saysDemo } from '#engine/demo-marks.ts';
import type { Item } from '#engine/takeoff/items.ts';
import type { Price } from '#model/library.ts';
import type { LibraryEdit } from '../library-events.ts';

/** The price list's own facts. */
export const setPriceListFact = (
  fact: { readonly source: string } | { readonly date: string } | { readonly vat: 'excluded' | 'included' },
): LibraryEdit => ({
  label: 'Change what is said of the price list',
  change: ({ prices }) => {
    Object.assign(prices, fact);
  },
});

/** A row for an item that the list did not have: sold one by one. */
const newPrice = ({ id, unit }: Pick<Item, 'id' | 'unit'>, pricePence: number): Price => ({
  item: id,
  unit,
  pricePence,
  perQuantity: 1,
  ...(unit === 'each' || unit === 'set' ? { packQuantity: 1 } : {}),
  charge: 'packs',
});

/** The day of a price where it is another than the list's. */
const ownDay = (listDate: string, day: string): { readonly date?: string } =>
  day === '' || day === listDate ? {} : { date: day };

/**
 * Sets what an item costs, in whole pence; null takes the item off the list.
 *
 * @param today the day that a price set by hand is of, ISO; absent or empty: it stays of the day that it was of.
 */
export const setPrice = (
  item: Pick<Item, 'id' | 'unit' | 'description'>,
  pricePence: number | null,
  today = '',
): LibraryEdit => ({
  label: pricePence === null ? `Take ${item.description} off the price list` : `Price of ${item.description}`,
  change: ({ prices }) => {
    const row = prices.items.find((price) => price.item === item.id);
    if (pricePence === null) prices.items = prices.items.filter((price) => price.item !== item.id);
    else if (row === undefined)
      prices.items.push({ ...newPrice(item, pricePence), ...ownDay(prices.date, today) });
    else {
      row.pricePence = pricePence;
      delete row.origin;
      // What the merchant took off the price before says nothing of this one.
      delete row.discountPercent;
      if (today !== '') {
        delete row.date;
        Object.assign(row, ownDay(prices.date, today));
      }
    }
  },
});

/** Says that every price of the list is the firm's own, the demo's among them. */
export const ownPrices = (): LibraryEdit => ({
  label: 'Take all prices over as the firm’s own',
  change: ({ prices }) => {
    for (const row of prices.items) for (const figure of [row, ...(row.packs ?? [])]) delete figure.origin;
    if (saysDemo.prices(prices)) prices.source = 'Own price list';
  },
});

/** What of a price's row is set besides the price; a pack of null means any quantity. */
export type PriceDetail =
  | { readonly perQuantity: number }
  | { readonly packQuantity: number | null }
  | { readonly charge: Price['charge'] }
  | { readonly counter: string };

/** Sets how an item is sold and charged; an item without a price has no row to set it in. */
export const setPriceDetail = (item: Pick<Item, 'id' | 'description'>, detail: PriceDetail): LibraryEdit => ({
  label: `How ${item.description} is sold`,
  change: ({ prices }) => {
    const row = prices.items.find((price) => price.item === item.id);
    if (row === undefined) return;
    if ('packQuantity' in detail && detail.packQuantity === null) delete row.packQuantity;
    else if ('counter' in detail && detail.counter === '') delete row.counter;
    else Object.assign(row, detail);
  },
});
