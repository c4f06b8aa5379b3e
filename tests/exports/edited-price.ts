import type ExcelJS from 'exceljs';
import fc from 'fast-check';
import { chosenMultipliers, libraryFor, multipliersOf } from '#engine/labour/multipliers.ts';
import { minutesAsTold } from '#engine/labour/task-minutes.ts';
import type { PriceRequest } from '#engine/price/price-scheme.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { cableItem } from '#engine/takeoff/cable-lines.ts';
import { quantityWithWaste } from '#engine/takeoff/demand.ts';
import type { TakeoffLine } from '#engine/takeoff/line.ts';
import type { Run } from '#engine/ways/run.ts';
import type { Library } from '#model/library.ts';
import { placeOfName } from './spreadsheet.ts';

/** Rows above the first line of the bill and of the labour sheet. */
const ROWS_ABOVE = 3;

/** A change that a person may make in the workbook, and that the engine can be asked to make too. */
export type Edit =
  | { readonly kind: 'quantity' | 'stock' | 'price'; readonly line: number; readonly to: number }
  | { readonly kind: 'length'; readonly run: number; readonly to: number }
  | { readonly kind: 'task' | 'norm'; readonly line: number; readonly to: number }
  | { readonly kind: 'markup' | 'contingency' | 'rate' | 'travel' | 'minimum'; readonly to: number }
  | { readonly kind: 'call-out' | 'overhead' | 'deposit'; readonly to: number }
  | { readonly kind: 'factor'; readonly to: number }
  | { readonly kind: 'overhead-day'; readonly to: number; readonly hours: number }
  | { readonly kind: 'basis'; readonly to: 'charged' | 'cost'; readonly on: 'materials' | 'all' }
  | { readonly kind: 'vat'; readonly to: 'standard' | 'reduced' | 'zero' };

const tenths = (most: number) => fc.integer({ min: 0, max: most * 10 }).map((steps) => steps / 10);
const hundredths = (most: number) => fc.integer({ min: 0, max: most * 100 }).map((steps) => steps / 100);

/** How much of a workbook can be edited: lines that were counted, all lines of its bill, all tasks. */
export interface Editable {
  readonly counted: number;
  readonly bill: number;
  readonly tasks: number;
  /** Runs of the cable schedule. */
  readonly runs: number;
}

/**
 * Edits of a workbook; every kind of edit is among them. A sum of extra work has a price alone: it is not counted, nor in the
 * van.
 */
export function anyEdits({ counted, bill, tasks, runs }: Editable): fc.Arbitrary<readonly Edit[]> {
  const line = fc.nat({ max: counted - 1 });
  const task = fc.nat({ max: tasks - 1 });
  const run = fc.nat({ max: runs - 1 });
  const kind = <K extends string>(word: K) => fc.constant(word);
  return fc.tuple(
    // Lengths first: a quantity that is typed over on the bill stands, whatever the schedule says then.
    fc.record({ kind: kind('length'), run, to: hundredths(40) }),
    fc.record({ kind: kind('length'), run, to: hundredths(40) }),
    fc.record({ kind: kind('quantity'), line, to: tenths(150) }),
    fc.record({ kind: kind('quantity'), line, to: tenths(30) }),
    fc.record({ kind: kind('stock'), line, to: tenths(20) }),
    fc.record({ kind: kind('price'), line, to: fc.nat({ max: 9999 }) }),
    fc.record({
      kind: kind('price'),
      line: fc.integer({ min: Math.min(counted, bill - 1), max: bill - 1 }),
      to: fc.nat({ max: 9999 }),
    }),
    fc.record({ kind: kind('norm'), line: fc.constant(tasks - 1), to: hundredths(200) }),
    fc.record({ kind: kind('task'), line: task, to: tenths(20) }),
    fc.record({ kind: kind('norm'), line: task, to: hundredths(60) }),
    fc.record({ kind: kind('markup'), to: hundredths(90) }),
    fc.record({ kind: kind('contingency'), to: hundredths(20) }),
    fc.record({ kind: kind('rate'), to: fc.integer({ min: 1000, max: 9999 }) }),
    fc.record({ kind: kind('travel'), to: fc.integer({ min: 1, max: 200 }) }),
    fc.record({ kind: kind('minimum'), to: fc.constantFrom(0, 150_000, 300_000) }),
    fc.record({ kind: kind('call-out'), to: fc.constantFrom(0, 4500, 8250) }),
    fc.record({
      kind: kind('basis'),
      to: fc.constantFrom('charged' as const, 'cost' as const),
      on: fc.constantFrom('materials' as const, 'all' as const),
    }),
    fc.oneof(
      fc.record({ kind: kind('overhead'), to: hundredths(30) }),
      fc.record({
        kind: kind('overhead-day'),
        to: fc.integer({ min: 1, max: 9999 }),
        hours: fc.constantFrom(6, 7.5, 8),
      }),
    ),
    fc.record({
      kind: kind('factor'),
      to: fc.integer({ min: 50, max: 250 }).map((hundred) => hundred / 100),
    }),
    fc.record({ kind: kind('deposit'), to: hundredths(50) }),
    fc.record({
      kind: kind('vat'),
      to: fc.constantFrom('standard' as const, 'reduced' as const, 'zero' as const),
    }),
  );
}

