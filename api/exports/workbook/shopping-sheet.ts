import type { Worksheet } from 'exceljs';
import { entryMarks } from '#drawing/shopping/entry-marks.ts';
import { type ShoppingSheet, UNCOUNTED_TITLE } from '#drawing/shopping/shopping-sheet.ts';
import { offerWords } from '#engine/price/buying/offer-words.ts';
import { offersOf } from '#engine/price/buying/offers-of.ts';
import type { Offer, PurchaseLine } from '#engine/price/buying/purchase.ts';
import { type CellContent, pounds, writeCell } from './cell-value.ts';
import { type CutRows, cutLayout, cutSum } from './cut-layout.ts';
import { addTableSheet, type Column, FIRST_ROW, writeRow } from './table-sheet.ts';
import { nameCell, sheetNames, type WorkbookContext } from './workbook-context.ts';

const columns: readonly Column[] = [
  { header: 'Counter', width: 20, role: 'text' },
  { header: 'Description', width: 42, role: 'text' },
  { header: 'Unit', width: 6, role: 'text' },
  { header: 'Wanted', width: 9, role: 'number', format: 'quantity' },
  { header: 'From the van', width: 8, role: 'number', format: 'quantity' },
  { header: 'Sold as', width: 26, role: 'text' },
  { header: 'holds', width: 8, role: 'number', format: 'quantity' },
  { header: 'To buy', width: 8, role: 'input', format: 'quantity' },
  { header: 'Price of one', width: 10, role: 'input', format: 'money' },
  { header: 'Cost', width: 11, role: 'number', format: 'money' },
  { header: 'Bought', width: 9, role: 'number', format: 'quantity' },
  { header: 'Left over', width: 9, role: 'number', format: 'quantity' },
  { header: 'For', width: 40, role: 'text' },
  { header: 'Note', width: 44, role: 'text' },
  { header: 'Item', width: 22, role: 'text' },
];

/** Where lines stand that the price list names no counter for. */
const NO_COUNTER = 'No counter named';
const counterWords = (counter: string): string => (counter === '' ? NO_COUNTER : counter);

/** A line of the plan with where its figures come from. */
interface Source {
  readonly line: PurchaseLine;
  /** Its row on the bill; null for what is bought in case only. */
  readonly billRow: number | null;
  /** How many more than the bill has are wanted in case, and taken from the van; null where the bill counts otherwise. */
  readonly wantedBeyond: number | null;
  readonly vanBeyond: number | null;
  readonly cutRows: CutRows | null;
  /** Every way to buy it, the price list's own row first. */
  readonly offers: readonly Offer[];
}

/** What a line needs beyond what is counted, where the bill has what is counted. */
function beyond(wanted: number, counted: number | undefined, onTheBill: number | undefined): number | null {
  if (counted === undefined || counted !== onTheBill) return null;
  return Math.round((wanted - counted) * 1e6) / 1e6;
}

function sourcesOf({ scheme, shopping, library }: WorkbookContext): readonly Source[] {
  const { bill } = scheme.price;
  const { lines } = shopping.purchase;
  const layout = cutLayout(lines);
  return lines.map((line) => {
    const isThis = ({ item, unit }: { readonly item: string; readonly unit: string }) =>
      item === line.item && unit === line.unit;
    const at = bill.findIndex(isThis);
    const counted = scheme.purchase.lines.find(isThis);
    const price = library.prices.items.find(isThis);
    return {
      line,
      billRow: at < 0 ? null : FIRST_ROW + at,
      wantedBeyond: beyond(line.needed, counted?.needed, bill[at]?.quantity),
      vanBeyond: beyond(line.fromVan, counted?.fromVan, bill[at]?.fromStock),
      cutRows: layout.get(line) ?? null,
      offers: line.priced && price !== undefined ? offersOf(price) : [],
    };
  });
}

/** An offer holds so much of the line's unit. */
const holds = ({ quantity }: Offer, unit: PurchaseLine['unit']): number =>
  unit === 'm' ? quantity / 1000 : quantity;

/** Where only one size is sold and any number of it, how many follows from what is wanted; else it was weighed up. */
function followsWanted({ cutRows, offers: [only, ...others] }: Source): boolean {
  return cutRows === null && others.length === 0 && (only?.least ?? 0) <= (only?.quantity ?? 0);
}

/** One row of the sheet: a size of a line that is bought, or that would be. */
interface Bought {
  readonly offer: Offer | null;
  readonly count: number;
  readonly pence: number;
}

function boughtRows(source: Source): readonly Bought[] {
  const { packs } = source.line;
  if (packs.length > 0) return packs;
  const [only] = source.offers;
  return [{ offer: followsWanted(source) ? (only ?? null) : null, count: 0, pence: 0 }];
}

