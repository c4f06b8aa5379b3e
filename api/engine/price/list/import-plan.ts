import type { Pack, Price, Prices } from '#model/library.ts';
import type { Item } from '../../takeoff/items.ts';
import type { ColumnRole, ListReading } from './list-reading.ts';
import { rowMatcher, rowWords } from './match-items.ts';
import { cellAt, type Offer, offerOf } from './row-offer.ts';
import { cellWords, type SheetRow } from './sheet.ts';
import { alsoSold, type PlacedOffer, placeOffers, pricedBy, type RowedOffer } from './take-offers.ts';

/** So many pence for so much of an item's unit. */
export interface ShownPrice {
  readonly pricePence: number;
  readonly perQuantity: number;
}

/** What a row of the file changes in the firm's price list. */
export interface PriceChange {
  readonly row: number;
  readonly item: Item;
  /** Whether jobs are priced by it, or it is a further size. */
  readonly place: PlacedOffer['place'];
  /** Null where the list had none. */
  readonly before: ShownPrice | null;
  readonly after: ShownPrice;
  /** New over old, each for one unit; null where there is no old one to hold it against. */
  readonly ratio: number | null;
  /** True where it is so far from the old one that a person has to say that it is right. */
  readonly isAsked: boolean;
  /** False where the price is as it was, and only its day or the merchant's words are new. */
  readonly isNewPrice: boolean;
  readonly isRounded: boolean;
}

/** A row that cannot be read. */
export interface RowFault {
  readonly row: number;
  /** The column that it is about; null where it is about several. */
  readonly role: ColumnRole | null;
  readonly message: string;
  readonly remedy: string;
  /** The item that the row is about; null where it is about none of the firm's, and holds nothing up. */
  readonly item: Item | null;
  /** What the row calls itself. */
  readonly words: string;
}

/** A row that is about no item that is known. */
export interface UnmatchedRow {
  readonly row: number;
  /** What a person's answer is remembered by. */
  readonly key: string;
  readonly code: string;
  readonly words: string;
  readonly price: string;
}

/** What a file would do to a price list, all of it worked out and nothing done. Everything in the order of the file. */
export interface ImportPlan {
  readonly changes: readonly PriceChange[];
  readonly faults: readonly RowFault[];
  readonly unmatched: readonly UnmatchedRow[];
  /** Rows that were left out because a person said so. */
  readonly leftOut: readonly number[];
  /** How many prices are as they were in everything. */
  readonly same: number;
  /** How many rows say nothing of a price: headings between rows, and notes. */
  readonly headings: number;
  /** How many prices had value added tax put on or taken off. */
  readonly vatChanged: number;
  /** The price list's rows, once it is done. */
  readonly items: readonly Price[];
}

/** What a person has said of a file. */
export interface ImportAnswers {
  /** The day of its prices that name none of their own. */
  readonly date: string;
  /** Rows to be left out. */
  readonly leftOut: ReadonlySet<number>;
}

/** A price that is so many times another has been read for the wrong quantity: 100 read as each. */
const FAR = 20;

interface Sorted {
  readonly offers: Map<string, { readonly item: Item; readonly rowed: RowedOffer[] }>;
  readonly faults: RowFault[];
  readonly unmatched: UnmatchedRow[];
  readonly leftOut: number[];
  headings: number;
}

/** Whether all that a row has to say stands in one cell: a heading between rows. */
const isAlone = ({ cells }: SheetRow): boolean => cells.filter((cell) => cell !== '').length < 2;

function sortRows(
  rows: readonly SheetRow[],
  prices: Prices,
  reading: ListReading,
  answers: ImportAnswers,
): Sorted {
  const match = rowMatcher(prices.items, reading);
  const sorted: Sorted = { offers: new Map(), faults: [], unmatched: [], leftOut: [], headings: 0 };
  for (const row of rows) {
    const { key, code, words } = rowWords(row, reading);
    const price = cellWords(cellAt(row, 'price', reading));
    const item = match(row);
    if (answers.leftOut.has(row.number)) sorted.leftOut.push(row.number);
    else if (item === null && price === '' && (code === '' || isAlone(row))) sorted.headings++;
    else sortRow({ row, item, reading, prices, sorted }, { key, code, words, price });
  }
  return sorted;
}

