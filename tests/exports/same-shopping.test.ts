import { isDeepStrictEqual } from 'node:util';
import { parse } from 'csv-parse/sync';
import type { Worksheet } from 'exceljs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { packingOf } from '#exports/packing-of.ts';
import { type Papers, papersOf } from '#exports/papers.ts';
import { type ShoppingFiles, shoppingFiles } from '#exports/shopping-files.ts';
import { shoppingOf } from '#exports/shopping-of.ts';
import { workbookOf } from '#exports/workbook.ts';
import type { Job, PackFor } from '#model/job.ts';
import { type DemoName, demoJob, demoNames } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { openBook } from './spreadsheet.ts';

const SEED = 20_261_127;
const library = demoLibrary();

/** What a list asks for of each thing, by item, sorted: taken from the van, bought, paid in pounds. */
type Told = readonly (readonly [item: string, van: number, bought: number, pounds: number])[];

interface Formats {
  readonly files: ShoppingFiles;
  readonly shopping: Worksheet;
  readonly cuts: Worksheet;
}

function papersFor(job: Job): Papers {
  const papers = papersOf(job, library, { date: '2026-11-27', revision: 1, schemeId: null });
  if (papers === null) throw new Error('no papers');
  return papers;
}

async function formatsOf(job: Job): Promise<Formats> {
  const papers = papersFor(job);
  const list = shoppingOf(papers, library, job);
  const { drawn, shown, state } = papers;
  const book = await openBook(await workbookOf(drawn, shown.id, { library, state, shopping: list }));
  const sheet = (name: string): Worksheet => {
    const found = book.getWorksheet(name);
    if (found === undefined) throw new Error(`no sheet ${name}`);
    return found;
  };
  return { files: shoppingFiles(list), shopping: sheet('Shopping list'), cuts: sheet('Cut list') };
}

/** A list that nobody has said anything of, one on which all that is open is bought for, and some in between at random. */
function choicesOf(job: Job, index: number): readonly (PackFor[] | undefined)[] {
  const questions = packingOf(job, library, papersFor(job))?.plan.questions ?? [];
  const all = questions.map(({ id, outcomes }) => ({
    question: id,
    outcomes: outcomes.map((one) => one.id),
  }));
  const someOf = fc
    .tuple(...all.map(({ outcomes }) => fc.subarray(outcomes)))
    .map((chosen) => chosen.flatMap((outcomes, i) => ({ question: all[i]?.question ?? '', outcomes })))
    .map((packFor) => packFor.filter(({ outcomes }) => outcomes.length > 0));
  return [undefined, all, ...fc.sample(someOf, { seed: SEED + index, numRuns: 2 })];
}

const shownIn = (sheet: Worksheet, cell: string): unknown => {
  const at = sheet.getCell(cell);
  return at.formula === undefined ? at.value : at.result;
};
const numberIn = (sheet: Worksheet, cell: string): number => Number(shownIn(sheet, cell) ?? 0);
const tidy = (figure: number): number => Math.round(figure * 1e4) / 1e4;

function summed(rows: Told): Told {
  const byItem = new Map<string, readonly [number, number, number]>();
  for (const [item, van, bought, pounds] of rows) {
    const [a, b, c] = byItem.get(item) ?? [0, 0, 0];
    byItem.set(item, [tidy(a + van), tidy(b + bought), tidy(c + pounds)]);
  }
  return [...byItem].map(([item, sums]) => [item, ...sums] as const).toSorted(([a], [b]) => (a < b ? -1 : 1));
}

function rowsOfBook(sheet: Worksheet): readonly number[] {
  const rows: number[] = [];
  for (let row = 4; shownIn(sheet, `O${row}`) != null; row++) rows.push(row);
  return rows;
}

const toldByBook = ({ shopping }: Formats): Told =>
  summed(
    rowsOfBook(shopping).map((row) => [
      String(shownIn(shopping, `O${row}`)),
      numberIn(shopping, `E${row}`),
      numberIn(shopping, `H${row}`) * numberIn(shopping, `G${row}`),
      numberIn(shopping, `J${row}`),
    ]),
  );

type CsvRow = Readonly<Record<string, string>>;
const csvRows = ({ files }: Formats): readonly CsvRow[] =>
  parse(files.csv, { columns: true, bom: true }) as CsvRow[];

/** What is in no van and on no price list costs nothing, and the sheet buys none of it. */
const toldByCsv = (formats: Formats): Told =>
  summed(
    csvRows(formats)
      .filter(({ where }) => where !== 'still open')
      .map((row) => {
        const all = Number(row.count) * Number(row.of);
        return [
          row.item ?? '',
          row.where === 'from the van' ? all : 0,
          row.where === 'to buy' ? all : 0,
          Number(row['cost, pounds'] || 0),
        ] as const;
      }),
  );

