import { readFileSync } from 'node:fs';
import ExcelJS from 'exceljs';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { demoMarks, demoNotice } from '#engine/demo-marks.ts';
import { estimate } from '#engine/estimate.ts';
import { openedUp } from '#engine/labour/opened-up.ts';
import { stageMinutes } from '#engine/labour/stage-hours.ts';
import { boughtOf } from '#engine/price/bought.ts';
import { piecesToCut } from '#engine/price/buying/pieces-of.ts';
import { priceScheme } from '#engine/price/price-scheme.ts';
import type { Totals } from '#engine/price/totals.ts';
import type { Estimate, SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { cableItem } from '#engine/takeoff/cable-lines.ts';
import type { Job, Terms } from '#model/job.ts';
import type { Library, Overhead } from '#model/library.ts';
import { readJobText } from '#model/read-job.ts';
import { ownLibrary } from '#tests/engine/own-library.ts';
import { countedBook } from './counted-book.ts';
import { anyEdits, type Edit, editBook, editRequest, requestOf } from './edited-price.ts';
import { type CalculatedBook, openBook, readBook, recalculated } from './spreadsheet.ts';

const SEED = 20_261_101;

function demoJob(name: string): Job {
  const read = readJobText(readFileSync(`data/jobs/${name}.json`, 'utf8'));
  if (!read.ok) throw new Error(`${name}: ${read.faults.length} faults`);
  return read.job;
}

/** Demo job 1 with a van that holds some of what it takes, and with work that is not on its drawing. */
const saltglass: Job = {
  ...demoJob('saltglass-row'),
  stock: [
    { item: 'cable-flat-2.5-1.5', quantity: 4.5 },
    { item: 'screw-and-plug', quantity: 500 },
    { item: 'socket-twin', quantity: 1 },
  ],
  extras: [
    { id: 'joist', words: 'Double the rotten joist', typicalMin: 75, materialsPence: 1849, at: 'ground-flr' },
    { id: 'skip', words: 'Take the rubble away', materialsPence: 6000 },
    {
      id: 'fault',
      words: 'Find and mend the fault',
      task: 'fault-finding',
      lowMin: 30,
      typicalMin: 62.5,
      highMin: 180,
    },
  ],
};

function estimateOf(job: Job, library: Library): Estimate {
  return estimate(job, library, { date: '2026-11-20', revision: 3 });
}

function firstScheme({ schemes }: Estimate): SchemeEstimate {
  const scheme = schemes[0];
  if (scheme === undefined) throw new Error('The job has no scheme.');
  return scheme;
}

async function firstWorkbook(of: Estimate, library: Library): Promise<Uint8Array> {
  return countedBook(of, firstScheme(of).id, library);
}

/** The money that the workbook comes to, in pence as the engine has it. */
function totalsIn(book: CalculatedBook | undefined): Record<string, number> {
  const names = ['TotalMaterials', 'TotalLabour', 'TotalContingency', 'TotalNet', 'TotalVat', 'TotalGross'];
  return Object.fromEntries(names.map((name) => [name, Math.round(Number(book?.named(name)) * 1e6) / 1e4]));
}

function totalsOf(totals: Totals): Record<string, number> {
  return {
    TotalMaterials: totals.materialsPence,
    TotalLabour: totals.labourPence,
    TotalContingency: totals.contingencyPence,
    TotalNet: totals.netPence,
    TotalVat: totals.vatPence,
    TotalGross: totals.grossPence,
  };
}

const plain = demoLibrary();
const withTerms = (terms: Partial<Terms>): Job => ({
  ...saltglass,
  terms: { labour: 'typical', vat: 'standard', ...terms },
});

const atCost = (overhead: Overhead): Library => ({
  ...plain,
  norms: { ...plain.norms, ratePencePerHour: 2560, rateBasis: 'cost', overhead },
});

/** Demo job 1 as quoted for, with what the survey leaves open setting the contingency. */
function bySurvey(): Job {
  const job = demoJob('saltglass-row-quoting');
  const { contingencyPercent: _set, ...terms } = job.terms;
  return { ...job, terms };
}

/** Jobs and libraries that take every branch of the price. */
const variants: readonly { readonly name: string; readonly job: Job; readonly library: Library }[] = [
  { name: 'the first demo job', job: saltglass, library: plain },
  { name: 'the first demo job as quoted for', job: demoJob('saltglass-row-quoting'), library: plain },
  { name: 'the second demo job', job: demoJob('fernlow-close'), library: plain },
  { name: 'a margin', job: withTerms({ marginPercent: 27.5, contingencyPercent: 7.5 }), library: plain },
  { name: 'a firm that is not registered', job: withTerms({ vat: 'not-registered' }), library: plain },
  {
    name: 'a price list with tax and a minimum charge',
    job: withTerms({ vat: 'reduced', minimumPence: 250_000, labour: 'high' }),
    library: { ...plain, prices: { ...plain.prices, vat: 'included' } },
  },
  {
    name: 'an hour at cost, overhead a day, a margin on all, a call-out and a deposit',
    job: withTerms({
      marginPercent: 22.5,
      callOutPence: 4500,
      depositPercent: 33,
      travelMin: 45,
      parking: 3,
    }),
    library: atCost({ pencePerDay: 4286, hoursPerDay: 7.5 }),
  },
  {
    name: 'an hour at cost, overhead in percent, a mark-up on materials and a sum as deposit',
    job: withTerms({
      markupPercent: 12.5,
      profitOn: 'materials',
      depositPence: 25_000,
      travelMin: 0,
      parking: 'each-visit',
    }),
    library: atCost({ percent: 7 }),
  },
  {
    name: 'overhead and profit on labour that is charged, which are refused',
    job: withTerms({ markupPercent: 20, profitOn: 'all' }),
    library: { ...plain, norms: { ...plain.norms, overhead: { percent: 7 } } },
  },
  {
    name: 'two multipliers, and plaster that is come back for',
    job: withTerms({
      ...saltglass.terms,
      multipliers: ['fragile-finishes', 'alone'],
      drying: 'second-visit',
    }),
    library: plain,
  },
  { name: 'a contingency by the survey', job: bySurvey(), library: plain },
  {
    name: 'an empty price list and no norms',
    job: saltglass,
    library: { ...plain, prices: { ...plain.prices, items: [] }, norms: { ...plain.norms, tasks: [] } },
  },
];

/** A workbook after changes by hand. */
async function bookWith(bytes: Uint8Array, edits: readonly Edit[]): Promise<Uint8Array> {
  const book = await openBook(bytes);
  for (const edit of edits) editBook(book, edit);
  return new Uint8Array(await book.xlsx.writeBuffer());
}

/** True for changes that mean the same for every scheme: of rates and terms, not of one scheme's lines or of all minutes. */
const isRate = ({ kind }: Edit): boolean =>
  !['length', 'quantity', 'stock', 'price', 'task', 'norm', 'factor'].includes(kind);

const penceAt = (book: CalculatedBook | undefined, cell: string): number =>
  Math.round(Number(book?.value('Comparison', cell)) * 1e6) / 1e4;

describe('the workbook recalculated by a spreadsheet', () => {
  let untouched: readonly CalculatedBook[] = [];
  let edited: readonly CalculatedBook[] = [];
  let rated: readonly CalculatedBook[] = [];
  const slower = withTerms({
    ...saltglass.terms,
    multipliers: ['fragile-finishes', 'alone'],
    parking: 'each-visit',
  });
  const base = estimateOf(slower, plain);
  const scheme = firstScheme(base);
  const cases = fc.sample(
    anyEdits({
      counted: scheme.takeoff.length,
      bill: scheme.price.bill.length,
      tasks: scheme.labour.length,
      runs: scheme.runs.length,
    }),
    { seed: SEED, numRuns: 10 },
  );

  beforeAll(async () => {
    const books = await Promise.all(
      variants.map(({ job, library }) => firstWorkbook(estimateOf(job, library), library)),
    );
    const bytes = await firstWorkbook(base, plain);
    const changed = await Promise.all(cases.map(async (edits) => bookWith(bytes, edits)));
    const atRates = await Promise.all(cases.map(async (edits) => bookWith(bytes, edits.filter(isRate))));
    const all = await recalculated([...books, ...changed, ...atRates]);
    untouched = all.slice(0, variants.length);
    edited = all.slice(variants.length, variants.length + cases.length);
    rated = all.slice(variants.length + cases.length);
  }, 300_000);

  it.each(variants.map(({ name }, index) => ({ name, index })))(
    'has the engine’s totals for $name',
    ({ index }) => {
      const variant = variants[index] ?? { job: saltglass, library: plain };
      const { totals } = firstScheme(estimateOf(variant.job, variant.library));
      expect(totalsIn(untouched[index])).toEqual(totalsOf(totals));
    },
  );

  it.each(variants.map(({ name }, index) => ({ name, index })))(
    'has on the bill what the engine counts, cable by the cable schedule, for $name',
    ({ index }) => {
      const variant = variants[index] ?? { job: saltglass, library: plain };
      const { price, runs } = firstScheme(estimateOf(variant.job, variant.library));
      expect(
        price.bill.map((_line, at) => untouched[index]?.value('Bill of materials', `E${4 + at}`)),
      ).toEqual(price.bill.map(({ quantity }) => quantity));
      expect(runs.length).toBeGreaterThan(0);
    },
  );

  it.each(cases.map((edits, index) => ({ edits, index })))(
    `cuts and wants cable by the lengths on the schedule, case $index of seed ${SEED}`,
    ({ edits, index }) => {
      const lengths = edits.filter(({ kind }) => kind === 'length');
      const { takeoff } = lengths.reduce(editRequest, requestOf(scheme, plain));
      const laid = new Set(scheme.runs.map(({ cable }) => cableItem(cable)));
      const told = takeoff.filter(({ item }) => laid.has(item));
      const cutMm = told.map((line) => [line.item, sorted(piecesToCut(line, Number.POSITIVE_INFINITY))]);
      const shown = told.map(({ item }) => [item, sorted(cutsShown(edited[index], item))]);
      expect(shown).toEqual(cutMm);
      expect(shown).not.toEqual(told.map(({ item }) => [item, sorted(cutsShown(untouched[0], item))]));
      for (const { item } of told) {
        const sumMm = cutsShown(edited[index], item).reduce((sum, { lengthMm }) => sum + lengthMm, 0);
        expect(wantedM(edited[index], item)).toBeCloseTo(sumMm / 1000, 6);
      }
    },
  );

  it('takes the engine to the same price when it is asked again', () => {
    expect(priceScheme(requestOf(scheme, plain)).totals).toEqual(scheme.totals);
  });

  it.each(cases.map((edits, index) => ({ edits, index })))(
    `has the engine’s totals after changes by hand, case $index of seed ${SEED}`,
    ({ edits, index }) => {
      const { totals } = priceScheme(edits.reduce(editRequest, requestOf(scheme, plain)));
      expect(totals.grossPence).not.toBe(scheme.totals.grossPence);
      expect(totalsIn(edited[index])).toEqual(totalsOf(totals));
    },
  );

  it.each(variants.map(({ name }, index) => ({ name, index })))(
    'has the engine’s overhead, profit, deposit and margin for $name',
    ({ index }) => {
      const variant = variants[index] ?? { job: saltglass, library: plain };
      const { price } = firstScheme(estimateOf(variant.job, variant.library));
      const named = (name: string): number =>
        Math.round(Number(untouched[index]?.named(name) ?? 0) * 1e6) / 1e4;
      expect([named('TotalOverhead'), named('TotalProfit'), named('TotalDeposit')]).toEqual([
        price.overheadPence,
        price.profitOn === 'all' ? price.profitPence : 0,
        price.depositPence ?? 0,
      ]);
      const told = price.costPence === null ? null : [named('JobCost'), named('JobMargin')];
      expect(told).toEqual(
        price.costPence === null
          ? null
          : [price.costPence, Math.round((price.jobMarginPercent ?? 0) * 1e4) / 1e4],
      );
    },
  );

  it('tells what each gap of the survey makes of the contingency, adding up to it', () => {
    const at = variants.findIndex(({ name }) => name === 'a contingency by the survey');
    const { price } = firstScheme(estimateOf(bySurvey(), plain));
    const pence = price.contingencyParts.map((_part, index) =>
      Math.round(Number(untouched[at]?.named(`ContingencyPart${index + 1}`)) * 100),
    );
    expect(pence).toEqual(price.contingencyParts.map((part) => part.pence));
    expect(pence.reduce((sum, part) => sum + part, 0)).toBe(price.totals.contingencyPence);
    // Of the quoting visit: what quantities hang on, and what may have to be fitted besides.
    expect(price.contingencyParts.map(({ gap }) => gap)).toEqual([
      ...['circuits', 'ways', 'boxes', 'floors'],
      ...['walls', 'bonds', 'rcbos', 'asbestos'],
    ]);
  });

  it('has every line of the bill at the engine’s cost', () => {
    const costs = scheme.price.bill.map((_line, at) =>
      Math.round(Number(untouched[0]?.value('Bill of materials', `M${at + 4}`)) * 100),
    );
    expect(costs).toEqual(scheme.price.bill.map(({ costPence }) => costPence));
  });

  it('has the minutes of each stage, adding up to those of all', () => {
    const at = variants.findIndex(({ name }) => name.startsWith('two multipliers'));
    const variant = variants[at];
    if (variant === undefined) throw new Error('no such variant');
    const { labour, price } = firstScheme(estimateOf(variant.job, variant.library));
    const told = stageMinutes(labour);
    const rows = told.map((_, index) =>
      Number(untouched[at]?.value('Labour', `K${labour.length + 10 + index}`)),
    );
    expect(rows).toEqual(told.map(({ typicalMin }) => Math.round(typicalMin * 100) / 100));
    expect(rows.reduce((sum, minutes) => sum + minutes, 0)).toBeCloseTo(price.labourMin, 6);
    expect(
      untouched[at]?.value('Labour', `J${labour.findIndex(({ stage }) => stage === 'first-fix') + 4}`),
    ).toBe(1.56);
  });

  it.each(cases.map((edits, index) => ({ edits, index })))(
    `has every scheme of the comparison at the engine’s total after a change of the rates, case $index of seed ${SEED}`,
    ({ edits, index }) => {
      const rates = edits.filter(isRate);
      const grossPence = base.schemes.map(
        (one) => priceScheme(rates.reduce(editRequest, requestOf(one, plain))).totals.grossPence,
      );
      expect(base.schemes.map((_, at) => penceAt(rated[index], `J${4 + at}`))).toEqual(grossPence);
      const passing = grossPence.filter((_, at) => base.schemes[at]?.complies !== 'no');
      expect(base.schemes.map((_, at) => penceAt(rated[index], `M${4 + at}`))).toEqual(
        grossPence.map((pence) => pence - Math.min(...passing)),
      );
      expect(grossPence[1]).not.toBe(base.schemes[1]?.totals.grossPence);
    },
  );

  it.each(variants.map(({ name }, index) => ({ name, index })))(
    'has every scheme of the comparison at the engine’s sums for $name',
    ({ index }) => {
      const variant = variants[index] ?? { job: saltglass, library: plain };
      const { schemes } = estimateOf(variant.job, variant.library);
      const columns = ['D', 'E', 'F', 'G', 'H', 'I', 'J'];
      expect(
        schemes.map((_, at) => columns.map((column) => penceAt(untouched[index], `${column}${4 + at}`))),
      ).toEqual(
        schemes.map(({ totals }) => [
          totals.materialsPence,
          totals.labourPence,
          totals.otherPence,
          totals.contingencyPence,
          totals.netPence,
          totals.vatPence,
          totals.grossPence,
        ]),
      );
    },
  );

  it('multiplies the minutes of the other schemes by what makes the work slower now', () => {
    const factorAt = cases.findIndex((edits) => edits.some(({ kind }) => kind === 'factor'));
    const edits = (cases[factorAt] ?? []).filter(({ kind }) => kind === 'factor');
    const other = base.schemes[1];
    if (other === undefined) throw new Error('The job has one scheme only.');
    const { totals } = priceScheme(edits.reduce(editRequest, requestOf(other, plain)));
    expect(totals.hours).not.toBe(other.totals.hours);
    // The engine rounds the minutes of each task to hundredths, this table those of all tasks together.
    expect(Math.abs(penceAt(edited[factorAt], 'C5') - totals.hours * 100)).toBeLessThanOrEqual(1);
  });

  it('lets its own scheme in the comparison follow its other sheets', () => {
    for (const book of edited) expect(book.value('Comparison', 'J4')).toBe(book.named('TotalGross'));
  });

  it('tells of every scheme what it opens in the house and how much it disturbs', () => {
    const sheet = 'Comparison';
    expect(['P', 'Q', 'R'].map((column) => untouched[0]?.value(sheet, `${column}3`))).toEqual([
      'Holes',
      'Boards up',
      'Disturbance, points',
    ]);
    for (const [i, { labour, messPoints }] of base.schemes.entries()) {
      const { holes, boards } = openedUp(labour);
      const told = ['P', 'Q', 'R'].map((column) => untouched[0]?.value(sheet, `${column}${4 + i}`));
      expect(told).toEqual([holes, boards, Math.round(messPoints * 10) / 10]);
    }
  });

  it('tells how the points are joined in every scheme: two of one name are told apart', () => {
    const told = base.schemes.map((_, i) => untouched[0]?.value('Comparison', `S${4 + i}`));
    expect(told[0]).toBe(
      'W1 spur from R1 (a way pinned); W2 spur from a joint in R8–R9; W3 spur from R8; W4 fused spur from R6',
    );
    expect(new Set(told).size).toBe(base.schemes.length);
  });

  it.each([0, 1, 2])('comes in its cable schedule to the metres of the bill: demo job %i', (index) => {
    const variant = variants[index] ?? { job: saltglass, library: plain };
    const { runs, takeoff } = firstScheme(estimateOf(variant.job, variant.library));
    const laid = new Set(runs.map(({ cable }) => cableItem(cable)));
    const billed = takeoff.filter(({ item }) => laid.has(item)).map(({ measured }) => measured);
    // Flex to appliances is in the bill beside the runs; a run is never of the same item in these jobs.
    const metres = metresByKind(untouched[index], runs.length);
    expect(metres.length).toBe(laid.size);
    expect(metres.reduce((sum, m) => sum + m, 0)).toBeCloseTo(
      billed.reduce((sum, m) => sum + m, 0),
      6,
    );
    expect(Math.min(...metres)).toBeGreaterThan(0);
  });

  it('buys whole packs, and has what is left over of them', () => {
    scheme.price.bill.forEach((line, at) => {
      const { packs, leftOver } = boughtOf(line);
      const cell = (column: string) => untouched[0]?.value('Bill of materials', `${column}${at + 4}`) || null;
      expect([line.item, cell('P'), cell('Q')]).toEqual([
        line.item,
        packs || null,
        packs === null ? null : leftOver || null,
      ]);
    });
  });

  it('sums the cable schedule to the lengths of the runs', () => {
    const metres = scheme.runs.map((_run, at) => Number(untouched[0]?.value('Cable schedule', `H${at + 4}`)));
    const sumMm = scheme.runs.reduce((sum, run) => sum + (run.lengthMm ?? 0), 0);
    expect(metres.reduce((sum, length) => sum + length, 0) * 1000).toBeCloseTo(sumMm, 6);
    expect(Number(untouched[0]?.value('Cable schedule', `H${scheme.runs.length + 7}`)) * 1000).toBeCloseTo(
      sumMm,
      6,
    );
  });
});

/** Lengths of pieces, mm, in rising order; what is cut of nothing is no piece. */
const sorted = (pieces: readonly { readonly lengthMm: number }[]): readonly number[] =>
  pieces
    .map(({ lengthMm }) => lengthMm)
    .filter((mm) => mm > 0)
    .toSorted((a, b) => a - b);

/** What the cut list cuts of an item. */
function cutsShown(book: CalculatedBook | undefined, item: string): readonly { readonly lengthMm: number }[] {
  const pieces: { readonly lengthMm: number }[] = [];
  for (let row = 4; book?.value('Cut list', `I${row}`) != null; row++)
    if (book.value('Cut list', `I${row}`) === item)
      pieces.push({ lengthMm: Math.round(Number(book.value('Cut list', `F${row}`)) * 1000) });
  return pieces;
}

/** What the shopping list wants of an item, m. */
function wantedM(book: CalculatedBook | undefined, item: string): number {
  for (let row = 4; book?.value('Shopping list', `O${row}`) != null; row++)
    if (book.value('Shopping list', `O${row}`) === item)
      return Number(book.value('Shopping list', `D${row}`));
  return Number.NaN;
}

/** The sum by kind of cable, m, from the foot of the cable schedule. */
function metresByKind(book: CalculatedBook | undefined, runs: number): readonly number[] {
  const metres: number[] = [];
  for (let row = runs + 7; typeof book?.value('Cable schedule', `H${row}`) === 'number'; row++)
    metres.push(Number(book.value('Cable schedule', `H${row}`)));
  return metres;
}

describe('the workbook as written', () => {
  const of = estimateOf(saltglass, plain);
  const scheme = firstScheme(of);

  it('carries in every formula the engine’s result, for viewers that do not calculate', async () => {
    const book = await readBook(await firstWorkbook(of, plain));
    expect(totalsIn(book)).toEqual(totalsOf(scheme.totals));
  });

  it('has its sheets in order, each with frozen headers, A4 lying, repeated rows and a foot', async () => {
    const book = await openBook(await firstWorkbook(of, plain));
    expect(book.worksheets.map(({ name }) => name)).toEqual([
      'Summary',
      'Bill of materials',
      'Shopping list',
      'Cut list',
      'Labour',
      'Cable schedule',
      'Points',
      'Proof',
      'Checks',
      'Comparison',
    ]);
    for (const sheet of book.worksheets) {
      expect(sheet.views[0]).toMatchObject({ state: 'frozen' });
      expect(sheet.pageSetup).toMatchObject({ paperSize: 9, orientation: 'landscape', fitToWidth: 1 });
      expect(sheet.pageSetup.printTitlesRow).toMatch(/^1:[13]$/);
      expect(sheet.headerFooter.oddFooter).toContain(of.reference);
      expect(sheet.headerFooter.oddFooter).toContain('2026-11-20');
      expect(sheet.headerFooter.oddFooter).toContain('state 7K3M-9QDX');
      expect(sheet.headerFooter.oddFooter).toContain(of.edition);
    }
  });

  it('has no text that stands over the row below it, in any table of any sheet', async () => {
    const book = await openBook(await firstWorkbook(estimateOf(saltglass, plain), plain));
    const tooLow = book.worksheets.flatMap((sheet) => {
      const cells: string[] = [];
      sheet.eachRow((row, at) =>
        row.eachCell((cell) => {
          if (typeof cell.value !== 'string' || !cell.alignment?.wrapText || cell.isMerged) return;
          // As many letters of the sheets' face as the column is wide; a line takes its size and a fifth, points.
          const lines = Math.ceil(cell.value.length / (Number(sheet.getColumn(cell.col).width ?? 9) * 1.1));
          const needsPt = lines * (cell.font?.size ?? 10) * 1.2;
          if ((row.height ?? 15) < needsPt) cells.push(`${sheet.name} ${at}: ${cell.value}`);
        }),
      );
      return cells;
    });
    expect(tooLow).toEqual([]);
  });

  it('says that firm and prices are the demo’s while they are, and nothing of it once they are the firm’s own', async () => {
    const note = demoNotice(demoMarks(plain)) ?? 'no note';
    expect(await textsOf(await firstWorkbook(of, plain), 'Summary')).toContain(note);
    const renamed: Library = { ...plain, prices: { ...plain.prices, source: 'Own merchant' } };
    const bill = await textsOf(
      await firstWorkbook(estimateOf(saltglass, renamed), renamed),
      'Bill of materials',
    );
    expect(bill.filter((text) => text.includes('Demo price')).length).toBe(scheme.takeoff.length);
    const own = ownLibrary();
    const book = await openBook(await firstWorkbook(estimateOf(saltglass, own), own));
    const cells = cellsOf(book).concat(
      book.worksheets.map(({ headerFooter }) => headerFooter.oddFooter ?? ''),
    );
    expect(cells.filter((cell) => /demo(nstration)?\b/i.test(cell))).toEqual([]);
  });

  it('says on its first sheet for whom, where, until when, from whom and of which state it is', async () => {
    const book = await readBook(await firstWorkbook(of, plain));
    const said = Array.from(
      { length: 12 },
      (_, at) => [`A${at + 5}`, `B${at + 5}`, `C${at + 5}`] as const,
    ).map((cells) => cells.map((cell) => String(book.value('Summary', cell) ?? '')));
    const { customer, address } = saltglass.site;
    expect(said).toEqual(
      expect.arrayContaining([
        ['Customer', customer, ''],
        ['Address of the job', address.join(', '), ''],
        ['Date', '2026-11-20', ''],
        ['Price holds until', '2026-12-20', '30 days from its date'],
        ['Firm', plain.firm.name, plain.firm.address.join(', ')],
        ['Contact', plain.firm.contact, `VAT number ${plain.firm.vatNumber}`],
        ['State', '7K3M-9QDX', expect.stringContaining('same job')],
      ]),
    );
  });

  it('says what nobody has given yet', async () => {
    const { validDays: _days, ...terms } = plain.terms;
    const bare = { ...plain, firm: { name: '', address: [], contact: '' }, terms };
    const job = { ...withTerms({}), site: { ...saltglass.site, customer: ' ', address: [] } };
    const book = await readBook(await firstWorkbook(estimateOf(job, bare), bare));
    const rows = Array.from({ length: 14 }, (_, at) => at + 4);
    const missing = rows.filter((row) => book.value('Summary', `B${row}`) === 'not given');
    expect(missing.map((row) => book.value('Summary', `A${row}`))).toEqual([
      'Customer',
      'Address of the job',
      'Price holds until',
      'Firm',
      'Contact',
    ]);
  });

  it('counts no saves anywhere', async () => {
    const book = await openBook(await firstWorkbook(of, plain));
    const cells = cellsOf(book).concat(
      book.worksheets.map(({ headerFooter }) => headerFooter.oddFooter ?? ''),
    );
    expect(cells.filter((cell) => /revision/i.test(cell))).toEqual([]);
  });

  it('says the cautions and what is known of the edition on its first sheet', async () => {
    const texts = await textsOf(await firstWorkbook(of, plain), 'Summary');
    expect(texts).toEqual(expect.arrayContaining([...of.cautions, of.editionNote]));
  });

  it('names the materials of extra work under what is bought, and counts them nowhere on that sheet', async () => {
    const texts = await textsOf(await firstWorkbook(estimateOf(saltglass, plain), plain), 'Shopping list');
    expect(texts.filter((text) => text.endsWith('of materials'))).toEqual([
      'Double the rotten joist: £18.49 of materials',
      'Take the rubble away: £60.00 of materials',
    ]);
    expect(texts).toContain('Also bring along, not counted here');
  });

  it('has each finding once, the failures first', async () => {
    const failing = of.schemes.find(({ complies }) => complies === 'no');
    const book = await readBook(await countedBook(of, failing?.id ?? '', plain));
    expect(book.value('Checks', 'A4')).toMatch(/^Fails/);
    const count = failing?.findings.length ?? 0;
    expect(book.value('Checks', `L${3 + count}`)).not.toBeNull();
    expect(book.value('Checks', `L${4 + count}`)).toBeNull();
  });

  it('has the same cells for the same estimate', async () => {
    const cells = async () => cellsOf(await openBook(await firstWorkbook(of, plain)));
    expect(await cells()).toEqual(await cells());
  });

  it('refuses a scheme that the estimate does not have', async () => {
    await expect(countedBook(of, 'no-such-scheme', plain)).rejects.toThrow('no-such-scheme');
  });
});

function cellsOf(book: ExcelJS.Workbook): readonly string[] {
  const cells: string[] = [];
  for (const sheet of book.worksheets)
    sheet.eachRow((row) => {
      row.eachCell((cell) => {
        cells.push(`${sheet.name} ${cell.address} ${JSON.stringify(cell.value)}`);
      });
    });
  return cells;
}

async function textsOf(bytes: Uint8Array, sheet: string): Promise<readonly string[]> {
  const texts: string[] = [];
  (await openBook(bytes)).getWorksheet(sheet)?.eachRow((row) => {
    row.eachCell((cell) => {
      if (cell.type === ExcelJS.ValueType.String) texts.push(cell.text);
    });
  });
  return texts;
}

describe('texts that a spreadsheet could take for a formula', () => {
  const hostile = {
    reference: '=1+1',
    customer: '=2+2',
    title: '=HYPERLINK("http://example.invalid","press")',
    scheme: '@SUM(A1:A9)',
    point: '-2+3',
    item: '+cmd|calc!A0',
    firm: '\t=1+1',
    escape: '_x0041_',
  };
  const [demoScheme] = saltglass.schemes;
  const job: Job = {
    ...saltglass,
    reference: hostile.reference,
    title: hostile.title,
    site: { ...saltglass.site, customer: hostile.customer },
    points: saltglass.points.map((point) =>
      point.status === 'wanted' ? { ...point, label: hostile.point } : point,
    ),
    schemes: demoScheme === undefined ? [] : [{ ...demoScheme, name: hostile.scheme }],
  };
  const library: Library = {
    ...plain,
    firm: { ...plain.firm, name: hostile.firm, contact: hostile.escape },
    prices: { ...plain.prices, source: hostile.item },
  };

  it('stay text, in the file and in a spreadsheet that opens it', async () => {
    const bytes = await firstWorkbook(estimateOf(job, library), library);
    const texts = await textsOf(bytes, 'Summary');
    expect(texts).toEqual(expect.arrayContaining([hostile.reference, hostile.scheme, hostile.firm]));
    expect(await textsOf(bytes, 'Points')).toContain(hostile.point);
    const [book] = await recalculated([bytes]);
    expect(book?.value('Summary', 'B5')).toBe(hostile.reference);
    expect(book?.value('Summary', 'B6')).toBe(hostile.customer);
    expect(book?.value('Summary', 'B13')).toBe(hostile.scheme);
    expect(book?.value('Summary', 'B11')).toContain(hostile.escape);
    expect(totalsIn(book)).toEqual(totalsOf(firstScheme(estimateOf(job, library)).totals));
  }, 300_000);

  it('add no formula to those of the workbook', async () => {
    const formulas = async (bytes: Uint8Array) =>
      cellsOf(await openBook(bytes)).filter((cell) => cell.includes('"formula"')).length;
    const tame: Job = { ...saltglass, schemes: demoScheme === undefined ? [] : [demoScheme] };
    expect(await formulas(await firstWorkbook(estimateOf(job, library), library))).toBe(
      await formulas(await firstWorkbook(estimateOf(tame, plain), plain)),
    );
  });
});