interface OneRow {
  readonly row: SheetRow;
  readonly item: Item | null;
  readonly reading: ListReading;
  readonly prices: Prices;
  readonly sorted: Sorted;
}

function sortRow(
  { row, item, reading, prices, sorted }: OneRow,
  said: { readonly key: string; readonly code: string; readonly words: string; readonly price: string },
): void {
  const read = offerOf(row, item?.unit ?? 'each', reading, prices.vat);
  const words = said.words === '' ? said.code : said.words;
  // Of a thing that is not the firm's, the unit is not known: only the price itself can be at fault.
  if (!read.ok && (item !== null || read.role === 'price')) {
    const { role, message, remedy } = read;
    sorted.faults.push({ row: row.number, role, message, remedy, item, words });
  } else if (item === null) sorted.unmatched.push({ row: row.number, ...said });
  else if (read.ok) {
    const group = sorted.offers.get(item.id) ?? { item, rowed: [] };
    group.rowed.push({ row: row.number, offer: read.offer });
    sorted.offers.set(item.id, group);
  }
}

const unitPence = ({ pricePence, perQuantity }: ShownPrice): number => pricePence / perQuantity;

const shownPack = ({ pricePence, quantity }: Pack): ShownPrice => ({ pricePence, perQuantity: quantity });

/** Whether two figures of a library are the same in all but whose they are. */
function isSame(a: object, b: object): boolean {
  const plain = (value: object): string =>
    JSON.stringify(
      Object.entries(value)
        .filter(([key, inner]) => key !== 'origin' && key !== 'packs' && inner !== undefined)
        .sort(([one], [other]) => (one < other ? -1 : 1)),
    );
  return plain(a) === plain(b);
}

interface TakenIn {
  readonly price: Price;
  readonly changes: readonly PriceChange[];
  readonly faults: readonly RowFault[];
  readonly same: number;
}

/** Two rows that give one size of an item, each its own price: which holds, nobody can tell. */
function doubles(placed: readonly PlacedOffer[], item: Item): readonly RowFault[] {
  const seen = new Map<string, PlacedOffer>();
  return placed.flatMap((one): RowFault[] => {
    const size = `${one.place} ${one.place === 'priced-by' ? '' : (one.offer.packQuantity ?? one.offer.perQuantity)} ${one.place === 'priced-by' ? '' : (one.pack?.kind ?? one.offer.kind)}`;
    const before = seen.get(size);
    seen.set(size, before ?? one);
    if (before === undefined) return [];
    return [
      {
        row: one.row,
        role: null,
        message: `it gives the price of the same thing as row ${before.row}`,
        remedy: 'Leave out one of them',
        item,
        words: one.offer.words,
      },
    ];
  });
}

function changeOf(
  { row, place, offer }: PlacedOffer,
  item: Item,
  after: ShownPrice,
  { before, against }: { readonly before: ShownPrice | null; readonly against: ShownPrice | null },
): PriceChange {
  const old = before ?? against;
  const ratio = old === null || old.pricePence === 0 ? null : unitPence(after) / unitPence(old);
  return {
    row,
    item,
    place,
    before,
    after,
    ratio,
    isAsked: ratio !== null && (ratio > FAR || ratio < 1 / FAR),
    isNewPrice: before === null || unitPence(before) !== unitPence(after),
    isRounded: offer.isRounded,
  };
}

/** Takes a file's offers of one item into its row of the price list. */
function takeIn(
  item: Item,
  rowed: readonly RowedOffer[],
  known: Price | null,
  taking: Parameters<typeof pricedBy>[3],
): TakenIn {
  const placed = placeOffers(rowed, known).toSorted((a, b) => a.row - b.row);
  const faults = doubles(placed, item);
  const good = placed.filter(({ row }) => !faults.some((fault) => fault.row === row));
  const main = good.find(({ place }) => place === 'priced-by');
  const further = good.filter(({ place }) => place === 'also-sold');
  if (main === undefined && known === null) return noneToPriceBy(item, further, faults);
  const fresh = main === undefined ? known : pricedBy(item, known, main, taking);
  if (fresh === null) throw new Error(`No price of ${item.id} to begin with.`);
  const changes: PriceChange[] = [];
  const isKept = known !== null && isSame(known, fresh);
  if (main !== undefined && !isKept)
    changes.push(changeOf(main, item, fresh, { before: known, against: null }));
  let packs = known?.packs ?? [];
  let same = main !== undefined && isKept ? 1 : 0;
  for (const one of further) {
    const pack = alsoSold(item, one, taking);
    if (one.pack !== null && isSame(one.pack, pack)) same++;
    else {
      const before = one.pack === null ? null : shownPack(one.pack);
      changes.push(changeOf(one, item, shownPack(pack), { before, against: known ?? fresh }));
      packs = one.pack === null ? [...packs, pack] : packs.map((old) => (old === one.pack ? pack : old));
    }
  }
  const { packs: _packs, ...row } = isKept ? known : fresh;
  return {
    price: packs.length === 0 && known?.packs === undefined ? row : { ...row, packs: [...packs] },
    changes,
    faults,
    same,
  };
}