/** What the engine priced a scheme of an estimate from, and the cables that are laid for it. */
export function requestOf(scheme: SchemeEstimate, library: Library): EditedRequest {
  const { job } = scheme.worked;
  return {
    runs: scheme.runs,
    takeoff: scheme.takeoff,
    labour: scheme.labour,
    library,
    terms: { ...job.terms, contingencyPercent: scheme.price.contingencyPercent },
    stock: job.stock,
    extras: job.extras,
    sums: scheme.price.other
      .map(({ sum }) => sum)
      .filter(
        (sum) => !['call-out', 'travel', 'parking', 'overhead', 'profit', 'minimum-charge'].includes(sum),
      ),
    gaps: [],
  };
}

/** What is priced, and the runs whose cable is counted. */
export interface EditedRequest extends PriceRequest {
  readonly runs: readonly Run[];
}

function withPrice(library: Library, item: string | undefined, pricePence: number): Library {
  const items = library.prices.items.map((price) => (price.item === item ? { ...price, pricePence } : price));
  return { ...library, prices: { ...library.prices, items } };
}

function withNorm(library: Library, task: string | undefined, typicalMin: number): Library {
  const tasks = library.norms.tasks.map((norm) => (norm.task === task ? { ...norm, typicalMin } : norm));
  return { ...library, norms: { ...library.norms, tasks } };
}

/** The price of a line of the bill: of what was counted by the price list, of extra work its own sum. */
function withLinePrice(request: EditedRequest, line: number, pricePence: number): EditedRequest {
  const { takeoff, library, extras = [] } = request;
  if (line < takeoff.length)
    return { ...request, library: withPrice(library, takeoff[line]?.item, pricePence) };
  const sums = extras.filter(({ materialsPence = 0 }) => materialsPence > 0);
  const id = sums[line - takeoff.length]?.id;
  return {
    ...request,
    extras: extras.map((one) => (one.id === id ? { ...one, materialsPence: pricePence } : one)),
  };
}

/** The typical minutes for one of a task: by the norms, of extra work its own. */
function withTypical(request: EditedRequest, line: number, typicalMin: number): EditedRequest {
  const { library, labour } = request;
  if (labour[line]?.own === undefined)
    return withMinutes({ ...request, library: withNorm(library, labour[line]?.task, typicalMin) });
  const changed = labour.map((task, at) =>
    at === line && task.own !== undefined ? { ...task, own: { ...task.own, typicalMin } } : task,
  );
  return withMinutes({ ...request, labour: changed });
}

function withNorms(request: EditedRequest, norms: Partial<Library['norms']>): EditedRequest {
  const { library } = request;
  return { ...request, library: { ...library, norms: { ...library.norms, ...norms } } };
}

/** The request with minutes by its own norms, after a quantity or a norm was changed. */
function withMinutes(request: EditedRequest): EditedRequest {
  const { norms } = libraryFor(request, request.library);
  const labour = request.labour.map((task) => ({ ...task, ...minutesAsTold(task, task.quantity, norms) }));
  return { ...request, labour };
}

/** The take-off with one run of another length, m: what is measured, its piece, and its quantity with waste. */
function takeoffAt({ takeoff, runs }: EditedRequest, edit: Extract<Edit, { kind: 'length' }>) {
  const run = runs[edit.run];
  if (run === undefined) throw new Error(`The scheme has no run ${edit.run}.`);
  return takeoff.map((line): TakeoffLine => {
    if (line.item !== cableItem(run.cable)) return line;
    const pieces = line.pieces.map((piece) =>
      piece.cause === run.id ? { ...piece, lengthMm: Math.round(edit.to * 1000) } : piece,
    );
    const measured = pieces.reduce((sum, { lengthMm }) => sum + lengthMm, 0) / 1000;
    return { ...line, pieces, measured, quantity: quantityWithWaste({ ...line, measured }) };
  });
}