const onBill = (column: string, row: number): string => `'${sheetNames.bill}'!${column}${row}`;

/** All that is cut of a line, m; where more is bought in case, as the case that leads cuts it. */
function cutM({ cuts, unserved }: PurchaseLine): number {
  const pieces = [...cuts.flatMap((from) => from.cuts), ...unserved];
  return pieces.reduce((sum, { lengthMm }) => sum + lengthMm, 0) / 1000;
}

/** What stands on the bill, with what is there in case put to it. */
function fromBill(place: string, beyondIt: number): string {
  if (beyondIt === 0) return place;
  return `ROUND(${place}${beyondIt < 0 ? '-' : '+'}${Math.abs(beyondIt)},6)`;
}

function wantedCells({ line, billRow, wantedBeyond, vanBeyond, cutRows }: Source): readonly CellContent[] {
  if (cutRows !== null) {
    const sum = (first: number, last: number) => cutSum('F', first, last, sheetNames.cuts);
    return [
      { formula: sum(cutRows.first, cutRows.last), result: cutM(line) },
      { formula: sum(cutRows.first, cutRows.vanLast), result: line.fromVan },
    ];
  }
  const cell = (column: string, beyondIt: number | null, result: number): CellContent =>
    billRow === null || beyondIt === null
      ? result
      : { formula: fromBill(onBill(column, billRow), beyondIt), result };
  return [cell('E', wantedBeyond, line.needed), cell('G', vanBeyond, line.fromVan)];
}

function countCell(source: Source, bought: Bought, row: number): CellContent {
  if (bought.offer === null) return null;
  if (!followsWanted(source)) return bought.count;
  return { formula: `ROUNDUP(ROUND(MAX(0,D${row}-E${row})/G${row},6),0)`, result: bought.count };
}

/** The price list's own row is priced by the bill; its further sizes stand here. Thousandths of a penny, as they are bought by. */
function priceCell({ offers: [own], billRow }: Source, offer: Offer, row: number): CellContent {
  const result = offer.millipence / 1e5;
  if (offer.key !== own?.key || billRow === null) return result;
  return { formula: `ROUND(${onBill('K', billRow)}*G${row}/${onBill('L', billRow)},5)`, result };
}

function sizeCells(source: Source, bought: Bought, row: number): readonly CellContent[] {
  const { offer, count, pence } = bought;
  const { unit } = source.line;
  if (offer === null) return [null, null, null, null, null, null];
  const held = holds(offer, unit);
  return [
    offerWords(offer, unit),
    held,
    countCell(source, bought, row),
    priceCell(source, offer, row),
    { formula: `ROUND(ROUND(H${row}*I${row},6),2)`, result: pounds(pence) },
    { formula: `ROUND(H${row}*G${row},6)`, result: Math.round(count * held * 1e6) / 1e6 },
  ];
}

/** What is left of all sizes of a line together; what nothing is long enough for is not taken off. */
function leftCell({ line, cutRows }: Source, first: number, last: number): CellContent {
  if (!line.priced) return null;
  const unserved = cutRows === null ? '0' : cutSum('F', cutRows.unservedFirst, cutRows.last, sheetNames.cuts);
  return {
    formula: `ROUND(SUM(K${first}:K${last})+E${first}-D${first}+${unserved},6)`,
    result: line.leftOver,
  };
}

/** What the list says of a line wherever it is had, then what the sheet cannot serve and what would nearly do. */
function noteOf({ line }: Source, shopping: ShoppingSheet): string | null {
  const marks = (['van', 'counter', 'unlisted'] as const).flatMap((place) =>
    entryMarks({ key: `${place}/${line.item}` }, shopping),
  );
  const [near] = line.nearMisses;
  const notes = [
    ...marks,
    ...(line.priced ? [] : ['Not in the price list: not in the sum']),
    ...(line.priced && line.unserved.length > 0 ? ['Some pieces are longer than anything sold'] : []),
    ...(near === undefined ? [] : [`A ${near.words} is short by ${near.shortMm / 1000} m`]),
  ];
  return notes.length === 0 ? null : notes.join('; ');
}

function rowsOf(source: Source, first: number, { labelOf, shopping }: WorkbookContext) {
  const { line } = source;
  const sizes = boughtRows(source);
  return sizes.map((bought, index): readonly CellContent[] => [
    counterWords(line.counter),
    line.description,
    line.unit,
    ...(index === 0 ? wantedCells(source) : [null, null]),
    ...sizeCells(source, bought, first + index),
    index === 0 ? leftCell(source, first, first + sizes.length - 1) : null,
    index === 0 ? line.causes.map(labelOf).join(', ') : null,
    index === 0 ? noteOf(source, shopping) : null,
    line.item,
  ]);
}

