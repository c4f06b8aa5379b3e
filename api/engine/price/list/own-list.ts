import type { Pack, Price, Prices } from '#model/library.ts';
import { itemOf } from '../../takeoff/items.ts';
import { type CsvCell, csvText } from './csv-text.ts';
import type { ColumnRole, ListReading } from './list-reading.ts';
import { poundsText } from './pounds-text.ts';

/** What says in a list of our own that jobs are priced by a row, and what that a thing is also sold so. */
export const placeWords = { pricedBy: 'priced by', alsoSold: 'also sold' } as const;

interface OwnColumn {
  readonly header: string;
  /** Null where it is there for people alone. */
  readonly role: ColumnRole | null;
  readonly of: (row: OwnRow) => CsvCell;
}

interface OwnRow {
  readonly price: Price;
  /** Null for the row that jobs are priced by. */
  readonly pack: Pack | null;
  readonly list: Pick<Prices, 'date' | 'vat'>;
}

/** The columns of a price list as this product writes it, and knows it again. */
const ownColumns: readonly OwnColumn[] = [
  { header: 'Item id', role: 'item', of: ({ price }) => price.item },
  { header: 'Item', role: null, of: ({ price }) => itemOf(price.item, price.unit, 'sundries').description },
  { header: 'Unit', role: null, of: ({ price }) => price.unit },
  { header: 'Price £', role: 'price', of: ({ price, pack }) => poundsText((pack ?? price).pricePence) },
  { header: 'Buys', role: 'per', of: ({ price, pack }) => pack?.quantity ?? price.perQuantity },
  { header: 'Packs of', role: 'pack', of: ({ price, pack }) => pack?.quantity ?? price.packQuantity ?? '' },
  { header: 'Sold as', role: 'kind', of: ({ price, pack }) => (pack ?? price).kind ?? '' },
  { header: 'Not less than', role: 'least', of: ({ pack }) => pack?.leastQuantity ?? '' },
  {
    header: 'Jobs are',
    role: 'place',
    of: ({ pack }) => (pack === null ? placeWords.pricedBy : placeWords.alsoSold),
  },
  { header: 'Charge for', role: 'charge', of: ({ price }) => price.charge },
  { header: 'Counter', role: 'counter', of: ({ price }) => price.counter ?? '' },
  { header: 'Merchant', role: 'supplier', of: ({ price }) => price.supplier ?? '' },
  { header: 'Code', role: 'code', of: ({ price, pack }) => (pack ?? price).code ?? '' },
  { header: 'Merchant’s words', role: 'description', of: ({ price }) => price.supplierWords ?? '' },
  { header: 'Discount %, taken off', role: 'toldDiscount', of: ({ price }) => price.discountPercent ?? '' },
  { header: 'Of the day', role: 'date', of: ({ price, pack, list }) => (pack ?? price).date ?? list.date },
  { header: 'VAT', role: 'vat', of: ({ list }) => list.vat },
];

/** The headings of a list of our own. */
export const ownHeaders: readonly string[] = ownColumns.map(({ header }) => header);

/** How a list of our own is read. */
export const ownReading: ListReading = {
  name: '',
  columns: Object.fromEntries(
    ownColumns.flatMap(({ role }, index) => (role === null ? [] : [[role, index]])),
  ),
  basis: 'by-column',
  vat: 'excluded',
  discountPercent: 0,
  decimal: '.',
  matches: [],
  isOwn: true,
};

/** The rows of a price list as a table: its headings, then each price and the further sizes of it, in the list's order. */
export function ownTable(list: Prices): readonly (readonly CsvCell[])[] {
  const rows = list.items.flatMap((price): OwnRow[] => [
    { price, pack: null, list },
    ...(price.packs ?? []).map((pack) => ({ price, pack, list })),
  ]);
  return [ownHeaders, ...rows.map((row) => ownColumns.map(({ of }) => of(row)))];
}

/** A price list as CSV, which can be taken in again and which no spreadsheet takes for formulas. */
export const priceListCsv = (list: Prices): string => csvText(ownTable(list));
