import ExcelJS from 'exceljs';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { papersOf } from '#exports/papers.ts';
import { shoppingOf } from '#exports/shopping-of.ts';
import { workbookOf } from '#exports/workbook.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { medianOf, timedLater } from '../growth.ts';
import { byTurns, type FigureGroup } from '../measuring.ts';

interface PlainSheet {
  readonly name: string;
  readonly widths: readonly (number | undefined)[];
  readonly cells: readonly {
    readonly row: number;
    readonly column: number;
    readonly value: ExcelJS.CellValue;
    readonly style: Partial<ExcelJS.Style>;
  }[];
}

/** Every cell of a workbook as it stands in the file: what it holds and how it looks. */
async function cellsOf(bytes: Uint8Array): Promise<readonly PlainSheet[]> {
  const book = new ExcelJS.Workbook();
  await book.xlsx.load(bytes.slice().buffer);
  return book.worksheets.map((sheet) => {
    const cells: PlainSheet['cells'][number][] = [];
    sheet.eachRow({ includeEmpty: false }, (cellsOfRow, row) =>
      cellsOfRow.eachCell({ includeEmpty: true }, (cell, column) => {
        if (cell.master === cell) cells.push({ row, column, value: cell.value, style: cell.style });
      }),
    );
    return { name: sheet.name, widths: sheet.columns.map(({ width }) => width), cells };
  });
}

async function writePlainly(sheets: readonly PlainSheet[]): Promise<void> {
  const book = new ExcelJS.Workbook();
  for (const { name, widths, cells } of sheets) {
    const sheet = book.addWorksheet(name);
    sheet.columns = widths.map((width) => (width === undefined ? {} : { width }));
    for (const { row, column, value, style } of cells) {
      const cell = sheet.getCell(row, column);
      cell.value = value;
      cell.style = style;
    }
  }
  await book.xlsx.writeBuffer();
}

/** The workbook of a demo job beside its own cells written plainly with the same package. */
export const workbookFigures: FigureGroup = {
  name: 'workbook',
  measure: async ({ rounds }) => {
    const library = demoLibrary();
    const job = demoJob('saltglass-row');
    const papers = papersOf(job, library, { date: '2026-11-27', revision: 1, schemeId: null });
    if (papers === null) throw new Error('The demo job has no papers.');
    const shopping = shoppingOf(papers, library, job);
    const { drawn, shown, state } = papers;
    const ours = (): Promise<Uint8Array> => workbookOf(drawn, shown.id, { library, state, shopping });
    const sheets = await cellsOf(await ours());
    await writePlainly(sheets);
    const times = await byTurns(2 * rounds + 1, {
      ours: async () => (await timedLater(ours)).ms,
      plain: async () => (await timedLater(() => writePlainly(sheets))).ms,
    });
    return { workbookVsRawExceljs: medianOf(times.ours) / medianOf(times.plain) };
  },
};
