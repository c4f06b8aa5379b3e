import { readFileSync } from 'node:fs';
import type ExcelJS from 'exceljs';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { offersOf } from '#engine/price/buying/offers-of.ts';
import { planPurchase } from '#engine/price/buying/plan-purchase.ts';
import type { PurchaseLine, PurchasePlan } from '#engine/price/buying/purchase.ts';
import { packingOf } from '#exports/packing-of.ts';
import { type Papers, papersOf } from '#exports/papers.ts';
import { shoppingOf } from '#exports/shopping-of.ts';
import { workbookOf } from '#exports/workbook.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { readJobText } from '#model/read-job.ts';
import { type CalculatedBook, openBook, placeOfName, recalculated } from './spreadsheet.ts';

const SEED = 20_261_126;
const FIRST_ROW = 4;

function demoJob(name: string): Job {
  const read = readJobText(readFileSync(`data/jobs/${name}.json`, 'utf8'));
  if (!read.ok) throw new Error(`${name}: ${read.faults.length} faults`);
  return read.job;
}

const plain = demoLibrary();

/** Each thing in the one size of its own row, so that how many are bought follows from the quantity. */
const oneSize: Library = {
  ...plain,
  prices: { ...plain.prices, items: plain.prices.items.map(({ packs: _further, ...price }) => price) },
};

/** Some of what is cut and some of what is counted is in the van; one thing is on no list, and nothing is as long as a run. */
const withVan: Job = {
  ...demoJob('saltglass-row'),
  stock: [
    { item: 'cable-flat-2.5-1.5', quantity: 14, lengthsM: [9, 5] },
    { item: 'screw-and-plug', quantity: 500 },
    { item: 'socket-twin', quantity: 1 },
  ],
  actuals: {
    stages: [{ stage: 'first-fix', minutes: 500 }],
    tasks: [{ task: 'minor-works-certificate', minutes: 33.5 }],
    used: [],
  },
};
type Row = Library['prices']['items'][number];

const withRows = (prices: Partial<Library['prices']>, rowOf: (row: Row) => Row): Library => ({
  ...plain,
  prices: {
    ...plain.prices,
    ...prices,
    items: plain.prices.items.filter(({ item }) => item !== 'grommet-20').map(rowOf),
  },
});

/** Coils that some runs are longer than, two sizes of a pack that are bought together, few counters, a thing on no list. */
const oddSizes: Library = withRows({ vat: 'included' }, ({ packs: _further, counter, ...row }) => {
  if (row.item === 'cable-flat-2.5-1.5')
    return { ...row, kind: 'coil', packQuantity: 3, perQuantity: 3, pricePence: 399 };
  if (row.unit === 'each' && (row.packQuantity ?? 1) > 1)
    return {
      ...row,
      packQuantity: 7,
      perQuantity: 7,
      pricePence: 70,
      kind: 'pack',
      packs: [{ kind: 'pack', quantity: 2, pricePence: 25 }],
    };
  return row.unit === 'm' && counter !== undefined ? { ...row, counter } : row;
});

/** Everything that is open is bought for, with things in the van. */
const inCase = (job: Job, library: Library): Job => {
  const questions = packingOf(job, library, firstPapers(job, library))?.plan.questions ?? [];
  return {
    ...job,
    packFor: questions.map(({ id, outcomes }) => ({ question: id, outcomes: outcomes.map((one) => one.id) })),
  };
};

const variants: readonly { readonly name: string; readonly job: Job; readonly library: Library }[] = [
  { name: 'the first demo job with things in the van', job: withVan, library: plain },
  { name: 'the job as quoted for', job: demoJob('saltglass-row-quoting'), library: plain },
  { name: 'the second demo job', job: demoJob('fernlow-close'), library: plain },
  { name: 'the third demo job', job: demoJob('quarrel-court'), library: oneSize },
  { name: 'odd sizes, and coils too short for some runs', job: demoJob('fernlow-close'), library: oddSizes },
  { name: 'all that is open bought for', job: inCase(withVan, plain), library: plain },
  {
    name: 'all that is open bought for, each thing in one size',
    job: inCase(demoJob('fernlow-close'), oneSize),
    library: oneSize,
  },
  {
    name: 'an empty price list',
    job: withVan,
    library: { ...plain, prices: { ...plain.prices, items: [] } },
  },
];

function firstPapers(job: Job, library: Library): Papers {
  const schemeId = job.schemes[0]?.id ?? null;
  const papers = papersOf(job, library, { date: '2026-11-20', revision: 3, schemeId });
  if (papers === null) throw new Error('The job has no scheme.');
  return papers;
}