/** The lines to be ticked, put together from the rows of the CSV. */
function ticksByCsv(formats: Formats): readonly string[] {
  const byEntry = new Map<string, CsvRow[]>();
  for (const row of csvRows(formats)) {
    if (row.where === 'still open') continue;
    const key = `${row.where}/${row.item}`;
    byEntry.set(key, [...(byEntry.get(key) ?? []), row]);
  }
  return [...byEntry.values()].map((rows) => {
    const words = rows.map((row) => row['ask for'] ?? '');
    const asked = words.length < 2 ? words[0] : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
    const mark = words.length === 1 && /^\d+$/.test(asked ?? '') ? ' ×' : ':';
    return `[ ] ${asked}${mark} ${rows[0]?.description}`;
  });
}

const linesOf = ({ files }: Formats, start: string): readonly string[] =>
  files.text.split('\n').filter((line) => line.startsWith(start));

/** Lengths of all cuts, mm, by the text's cut list and by the cut sheet. */
const cutsByText = (formats: Formats): readonly number[] =>
  [...formats.files.text.matchAll(/^ {4}\d+\. ([\d.]+) m /gm)].map(([, m]) => Math.round(Number(m) * 1000));
function cutsByBook({ cuts }: Formats): readonly number[] {
  const lengths: number[] = [];
  for (let row = 4; shownIn(cuts, `I${row}`) != null; row++)
    lengths.push(Math.round(numberIn(cuts, `F${row}`) * 1000));
  return lengths;
}

const demoCases: readonly { readonly name: DemoName; readonly index: number }[] = demoNames.map(
  (name, index) => ({ name, index }),
);

describe.each(demoCases)('the shopping list of $name, whatever is bought for', ({ name, index }) => {
  const job = demoJob(name);
  const cases = choicesOf(job, index).map((packFor, at) => {
    const of: Job = packFor === undefined ? job : { ...job, packFor };
    let made: Promise<Formats> | null = null;
    return { at, of, formats: () => (made ??= formatsOf(of)) };
  });

  it.each(cases)(
    `is one in workbook, text and CSV, choice $at of seed ${SEED}`,
    async ({ formats: made }) => {
      const formats = await made();
      expect(toldByBook(formats)).toEqual(toldByCsv(formats));
      expect(toldByBook(formats).length).toBeGreaterThan(10);
      expect(linesOf(formats, '[ ] ')).toEqual(ticksByCsv(formats));
      expect(cutsByBook(formats).toSorted()).toEqual(cutsByText(formats).toSorted());
    },
  );

  it.each(cases)(
    `says of the same things that they are there in case, choice $at of seed ${SEED}`,
    async ({ of }) => {
      const formats = await formatsOf(of);
      const inCase = csvRows(formats).flatMap((row) =>
        row['in case'] ? [{ item: row.item, words: `In case: ${row['in case']}` }] : [],
      );
      expect(linesOf(formats, '    In case: ').map((line) => line.trim())).toEqual(
        inCase.map(({ words }) => words),
      );
      const { shopping } = formats;
      const noted = rowsOfBook(shopping).flatMap((row) => {
        const note = String(shownIn(shopping, `N${row}`) ?? '');
        return note.includes('In case: ') ? [{ item: shownIn(shopping, `O${row}`), note }] : [];
      });
      expect(noted.map(({ item }) => item).toSorted()).toEqual(
        [...new Set(inCase.map(({ item }) => item))].toSorted(),
      );
      for (const { item, words } of inCase)
        expect(noted.find((one) => one.item === item)?.note).toContain(words);
    },
  );

  it('has something in case where all that is open is bought for, and says what goes back', async () => {
    const [plain, all] = cases;
    if (plain === undefined || all === undefined) throw new Error('no cases');
    const formats = await all.formats();
    const column: unknown[] = [];
    formats.shopping.eachRow((_row, at) => void column.push(shownIn(formats.shopping, `A${at}`)));
    const isAnythingInCase = linesOf(formats, '    In case: ').length > 0;
    expect(column.includes('What can go back unopened')).toBe(
      formats.files.text.includes('WHAT CAN GO BACK UNOPENED'),
    );
    expect(isAnythingInCase).toBe((all.of.packFor ?? []).length > 0);
    const isAsCounted = isDeepStrictEqual(toldByBook(formats), toldByBook(await plain.formats()));
    expect(isAsCounted).toBe(!isAnythingInCase);
  });
});