/** Our own lists alone can offer further sizes of what nothing prices. */
function noneToPriceBy(item: Item, further: readonly PlacedOffer[], faults: readonly RowFault[]): TakenIn {
  const missing = further.map(
    ({ row, offer }): RowFault => ({
      row,
      role: 'place',
      message: 'no row says what jobs are priced by',
      remedy: 'Write “priced by” into one row of the item',
      item,
      words: offer.words,
    }),
  );
  const nothing: Price = { item: item.id, unit: item.unit, pricePence: 0, perQuantity: 1, charge: 'packs' };
  return { price: nothing, changes: [], faults: [...faults, ...missing], same: 0 };
}

const byRow = (a: { readonly row: number }, b: { readonly row: number }): number => a.row - b.row;

/**
 * Works out what the rows of a merchant's list would make of a price list. Pure: nothing is taken in by it, and what
 * cannot be read changes nothing; whoever does it does all of it or none.
 *
 * @param rows those below the headings.
 */
export function importPlan(
  rows: readonly SheetRow[],
  prices: Prices,
  reading: ListReading,
  answers: ImportAnswers,
): ImportPlan {
  const sorted = sortRows(rows, prices, reading, answers);
  const known = new Map<string, Price>();
  for (const price of prices.items) if (!known.has(price.item)) known.set(price.item, price);
  const taking = { date: answers.date, listDate: prices.date, isOwn: reading.isOwn };
  const taken = new Map<string, TakenIn>();
  for (const [id, { item, rowed }] of sorted.offers)
    taken.set(id, takeIn(item, rowed, known.get(id) ?? null, taking));
  const all = [...taken.values()];
  const offers: readonly Offer[] = [...sorted.offers.values()].flatMap(({ rowed }) =>
    rowed.map(({ offer }) => offer),
  );
  return {
    changes: all.flatMap(({ changes }) => changes).sort(byRow),
    faults: [...sorted.faults, ...all.flatMap(({ faults }) => faults)].sort(byRow),
    unmatched: sorted.unmatched,
    leftOut: sorted.leftOut,
    same: all.reduce((sum, { same }) => sum + same, 0),
    headings: sorted.headings,
    vatChanged: offers.filter(({ isVatChanged }) => isVatChanged).length,
    items: itemsAfter(prices.items, known, taken),
  };
}

/** The list's rows in their order, those that were taken in changed, new ones at the end. */
function itemsAfter(
  items: readonly Price[],
  known: ReadonlyMap<string, Price>,
  taken: ReadonlyMap<string, TakenIn>,
): readonly Price[] {
  const changed = (price: Price): Price => {
    const now = known.get(price.item) === price ? taken.get(price.item) : undefined;
    return now === undefined || now.changes.length === 0 ? price : now.price;
  };
  const isNew = ([id, { changes }]: readonly [string, TakenIn]): boolean =>
    !known.has(id) && changes.length > 0;
  return [...items.map(changed), ...[...taken].filter(isNew).map(([, { price }]) => price)];
}

/** What keeps a plan from being done; none: all of it may be. */
export interface HeldUp {
  /** Rows about the firm's items that cannot be read, and were not left out. */
  readonly faults: readonly RowFault[];
  /** Changes that a person has not yet said are right. */
  readonly asked: readonly PriceChange[];
}

/** @param confirmed rows whose far price a person has said is right. */
export function heldUp({ faults, changes }: ImportPlan, confirmed: ReadonlySet<number>): HeldUp {
  return {
    faults: faults.filter(({ item }) => item !== null),
    asked: changes.filter(({ row, isAsked }) => isAsked && !confirmed.has(row)),
  };
}