/** What is bought for the first scheme, in case and all. */
const purchaseOf = (job: Job, library: Library): PurchasePlan =>
  shoppingOf(firstPapers(job, library), library, job).purchase;

function bookOf(job: Job, library: Library): Promise<Uint8Array> {
  const papers = firstPapers(job, library);
  return workbookOf(papers.drawn, papers.shown.id, {
    library,
    state: papers.state,
    shopping: shoppingOf(papers, library, job),
  });
}

/** The rows of a table sheet as spreadsheets show them, until a row has nothing in the column that names its item. */
function rowsOf(book: CalculatedBook | undefined, sheet: string, columns: string, itemColumn: string) {
  const rows: (string | number | null)[][] = [];
  for (let row = FIRST_ROW; book?.value(sheet, `${itemColumn}${row}`) != null; row++)
    rows.push([...columns].map((column) => book.value(sheet, `${column}${row}`)));
  return rows;
}

const shopping = (book: CalculatedBook | undefined) => rowsOf(book, 'Shopping list', 'ODEGHIJKL', 'O');
const cuts = (book: CalculatedBook | undefined) => rowsOf(book, 'Cut list', 'ICFGH', 'I');
const mm = (metres: unknown): number => Math.round(Number(metres) * 1000);
const pence = (sum: unknown): number => Math.round(Number(sum) * 1e6) / 1e4;

/** What the sheet shows of a line: figures of its rows added up. */
function shownOf(rows: readonly (readonly (string | number | null)[])[], { item }: PurchaseLine) {
  const own = rows.filter(([named]) => named === item);
  const sum = (at: number) => Math.round(own.reduce((all, row) => all + Number(row[at] ?? 0), 0) * 1e6) / 1e6;
  return { needed: sum(1), fromVan: sum(2), pence: pence(sum(6)), boughtQuantity: sum(7), leftOver: sum(8) };
}

/** Of what is cut to length and bought in case the sheet wants what the case that leads cuts, as the cut list has it. */
function told(line: PurchaseLine) {
  const { fromVan, pence: cost, boughtQuantity, leftOver } = line;
  const pieces = [...line.cuts.flatMap((from) => from.cuts), ...line.unserved];
  const cutMm = pieces.reduce((sum, { lengthMm }) => sum + lengthMm, 0);
  const needed = pieces.length === 0 ? line.needed : cutMm / 1000;
  return { needed, fromVan, pence: cost, boughtQuantity, leftOver };
}

/** Changes that a person may make, and that the engine can be asked to make too. */
interface Edits {
  readonly quantities: readonly { readonly line: number; readonly to: number }[];
  readonly prices: readonly { readonly line: number; readonly to: number }[];
}

const anyEdits = (lines: number): fc.Arbitrary<Edits> => {
  const line = fc.nat({ max: lines - 1 });
  return fc.record({
    quantities: fc.array(fc.record({ line, to: fc.integer({ min: 0, max: 900 }).map((n) => n / 10) }), {
      minLength: 3,
      maxLength: 6,
    }),
    prices: fc.array(fc.record({ line, to: fc.nat({ max: 9999 }) }), { minLength: 3, maxLength: 6 }),
  });
};