/** The same change made to what the engine prices. */
export function editRequest(request: EditedRequest, edit: Edit): EditedRequest {
  const { library, terms, takeoff, labour } = request;
  switch (edit.kind) {
    case 'quantity':
      return {
        ...request,
        takeoff: takeoff.map((line, at) => (at === edit.line ? { ...line, quantity: edit.to } : line)),
      };
    case 'length':
      return { ...request, takeoff: takeoffAt(request, edit) };
    case 'stock': {
      const item = takeoff[edit.line]?.item ?? '';
      const others = request.stock.filter((stock) => stock.item !== item);
      return { ...request, stock: [...others, { item, quantity: edit.to }] };
    }
    case 'price':
      return withLinePrice(request, edit.line, edit.to);
    case 'task':
      return withMinutes({
        ...request,
        labour: labour.map((task, at) => (at === edit.line ? { ...task, quantity: edit.to } : task)),
      });
    case 'norm':
      return withTypical(request, edit.line, edit.to);
    case 'markup':
      return { ...request, terms: { ...terms, markupPercent: edit.to } };
    case 'contingency':
      return { ...request, terms: { ...terms, contingencyPercent: edit.to } };
    case 'rate':
      return { ...request, library: { ...library, norms: { ...library.norms, ratePencePerHour: edit.to } } };
    case 'travel':
      return { ...request, terms: { ...terms, travelMin: edit.to } };
    case 'minimum':
      return { ...request, terms: { ...terms, minimumPence: edit.to } };
    case 'factor': {
      const [first] = chosenMultipliers(terms, library.norms);
      const multipliers = multipliersOf(library.norms).map((one) =>
        one.id === first?.id ? { ...one, factor: edit.to } : one,
      );
      return withMinutes(withNorms(request, { multipliers }));
    }
    case 'call-out':
      return { ...request, terms: { ...terms, callOutPence: edit.to } };
    case 'deposit':
      return { ...request, terms: { ...terms, depositPercent: edit.to } };
    case 'overhead':
      return withNorms(request, { overhead: { percent: edit.to } });
    case 'overhead-day':
      return withNorms(request, { overhead: { pencePerDay: edit.to, hoursPerDay: edit.hours } });
    case 'basis':
      return {
        ...withNorms(request, { rateBasis: edit.to }),
        terms: { ...terms, profitOn: edit.on },
      };
    case 'vat':
      return { ...request, terms: { ...terms, vat: edit.to } };
  }
}

const vatRate = { standard: 0.2, reduced: 0.05, zero: 0 } as const;
const columnOf = { quantity: 'E', stock: 'F', price: 'K', task: 'D', norm: 'H' } as const;
const nameOf = {
  markup: 'MarkupPercent',
  contingency: 'ContingencyPercent',
  rate: 'LabourRate',
  travel: 'VisitTravelMinutes',
  minimum: 'MinimumCharge',
  'call-out': 'CallOut',
  overhead: 'OverheadPercent',
  deposit: 'DepositPercent',
} as const;

function setNamed(book: ExcelJS.Workbook, name: string, value: number | string): void {
  const { sheet, cell } = placeOfName(book, name);
  const target = book.getWorksheet(sheet)?.getCell(cell);
  if (target === undefined) throw new Error(`No cell ${cell} on "${sheet}".`);
  target.value = value;
}

/** The change as a person types it into the workbook. */
export function editBook(book: ExcelJS.Workbook, edit: Edit): void {
  switch (edit.kind) {
    case 'vat':
      setNamed(book, 'VatPercent', vatRate[edit.to]);
      return;
    case 'markup':
    case 'contingency':
    case 'overhead':
    case 'deposit':
      setNamed(book, nameOf[edit.kind], edit.to / 100);
      return;
    case 'factor':
      setNamed(book, 'Factor1', edit.to);
      return;
    case 'length': {
      const sheet = book.getWorksheet('Cable schedule');
      const cells: readonly (readonly [string, number])[] = [
        ['E', edit.to],
        ['F', 0],
        ['G', 0],
      ];
      if (sheet === undefined) throw new Error('The workbook lacks a sheet.');
      for (const [column, value] of cells)
        sheet.getCell(`${column}${ROWS_ABOVE + 1 + edit.run}`).value = value;
      return;
    }
    case 'overhead-day':
      setNamed(book, 'OverheadPerDay', edit.to / 100);
      setNamed(book, 'OverheadHours', edit.hours);
      return;
    case 'basis':
      setNamed(book, 'RateBasis', edit.to);
      setNamed(book, 'ProfitOn', edit.on);
      return;
    case 'rate':
    case 'call-out':
    case 'minimum':
      setNamed(book, nameOf[edit.kind], edit.to / 100);
      return;
    case 'travel':
      setNamed(book, nameOf.travel, edit.to);
      return;
    default: {
      const onBill = edit.kind === 'quantity' || edit.kind === 'stock' || edit.kind === 'price';
      const sheet = book.getWorksheet(onBill ? 'Bill of materials' : 'Labour');
      if (sheet === undefined) throw new Error('The workbook lacks a sheet.');
      const row = ROWS_ABOVE + 1 + edit.line;
      sheet.getCell(`${columnOf[edit.kind]}${row}`).value = edit.kind === 'price' ? edit.to / 100 : edit.to;
    }
  }
}