/** A counter's rows on the sheet and what they cost. */
interface CounterRows {
  readonly counter: string;
  readonly first: number;
  readonly last: number;
  readonly pence: number;
}

/**
 * What each counter comes to, then all of them.
 *
 * @returns the row of the last sum.
 */
function writeTotals(context: WorkbookContext, sheet: Worksheet, counters: readonly CounterRows[]): number {
  const last = counters.at(-1)?.last ?? FIRST_ROW - 1;
  const start = last + 2;
  counters.forEach((counter, index) => {
    const formula = `ROUND(SUM(J${counter.first}:J${counter.last}),2)`;
    writeCell(sheet.getCell(start + index, 1), counterWords(counter.counter), 'text');
    writeCell(sheet.getCell(start + index, 2), 'All of this counter', 'text');
    writeCell(
      sheet.getCell(start + index, 10),
      { formula, result: pounds(counter.pence) },
      'number',
      'money',
    );
  });
  const totalRow = start + counters.length;
  columns.forEach((_column, index) => {
    writeCell(sheet.getCell(totalRow, index + 1), null, 'total');
  });
  writeCell(sheet.getCell(totalRow, 2), 'To pay at the counters', 'total');
  const formula = counters.length === 0 ? '0' : `ROUND(SUM(J${start}:J${totalRow - 1}),2)`;
  const result = pounds(context.shopping.purchase.pence);
  writeCell(sheet.getCell(totalRow, 10), { formula, result }, 'total', 'money');
  nameCell(context.book, 'ShoppingTotal', sheetNames.shopping, `J${totalRow}`);
  return totalRow;
}

/** What people read under the list: what nobody counted, what is still open and not on it, what can go back, what was taken instead. */
function remarks({ stillOpen, inCase, instead, uncounted }: ShoppingSheet): readonly Remark[] {
  const taken = [
    ...instead.strays.map(({ words }) => `No longer on the list. ${words}`),
    ...(instead.sumWords === '' ? [] : [instead.sumWords]),
  ];
  const blocks = [
    { heading: UNCOUNTED_TITLE, lines: uncounted },
    { heading: 'Still open', lines: [stillOpen.words, ...stillOpen.lines].filter((line) => line !== '') },
    ...inCase.goesBack.map(({ title, lines }, index) => ({
      heading: index === 0 ? 'What can go back unopened' : null,
      lines: [`${title}:`, ...lines],
    })),
    { heading: 'Taken instead', lines: taken },
  ];
  return blocks.filter(({ lines }) => lines.length > 0);
}

/** A few sentences, a row each, under a heading or under those before. */
interface Remark {
  readonly heading: string | null;
  readonly lines: readonly string[];
}

function writeRemarks(sheet: Worksheet, start: number, shopping: ShoppingSheet): void {
  let row = start;
  for (const { heading, lines } of remarks(shopping)) {
    if (heading !== null) writeCell(sheet.getCell(row++, 1), heading, 'heading');
    for (const line of lines) writeCell(sheet.getCell(row++, 1), line, 'note');
  }
}

/**
 * The shopping sheet: what the firm buys, by counter, after the van, each size of an item in a row of its own. Counts
 * that were weighed up against each other may be changed; where one size alone is sold they follow the bill. It is
 * the firm's outlay with tax as the price list has it, and charges no job.
 */
export function addShoppingSheet(context: WorkbookContext): void {
  const tax = context.library.prices.vat === 'included' ? 'with VAT' : 'without VAT';
  const bearsVat = context.library.prices.vat === 'excluded' && context.scheme.price.vat === 'not-registered';
  const note =
    'Shaded cells may be changed; the rest follows, what is wanted from the bill, with what is there in case, and from the cut list. The firm’s ' +
    `outlay, ${tax} as the price list has it${bearsVat ? ', though the firm pays it over the counter and does not get it back' : ''}: the job is charged by the bill. Below nought left over: too little.`;
  const sheet = addTableSheet(context, sheetNames.shopping, note, columns);
  const counters: CounterRows[] = [];
  let row = FIRST_ROW;
  for (const source of sourcesOf(context)) {
    const first = row;
    for (const cells of rowsOf(source, first, context)) writeRow(sheet, row++, columns, cells);
    const { counter, pence } = source.line;
    const before = counters.at(-1);
    if (before?.counter !== counter) counters.push({ counter, first, last: row - 1, pence });
    else counters.splice(-1, 1, { ...before, last: row - 1, pence: before.pence + pence });
  }
  writeRemarks(sheet, writeTotals(context, sheet, counters) + 2, context.shopping);
}