describe('the shopping and the cut list recalculated by a spreadsheet', () => {
  const purchases = variants.map(({ job, library }) => purchaseOf(job, library));
  let untouched: readonly CalculatedBook[] = [];
  let edited: readonly CalculatedBook[] = [];
  let byHand: CalculatedBook | undefined;

  const job = demoJob('saltglass-row');
  const base = firstPapers(job, oneSize).shown;
  /** Lines whose packs follow the bill: what is cut to length is weighed up piece by piece. */
  const counted = base.purchase.lines.filter(({ cuts: list, item }) => {
    const price = oneSize.prices.items.find((one) => one.item === item);
    const [offer] = price === undefined ? [] : offersOf(price);
    return list.length === 0 && offer !== undefined && (offer.least ?? 0) <= offer.quantity;
  });
  const cases = fc.sample(anyEdits(counted.length), { seed: SEED, numRuns: 10 });
  const rowOfBill = (item: string) => FIRST_ROW + base.price.bill.findIndex((line) => line.item === item);

  beforeAll(async () => {
    const books = await Promise.all(variants.map(({ job: one, library }) => bookOf(one, library)));
    const bytes = await bookOf(job, oneSize);
    const changed = await Promise.all(
      cases.map(async ({ quantities, prices }) => {
        const book = await openBook(bytes);
        const bill = sheetOf(book, 'Bill of materials');
        for (const { line, to } of quantities) bill.getCell(`E${rowOfBill(itemAt(line))}`).value = to;
        for (const { line, to } of prices) bill.getCell(`K${rowOfBill(itemAt(line))}`).value = to / 100;
        return new Uint8Array(await book.xlsx.writeBuffer());
      }),
    );
    const all = await recalculated([...books, ...changed, await editedByHand(books[0] ?? bytes)]);
    untouched = all.slice(0, books.length);
    edited = all.slice(books.length, -1);
    byHand = all.at(-1);
  }, 240_000);

  const itemAt = (line: number): string => counted[line]?.item ?? '';

  it.each(variants.map(({ name }, index) => ({ name, index })))(
    'come line by line to what the engine buys for $name',
    ({ index }) => {
      const { lines, pence: total } = purchases[index] ?? { lines: [], pence: 0 };
      const rows = shopping(untouched[index]);
      expect(lines.map((line) => [line.item, shownOf(rows, line)])).toEqual(
        lines.map((line) => [line.item, told(line)]),
      );
      expect(pence(untouched[index]?.named('ShoppingTotal'))).toBe(total);
      expect(lines.length).toBeGreaterThan(15);
    },
  );

  it.each(variants.map(({ name }, index) => ({ name, index })))(
    'cut every length as the engine does for $name',
    ({ index }) => {
      const lines = purchases[index]?.lines ?? [];
      const rows = cuts(untouched[index]);
      const wanted = lines.flatMap((line) => [
        ...line.cuts.flatMap((from) =>
          from.cuts.map(({ lengthMm }, at) =>
            at === 0
              ? [line.item, from.lengthMm, lengthMm, from.lengthMm - from.leftMm, from.leftMm]
              : [line.item, 0, lengthMm, 0, 0],
          ),
        ),
        ...line.unserved.map(({ lengthMm }) => [line.item, 0, lengthMm, 0, 0]),
      ]);
      expect(rows.map(([item, ...figures]) => [item, ...figures.map(mm)])).toEqual(wanted);
    },
  );

  it('hold cases with several sizes of one thing, things from the van, and pieces that nothing is long enough for', () => {
    const lines = purchases.flatMap((purchase) => purchase.lines);
    expect(lines.some(({ packs }) => packs.length > 1)).toBe(true);
    expect(lines.some(({ cuts: list }) => list.some(({ from }) => from.startsWith('van/')))).toBe(true);
    expect(lines.some(({ unserved }) => unserved.length > 0)).toBe(true);
    expect(lines.some(({ priced }) => !priced)).toBe(true);
    expect(lines.some(({ counter }) => counter === '')).toBe(true);
  });

  it.each(cases.map((edits, index) => ({ edits, index })))(
    `come to what the engine buys after changes of the bill by hand, case $index of seed ${SEED}`,
    ({ edits: { quantities, prices }, index }) => {
      const quantityOf = new Map(quantities.map(({ line, to }) => [itemAt(line), to]));
      const priceOf = new Map(prices.map(({ line, to }) => [itemAt(line), to]));
      const plan = planPurchase({
        takeoff: base.takeoff.map((line) => ({
          ...line,
          quantity: quantityOf.get(line.item) ?? line.quantity,
        })),
        prices: {
          ...oneSize.prices,
          items: oneSize.prices.items.map((price) => ({
            ...price,
            pricePence: priceOf.get(price.item) ?? price.pricePence,
          })),
        },
        stock: job.stock,
        depth: 'whole',
      });
      const rows = shopping(edited[index]);
      const own = plan.lines.filter(({ item }) => counted.some((line) => line.item === item));
      expect(own.map((line) => [line.item, shownOf(rows, line)])).toEqual(
        own.map((line) => [line.item, told(line)]),
      );
      expect(pence(edited[index]?.named('ShoppingTotal'))).toBe(plan.pence);
      expect(plan.pence).not.toBe(base.purchase.pence);
    },
  );

  it('follow a pack, a price and a cut that are changed by hand, counter and all', () => {
    const before = shopping(untouched[0]);
    const after = shopping(byHand);
    const [row = -1] = handRows(untouched[0]);
    const [item, , , , count, price] = before[row] ?? [];
    expect(after[row]?.slice(4, 7)).toEqual([
      Number(count) + 2,
      12.34,
      Math.round((Number(count) + 2) * 1234) / 100,
    ]);
    const moved = pence(after[row]?.[6]) - pence(Number(count) * Number(price));
    const cost = pence(byHand?.named('ShoppingTotal')) - pence(untouched[0]?.named('ShoppingTotal'));
    expect(Math.abs(cost - moved)).toBeLessThan(1);
    expect(Number(after[row]?.[7])).toBeGreaterThan(Number(before[row]?.[7]));
    expect(counterTotals(byHand).reduce((sum, total) => sum + total, 0)).toBe(
      pence(byHand?.named('ShoppingTotal')),
    );
    expect(counterTotals(byHand).length).toBeGreaterThan(1);
    const [cut] = cuts(untouched[0]);
    const [changed] = cuts(byHand);
    expect(mm(changed?.[4])).toBe(mm(cut?.[4]) - 250);
    const wanted = (rows: typeof before) => rows.find(([named]) => named === cut?.[0])?.[1];
    expect(mm(wanted(after))).toBe(mm(wanted(before)) + 250);
    expect(item).not.toBe(cut?.[0]);
  });

  it('has what the job took beside what was reckoned, by task and by stage', () => {
    const { labour } = firstPapers(withVan, plain).shown;
    const at = labour.findIndex(({ task }) => task === 'minor-works-certificate');
    const cell = (column: string, row: number) => untouched[0]?.value('Labour', `${column}${row}`);
    const reckoned = labour[at]?.typicalMin ?? 0;
    expect(cell('L', FIRST_ROW + at)).toBe(33.5);
    expect(cell('M', FIRST_ROW + at)).toBe(Math.round((33.5 - reckoned) * 100) / 100);
    expect(cell('M', FIRST_ROW + (at === 0 ? 1 : 0)) || null).toBeNull();
    const stageRow = Array.from({ length: 8 }, (_, i) => labour.length + 9 + i).find(
      (row) => cell('A', row) === 'First fix',
    );
    expect([cell('L', stageRow ?? 1), cell('J', stageRow ?? 1)]).toEqual([500, 8.33]);
    expect(cell('M', stageRow ?? 1)).toBe(Math.round((500 - Number(cell('K', stageRow ?? 1))) * 100) / 100);
  });
});

