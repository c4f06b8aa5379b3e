import type { Pack, Price, Prices } from '#model/library.ts';
import { decimalOf, type Exact, exactOf, over, times } from '../exact.ts';
import { roundHalfUpPence } from '../money.ts';
import { costVatFactor } from '../vat.ts';
import { type Basis, basisOf, isAmount, noAmount } from './basis-words.ts';
import { dateOf } from './date-words.ts';
import { figureAt, figureOf } from './decimal-words.ts';
import type { ColumnRole, ListReading } from './list-reading.ts';
import { lessDiscount, priceOf, type WrittenPrice } from './money-words.ts';
import { placeWords } from './own-list.ts';
import { cellWords, type SheetCell, type SheetRow } from './sheet.ts';
import { asQuoted, type Told, told, untold } from './told.ts';

/** What a row offers of an item: value added tax as the firm's list has it, discount taken off. */
export interface Offer {
  readonly pricePence: number;
  readonly perQuantity: number;
  /** Null: the row does not say in what it is sold. */
  readonly packQuantity: number | null;
  readonly kind: Pack['kind'] | null;
  readonly leastQuantity: number | null;
  /** Of our own lists: whether jobs are priced by it; null in a merchant's. */
  readonly place: keyof typeof placeWords | null;
  readonly discountPercent: number | null;
  /** Null: the day of the list. */
  readonly date: string | null;
  readonly charge: Price['charge'] | null;
  readonly counter: string;
  readonly supplier: string;
  readonly code: string;
  readonly words: string;
  /** True where value added tax was put on or taken off. */
  readonly isVatChanged: boolean;
  /** True where pence had to be rounded. */
  readonly isRounded: boolean;
}

/** Why a row cannot be read, and which column it is about; null where it is about several. */
export type RowOffer =
  | { readonly ok: true; readonly offer: Offer }
  | {
      readonly ok: false;
      readonly role: ColumnRole | null;
      readonly message: string;
      readonly remedy: string;
    };

/** The cell of a row that says something; empty where no column does. */
export function cellAt(
  row: SheetRow,
  role: ColumnRole,
  { columns }: Pick<ListReading, 'columns'>,
): SheetCell {
  const column = columns[role];
  return column === undefined ? '' : (row.cells[column] ?? '');
}

const wordsAt = (row: SheetRow, role: ColumnRole, reading: ListReading): string =>
  cellWords(cellAt(row, role, reading));

const listBasis: Readonly<Record<ListReading['basis'], Basis | null>> = {
  each: { quantity: 1, unit: 'each', kind: null },
  'per-100': { quantity: 100, unit: null, kind: null },
  'per-1000': { quantity: 1000, unit: null, kind: null },
  'per-metre': { quantity: 1, unit: 'm', kind: null },
  'per-100-m': { quantity: 100, unit: 'm', kind: null },
  'per-pack': { quantity: null, unit: null, kind: 'pack' },
  'by-column': null,
};

/** Words or a figure of how much: a figure alone is so many of the item's unit. */
function amountOf(cell: SheetCell, { decimal }: ListReading): Told<Basis> {
  if (typeof cell !== 'number') return basisOf(cell, decimal);
  const quantity = Number.isFinite(cell) ? decimalOf(exactOf(cell), 6) : 0;
  return isAmount(quantity) ? told({ quantity, unit: null, kind: null }) : noAmount(String(cell));
}

function basisAt(row: SheetRow, written: WrittenPrice, reading: ListReading): Told<Basis> {
  if (written.basis !== null) return told(written.basis);
  const cell = cellAt(row, 'per', reading);
  if (cell !== '') return amountOf(cell, reading);
  const basis = listBasis[reading.basis];
  return basis === null
    ? untold(
        'it does not say what the price is for',
        'Write each, per 100, per metre and the like in that column',
      )
    : told(basis);
}

interface Sold {
  readonly perQuantity: number;
  readonly packQuantity: number | null;
  readonly kind: Pack['kind'] | null;
}

/** Whether a unit that a row names may stand for an item's own. */
const fits = (named: Price['unit'] | null, own: Price['unit']): boolean =>
  named === null ||
  named === own ||
  (named === 'each' && own === 'set') ||
  (named === 'set' && own === 'each');

const unitWords: Readonly<Record<Price['unit'], string>> = {
  each: 'singly',
  m: 'by the metre',
  kg: 'by the kilogram',
  set: 'by the set',
};

