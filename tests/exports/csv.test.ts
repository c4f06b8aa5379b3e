import { readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { estimate } from '#engine/estimate.ts';
import { boughtOf } from '#engine/price/bought.ts';
import { withoutGuard } from '#engine/price/list/csv-text.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { billCsv } from '#exports/csv/bill-csv.ts';
import { labourCsv } from '#exports/csv/labour-csv.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { readJobText } from '#model/read-job.ts';
import { formulasIn, formulaWords, savedBySpreadsheet } from './saved-by-spreadsheet.ts';
import { openBook } from './spreadsheet.ts';

function demoJob(name: string): Job {
  const read = readJobText(readFileSync(`data/jobs/${name}.json`, 'utf8'));
  if (!read.ok) throw new Error(`${name}: ${read.faults.length} faults`);
  return read.job;
}

const plain = demoLibrary();

function filesOf(job: Job, library: Library) {
  const of = estimate(job, library, { date: '2026-11-20', revision: 3 });
  const [scheme] = of.schemes;
  if (scheme === undefined) throw new Error('The job has no scheme.');
  const request = { estimate: of, schemeId: scheme.id, library, state: '7K3M-9QDX' };
  return { scheme, bill: billCsv(request), labour: labourCsv(request) };
}

/** The rows of a file as a reader that is not ours has them, by their headings. */
const rowsOf = (text: string): readonly Record<string, string>[] =>
  parse(text, { bom: true, columns: true, relax_column_count: false });

const worked: Job = {
  ...demoJob('fernlow-close'),
  stock: [{ item: 'socket-twin', quantity: 1 }],
  actuals: { stages: [], tasks: [{ task: 'isolate', minutes: 12.5 }], used: [] },
};
const slow: Job = {
  ...worked,
  terms: { ...worked.terms, multipliers: ['fragile-finishes', 'alone'] },
  extras: [{ id: 'joist', words: '=Double the joist', typicalMin: 75, materialsPence: 1849 }],
};
const gaps: Library = {
  ...plain,
  prices: { ...plain.prices, items: plain.prices.items.filter(({ item }) => item !== 'clip-flat-2.5') },
  norms: { ...plain.norms, tasks: plain.norms.tasks.filter(({ task }) => task !== 'clean-up') },
};

describe.each([
  { name: 'a job with things in the van', job: worked, library: plain },
  { name: 'a slow job priced from a list and norms with gaps', job: slow, library: gaps },
  { name: 'a quoting visit', job: demoJob('saltglass-row-quoting'), library: plain },
])('the CSV of $name', ({ job, library }) => {
  const { scheme, bill, labour } = filesOf(job, library);

  it('has every line of the bill with its figures, which add up to the materials', () => {
    const rows = rowsOf(bill);
    expect(rows.map((row) => [row.Item, Number(row.Quantity), row['Cost £'], row['Packs to buy']])).toEqual(
      scheme.price.bill.map((line) => [
        line.item,
        line.quantity,
        line.priced ? (line.costPence / 100).toFixed(2) : '',
        String(boughtOf(line).packs ?? ''),
      ]),
    );
    const pence = rows.reduce((sum, row) => sum + Math.round(Number(row['Cost £']) * 100), 0);
    expect(pence).toBe(scheme.price.materialsCostPence);
    expect(rows.map((row) => Number(row['From the van']))).toEqual(
      scheme.price.bill.map(({ fromStock }) => fromStock),
    );
  });

  it('has every task with its figures, which multiply and add up to the minutes of the work', () => {
    const rows = rowsOf(labour);
    expect(rows.map((row) => row.Task)).toEqual(scheme.labour.map(({ task }) => task));
    const minutes = rows.reduce((sum, row) => sum + Number(row.Minutes), 0);
    expect(minutes).toBeCloseTo(scheme.price.labourMin, 2);
    for (const row of rows)
      expect(Number(row.Quantity) * Number(row['Typical, min each']) * Number(row.Times)).toBeCloseTo(
        Number(row.Minutes),
        1,
      );
  });

  it('says in every row which job, scheme, state and day it is of', () => {
    const always = rowsOf(bill)
      .concat(rowsOf(labour))
      .map((row) => [row.Job, row.Scheme, row.State, row.Date].join('|'));
    expect([...new Set(always)]).toEqual([[job.reference, scheme.name, '7K3M-9QDX', '2026-11-20'].join('|')]);
  });
});

describe('bill and labour as CSV', () => {
  it('say what is not priced, what the demo’s price is, and what a task took', () => {
    const { bill, labour } = filesOf(slow, gaps);
    const clips = rowsOf(bill).find((row) => row.Item === 'clip-flat-2.5');
    expect([clips?.['Price £'], clips?.['Cost £'], clips?.Note]).toEqual([
      '',
      '',
      'Not in the price list: not in the price',
    ]);
    expect(rowsOf(bill).find((row) => row.Item === 'socket-twin')?.Note).toBe('Demo price');
    const tasks = new Map(rowsOf(labour).map((row) => [row.Task, row]));
    expect(tasks.get('clean-up')?.Note).toBe('No norm in the library: not in the price');
    expect([tasks.get('isolate')?.['Taken, min'], tasks.get('set-up')?.['Taken, min']]).toEqual(['12.5', '']);
    expect(Number(tasks.get('thread-cable')?.Times)).toBeGreaterThan(1);
    const own = tasks.get('joist/work');
    expect([own?.['Typical, min each'], own?.Times, own?.Note]).toEqual([
      '75',
      '1',
      'Not on the drawing: minutes given for this job',
    ]);
    const sum = rowsOf(bill).find((row) => row.Item === 'joist/materials');
    expect([withoutGuard(sum?.Description ?? ''), sum?.['Cost £'], sum?.['Caused by']]).toEqual([
      '=Double the joist',
      '18.49',
      'Work not on the drawing',
    ]);
  });

  it('refuse a scheme that the estimate does not have', () => {
    const of = estimate(worked, plain, { date: '2026-11-20', revision: 3 });
    const request = { estimate: of, schemeId: 'no-such-scheme', library: plain, state: 'X' };
    expect(() => billCsv(request)).toThrow('no-such-scheme');
    expect(() => labourCsv(request)).toThrow('no-such-scheme');
  });

  it('stay text and figures in a spreadsheet that is not ours, whatever names are in the job', async () => {
    const named = filesNamed(formulaWords);
    const texts = Object.fromEntries(
      named.flatMap(({ bill, labour }, at) => [
        [`b${at}.csv`, bill],
        [`l${at}.csv`, labour],
      ]),
    );
    for (const separator of [44, 59, 9]) {
      const saved = await savedBySpreadsheet(texts, separator);
      for (const bytes of saved) expect(await formulasIn(bytes)).toEqual([]);
    }
    const [first] = await savedBySpreadsheet({ 'b.csv': named[0]?.bill ?? '' });
    const sheet = (await openBook(first ?? new Uint8Array())).worksheets[0];
    const { price } = named[0]?.scheme ?? { price: { bill: [] } };
    const cost = sheet?.getRow(1).values;
    const at = Array.isArray(cost) ? cost.indexOf('Cost £') : -1;
    expect(price.bill.map((_line, row) => sheet?.getCell(row + 2, at).value)).toEqual(
      price.bill.map(({ costPence }) => costPence / 100),
    );
  }, 600_000);

  it('give back the names that they guard', () => {
    const named = filesNamed(formulaWords);
    const told = named.map(({ bill }) => withoutGuard(rowsOf(bill)[0]?.Scheme ?? ''));
    expect(told).toEqual(named.map(({ scheme }) => scheme.name));
  });
});

/** Files of a job each in which every name begins as a formula does. */
function filesNamed(words: readonly string[]): readonly {
  readonly scheme: SchemeEstimate;
  readonly bill: string;
  readonly labour: string;
}[] {
  return words.map((name) => {
    const [scheme] = worked.schemes;
    const job: Job = {
      ...worked,
      reference: name,
      points: worked.points.map((point) => ({ ...point, label: name })),
      circuits: worked.circuits.map((circuit) => ({ ...circuit, name })),
      schemes: scheme === undefined ? [] : [{ ...scheme, name }],
    };
    return filesOf(job, plain);
  });
}