/** Rows of the shopping list whose count and price are written down, not worked out: of such the first that is not cut. */
function handRows(book: CalculatedBook | undefined): readonly number[] {
  const cutItems = new Set(cuts(book).map(([item]) => item));
  return shopping(book).flatMap(([item, , , , count], row) =>
    !cutItems.has(item ?? '') && Number(count) > 0 ? [row] : [],
  );
}

async function editedByHand(bytes: Uint8Array): Promise<Uint8Array> {
  const book = await openBook(bytes);
  const [row = 0] = handRows(await shownBy(book));
  const list = sheetOf(book, 'Shopping list');
  const count = list.getCell(`H${FIRST_ROW + row}`);
  count.value = Number(count.result ?? count.value) + 2;
  list.getCell(`I${FIRST_ROW + row}`).value = 12.34;
  const cut = sheetOf(book, 'Cut list').getCell(`F${FIRST_ROW}`);
  cut.value = Number(cut.result ?? cut.value) + 0.25;
  return new Uint8Array(await book.xlsx.writeBuffer());
}

/** A book as it was written, cell by cell, without a spreadsheet. */
async function shownBy(book: ExcelJS.Workbook): Promise<CalculatedBook> {
  const value = (sheet: string, cell: string) => {
    const at = sheetOf(book, sheet).getCell(cell);
    const content = at.formula === undefined ? at.value : at.result;
    return typeof content === 'number' || typeof content === 'string' ? content : null;
  };
  return {
    value,
    named: (name) => {
      const { sheet, cell } = placeOfName(book, name);
      return value(sheet, cell);
    },
  };
}

function sheetOf(book: ExcelJS.Workbook, name: string): ExcelJS.Worksheet {
  const sheet = book.getWorksheet(name);
  if (sheet === undefined) throw new Error(`The workbook has no sheet "${name}".`);
  return sheet;
}

/** The sums of the counters, pence, under the list. */
function counterTotals(book: CalculatedBook | undefined): readonly number[] {
  const start = FIRST_ROW + shopping(book).length + 1;
  const totals: number[] = [];
  for (let row = start; book?.value('Shopping list', `A${row}`) != null; row++)
    totals.push(pence(book.value('Shopping list', `J${row}`)));
  return totals;
}