/** Puts together what a price is for and what it is sold in, for an item of a unit. */
function soldAs(basis: Basis, pack: Basis | null, unit: Price['unit']): Told<Sold> {
  if (pack !== null && !fits(pack.unit, unit))
    return untold(
      `a pack is told ${unitWords[pack.unit ?? 'each']}, and the item is counted ${unitWords[unit]}`,
      'Look whether it is the right item',
    );
  const packQuantity = pack?.quantity ?? null;
  if (basis.kind !== null) {
    const quantity = basis.quantity ?? packQuantity;
    if (quantity === null)
      return untold(
        'it does not say how much a pack holds',
        'Write it into the row: pack of 100, coil of 50 m',
      );
    if (!fits(basis.unit, unit))
      return untold(
        `the price is ${unitWords[basis.unit ?? 'each']}, and the item is counted ${unitWords[unit]}`,
        'Look whether it is the right item',
      );
    return told({ perQuantity: quantity, packQuantity: quantity, kind: basis.kind });
  }
  const kind = pack?.kind ?? null;
  const quantity = basis.quantity ?? 1;
  if (fits(basis.unit, unit)) return told({ perQuantity: quantity, packQuantity, kind });
  // A coil or a bag that is sold singly: the price is for what it holds.
  if (basis.unit === 'each' && packQuantity !== null)
    return told({
      perQuantity: decimalOf(times(exactOf(quantity), exactOf(packQuantity)), 6),
      packQuantity,
      kind,
    });
  return untold(
    `the price is ${unitWords[basis.unit ?? 'each']}, and the item is counted ${unitWords[unit]}`,
    'Write how much one holds (coil of 50 m), or look whether it is the right item',
  );
}

function discountAt(row: SheetRow, reading: ListReading): Told<number> {
  const cell = cellAt(row, 'discount', reading);
  if (cell === '') return told(reading.discountPercent);
  const remedy = 'Write it as 35 %';
  if (typeof cell === 'number' && cell > 0 && cell < 1)
    return untold(`a discount of ${cell} may be ${cell} % or ${decimalOf(exactOf(cell * 100), 4)} %`, remedy);
  const percent = typeof cell === 'number' ? cell : percentIn(cell, reading);
  return percent !== null && percent >= 0 && percent < 100
    ? told(decimalOf(exactOf(percent), 4))
    : untold(`${asQuoted(cellWords(cell))} is no discount`, remedy);
}

function percentIn(text: string, { decimal }: ListReading): number | null {
  const read = figureAt(text.replace(/^-/, ''), decimal);
  return read.ok && /^%?$/.test(read.value.rest) ? decimalOf(read.value.value, 4) : null;
}

/** Below this a price is held for ten, a hundred or a thousand times as much, so that rounding to pence stays small. */
const SMALL_PENCE = 100;
const MOST_TIMES = 1000;

const isWhole = (value: Exact): boolean => decimalOf(value, 6) === roundHalfUpPence(value);

/** A price in whole pence, half up; a small one for more of it, so that it is not rounded away. */
function inWholePence(pence: Exact, perQuantity: number, mayGrow: boolean) {
  let times10 = 1;
  const now = (): Exact => times(pence, exactOf(times10));
  while (mayGrow && times10 < MOST_TIMES && !isWhole(now()) && roundHalfUpPence(now()) < SMALL_PENCE)
    times10 *= 10;
  return {
    pricePence: roundHalfUpPence(now()),
    perQuantity: decimalOf(times(exactOf(perQuantity), exactOf(times10)), 6),
    isRounded: !isWhole(now()),
  };
}

/** A price with the firm's list's value added tax, from the row's. */
function withListVat(pence: Exact, rows: Prices['vat'], list: Prices['vat']): Exact {
  if (rows === list) return pence;
  const withTax = costVatFactor('excluded', 'not-registered');
  return rows === 'excluded' ? times(pence, withTax) : over(pence, withTax);
}

const kinds: readonly Pack['kind'][] = ['each', 'pack', 'length', 'cut', 'coil', 'drum'];
const charges: readonly Price['charge'][] = ['packs', 'used'];
const vats: readonly Prices['vat'][] = ['excluded', 'included'];
const places = Object.keys(placeWords) as (keyof typeof placeWords)[];

/** A word of a closed list; null for an empty cell. */
function wordAt<W extends string>(
  words: readonly W[],
  cell: string,
  shown: (word: W) => string = (word) => word,
): Told<W | null> {
  if (cell === '') return told(null);
  const word = words.find((one) => shown(one) === cell.toLowerCase());
  return word === undefined
    ? untold(
        `${asQuoted(cell)} is none of ${words.map(shown).join(', ')}`,
        'Write one of them, or leave it empty',
      )
    : told(word);
}

/** A failed cell, with the column it stands in. */
class Untold extends Error {
  readonly role: ColumnRole | null;
  readonly remedy: string;

  constructor(
    role: ColumnRole | null,
    { message, remedy }: { readonly message: string; readonly remedy: string },
  ) {
    super(message);
    this.role = role;
    this.remedy = remedy;
  }
}

function need<T>(role: ColumnRole | null, answer: Told<T>): T {
  if (answer.ok) return answer.value;
  throw new Untold(role, answer);
}

