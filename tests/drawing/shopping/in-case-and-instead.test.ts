import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { shoppingRows } from '#drawing/shopping/shopping-rows.ts';
import { entriesOf, type ShoppingSheet, shoppingSheetOf } from '#drawing/shopping/shopping-sheet.ts';
import { merchantText, shoppingText } from '#drawing/shopping/shopping-text.ts';
import type { TookInstead } from '#drawing/shopping/took-instead.ts';
import { csvText } from '#engine/price/list/csv-text.ts';
import { packingOf } from '#exports/packing-of.ts';
import { papersOf } from '#exports/papers.ts';
import { shoppingFiles } from '#exports/shopping-files.ts';
import { shoppingOf } from '#exports/shopping-of.ts';
import type { Job } from '#model/job.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { saltglassShopped } from './sheet-of.ts';

const box = 'Steel back box, single, 35 mm deep';
const job: Job = {
  ...demoJob('saltglass-row'),
  packFor: [{ question: 'box/r1-hallway', outcomes: ['deep', 'shallow'] }],
};
const library = demoLibrary();

function inCase() {
  const papers = papersOf(job, library, { date: '2026-11-25', revision: 1, schemeId: 'spurs-rcbo' });
  const packing = papers === null ? null : packingOf(job, library, papers);
  if (papers === null || packing === null) throw new Error('nothing to pack');
  const sheet = shoppingSheetOf({
    reference: job.reference,
    title: job.title,
    scheme: papers.shown,
    packing,
    prices: library.prices,
    date: '2026-11-25',
    state: 'AAAA-BBBB',
    demoNote: null,
  });
  return { papers, packing, sheet };
}

const rowsOf = (sheet: ShoppingSheet): readonly Readonly<Record<string, string>>[] =>
  parse(csvText(shoppingRows(sheet)), { bom: true, columns: true });

describe('what is on the list in case only', () => {
  const { papers, packing, sheet } = inCase();
  const text = shoppingText(sheet);

  it('is marked in the text with the reason, and nothing else is', () => {
    const lines = text.split('\n');
    const at = lines.findIndex((line) => line.startsWith('[ ]') && line.includes(box));
    const own = lines.slice(at, at + 4).join('\n');
    expect(own).toMatch(/In case: .*\(Is the back box of R1 deep enough\? Less than 35 mm\)/);
    const counted = new Map(papers.shown.purchase.lines.map((line) => [line.item, line.boughtQuantity]));
    const more = packing.plan.purchase.lines.filter(
      ({ item, boughtQuantity }) => boughtQuantity > (counted.get(item) ?? 0),
    );
    expect(lines.filter((line) => line.startsWith('    In case: '))).toHaveLength(more.length);
    expect(more.length).toBeGreaterThan(0);
  });

  it('says what can go back, as counted and for the other outcome, as the plan has it', () => {
    const block = text.split('\n\n').find((one) => one.startsWith('If all turns out as it is counted')) ?? '';
    const [counted] = packing.takeBack;
    const back = counted?.lines.filter((line) => line.back.length > 0) ?? [];
    expect(back.length).toBeGreaterThan(0);
    expect(block.split('\n').slice(1)).toHaveLength(back.length);
    for (const { description } of back) expect(block).toContain(description);
    // As many of the box as the outcome takes: where it turns out so, nothing of it goes back.
    expect(sheet.inCase.goesBack.some(({ title }) => title.startsWith('If only this'))).toBe(
      (packing.takeBack[1]?.pence ?? 0) > 0,
    );
  });

  it('is told to the merchant as what may come back, without a word of why', () => {
    const message = merchantText(sheet, new Set());
    expect(message).toMatch(/Steel back box, single, 35 mm deep.*; in case, may come back unopened: \d/);
    expect(message).not.toContain('R1');
  });

  it('has columns of its own in the CSV', () => {
    const row = rowsOf(sheet).find(({ description }) => description === box);
    expect(row?.['in case']).toContain('R1');
    expect(row?.['may go back']).toMatch(/^\d/);
    expect(shoppingFiles(shoppingOf(papers, library, job)).text).toContain('WHAT CAN GO BACK UNOPENED');
  });

  it('is nothing where nothing is bought in case', () => {
    const { sheet: plain } = saltglassShopped();
    expect(shoppingText(plain)).not.toMatch(/in case|go back/i);
    expect(rowsOf(plain).every((row) => row['in case'] === '' && row['may go back'] === '')).toBe(true);
  });
});

describe('what was taken instead', () => {
  const sockets = 'counter/socket-twin';
  const listed = (): number => {
    const entry = entriesOf(saltglassShopped().sheet.list).find(({ key }) => key === sockets);
    if (entry?.pence == null) throw new Error('no sockets are bought');
    return entry.pence;
  };
  const shopped = (instead: readonly TookInstead[]) =>
    saltglassShopped({
      job: (one) => ({ ...one, actuals: { stages: [], tasks: [], used: [], instead: [...instead] } }),
    });

  it('stands under the thing with what it cost, and by how much the shopping came out otherwise', () => {
    const pence = listed() + 140;
    const text = shoppingText(shopped([{ entry: sockets, took: 'Twin outlets, grey', pence }]).sheet);
    expect(text).toMatch(
      /13 A twin socket-outlet\n {4}Not in stock; taken instead: Twin outlets, grey, £[\d,]+\.\d\d, £1\.40 more than the list says/,
    );
    expect(text).toContain('What was taken instead came to £1.40 more than the list says, VAT not in it.');
    const less = shopped([{ entry: sockets, took: 'Cheaper', pence: listed() - 5 }]).sheet.instead;
    expect(less.sumWords).toContain('£0.05 less than the list says');
    const same = shopped([{ entry: sockets, took: 'Others', pence: listed() }]).sheet.instead;
    expect(same.sumWords).toContain('as much as the list says');
  });

  it('adds up over several, and says nothing where no price is known', () => {
    const pence = listed() + 100;
    const two = shopped([
      { entry: sockets, took: 'One', pence },
      { entry: 'counter/gone', took: 'For nothing that is wanted', pence: 5 },
    ]).sheet.instead;
    expect(two.sumWords).toContain('£1.00 more');
    expect(two.strays.map(({ words }) => words)).toEqual([
      'Not in stock; taken instead: For nothing that is wanted, £0.05',
    ]);
    expect(shopped([{ entry: sockets, took: 'One' }]).sheet.instead.sumWords).toBe('');
  });

  it('is in the CSV, and changes no sum of the list or the estimate', () => {
    const pence = listed() + 140;
    const other = shopped([{ entry: sockets, took: 'Twin outlets, grey', pence }]);
    const row = rowsOf(other.sheet).find(({ item }) => item === 'socket-twin');
    expect([row?.['taken instead'], Number(row?.['paid instead, pounds'])]).toEqual([
      'Twin outlets, grey',
      pence / 100,
    ]);
    const plain = saltglassShopped();
    expect(other.sheet.list).toEqual(plain.sheet.list);
    expect(other.scheme.totals).toEqual(plain.scheme.totals);
  });

  it('is told apart from what was not in stock and has nothing in its place', () => {
    const { scheme, sheet } = saltglassShopped();
    const marked = shoppingSheetOf({
      ...sheet,
      scheme,
      prices: library.prices,
      notInStock: new Set([sockets]),
    });
    expect(shoppingText(marked)).toMatch(/13 A twin socket-outlet\n {4}Not in stock when asked for\n/);
    // It is still to be had: the next merchant is asked for it.
    expect(merchantText(marked, new Set())).toContain('13 A twin socket-outlet');
  });
});