/** What only lists of our own say of a price. */
function ownFacts(row: SheetRow, reading: ListReading) {
  const optional = (role: 'least' | 'toldDiscount', isFit: (value: number) => boolean): number | null => {
    const cell = cellAt(row, role, reading);
    if (cell === '') return null;
    const value = decimalOf(need(role, figureOf(cell, reading.decimal)), 6);
    return isFit(value) ? value : need(role, noAmount(cellWords(cell)));
  };
  return {
    kind: need('kind', wordAt(kinds, wordsAt(row, 'kind', reading))),
    place: need(
      'place',
      wordAt(places, wordsAt(row, 'place', reading), (word) => placeWords[word]),
    ),
    charge: need('charge', wordAt(charges, wordsAt(row, 'charge', reading))),
    vat: need('vat', wordAt(vats, wordsAt(row, 'vat', reading))),
    leastQuantity: optional('least', isAmount),
    toldDiscount: optional('toldDiscount', (value) => value <= 100),
    counter: wordsAt(row, 'counter', reading),
  };
}

function pricedAt(row: SheetRow, reading: ListReading): WrittenPrice {
  const cell = cellAt(row, 'price', reading);
  if (cell === '')
    throw new Untold('price', {
      message: 'it has no price',
      remedy: 'Ask the merchant for it, or leave the row out',
    });
  const written = need('price', priceOf(cell, reading.decimal));
  if (written.pence.num === 0 && !reading.isOwn)
    throw new Untold('price', {
      message: 'its price is nothing',
      remedy: 'Ask the merchant for it, or leave the row out',
    });
  return written;
}

function offered(row: SheetRow, unit: Price['unit'], reading: ListReading, listVat: Prices['vat']): Offer {
  const own = ownFacts(row, reading);
  const written = pricedAt(row, reading);
  const basis = need('per', basisAt(row, written, reading));
  const packCell = cellAt(row, 'pack', reading);
  const pack = packCell === '' ? null : need('pack', amountOf(packCell, reading));
  const sold = need(null, soldAs(basis, pack, unit));
  const discount = need('discount', discountAt(row, reading));
  const vat = own.vat ?? reading.vat;
  const net = withListVat(lessDiscount(written.pence, discount), vat, listVat);
  const dateCell = cellAt(row, 'date', reading);
  const place = own.place;
  const priced = inWholePence(net, sold.perQuantity, place !== 'alsoSold' && !isUnbroken(sold));
  const isLost = priced.pricePence === 0 && written.pence.num !== 0;
  if (!reading.isOwn && (isLost || !isPossible(priced, sold)))
    throw new Untold('price', {
      message: 'for what it says it buys, its price cannot be',
      remedy: 'Look whether the price, what it is for and the pack are in the right columns',
    });
  return {
    ...priced,
    packQuantity: sold.packQuantity,
    kind: own.kind ?? sold.kind,
    leastQuantity: own.leastQuantity,
    place,
    discountPercent: reading.isOwn ? own.toldDiscount : discount === 0 ? null : discount,
    date: dateCell === '' ? null : need('date', dateOf(dateCell)),
    charge: own.charge,
    counter: own.counter,
    supplier: reading.isOwn ? wordsAt(row, 'supplier', reading) : reading.name,
    code: wordsAt(row, 'code', reading),
    words: wordsAt(row, 'description', reading),
    isVatChanged: vat !== listVat,
  };
}

/** Ten million pounds: what a pack may cost in a price list at all. */
const MOST_PACK_PENCE = 1_000_000_000;

const isPossible = (
  { pricePence, perQuantity }: { readonly pricePence: number; readonly perQuantity: number },
  { packQuantity }: Sold,
): boolean => (pricePence * Math.max(perQuantity, packQuantity ?? 0)) / perQuantity <= MOST_PACK_PENCE;

/** Sold as a coil and the like: its price is for the whole of it, and for no more. */
const isUnbroken = ({ kind, perQuantity, packQuantity }: Sold): boolean =>
  kind !== null && perQuantity === packQuantity;

/**
 * Reads a row as an offer of an item: its price, exactly as written, less the discount, with the firm's list's value added
 * tax, then in whole pence, half up. A price below £1 that is no whole number of pence is held for ten times as much, a
 * hundred or a thousand, so that it is never off by more than half a percent.
 *
 * @param unit what the item is counted in; what the row says must fit it.
 */
export function offerOf(
  row: SheetRow,
  unit: Price['unit'],
  reading: ListReading,
  listVat: Prices['vat'],
): RowOffer {
  try {
    return { ok: true, offer: offered(row, unit, reading, listVat) };
  } catch (error) {
    if (error instanceof Untold)
      return { ok: false, role: error.role, message: error.message, remedy: error.remedy };
    throw error;
  }
}
