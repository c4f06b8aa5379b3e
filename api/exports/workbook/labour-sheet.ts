import type { Worksheet } from 'exceljs';
import { chosenMultipliers } from '#engine/labour/multipliers.ts';
import { normOf } from '#engine/labour/norm-of.ts';
import { stageMinutes } from '#engine/labour/stage-hours.ts';
import type { LabourTask, Stage } from '#engine/labour/task.ts';
import type { Multiplier } from '#model/library.ts';
import { stageWords, taskNote } from '../line-notes.ts';
import { type CellContent, writeCell } from './cell-value.ts';
import {
  addTableSheet,
  type Column,
  FIRST_ROW,
  type TableTitle,
  writeHeading,
  writeRow,
} from './table-sheet.ts';
import { nameCell, sheetNames, type WorkbookContext } from './workbook-context.ts';

const columns: readonly Column[] = [
  { header: 'Stage', width: 12, role: 'text' },
  { header: 'Task', width: 46, role: 'text' },
  { header: 'Unit', width: 8, role: 'text' },
  { header: 'Quantity', width: 10, role: 'input', format: 'quantity' },
  { header: 'at least', width: 9, role: 'number', format: 'quantity' },
  { header: 'at most', width: 9, role: 'number', format: 'quantity' },
  { header: 'Low, min each', width: 9, role: 'input', format: 'minutes' },
  { header: 'Typical, min each', width: 9, role: 'input', format: 'minutes' },
  { header: 'High, min each', width: 9, role: 'input', format: 'minutes' },
  { header: 'Times', width: 8, role: 'number', format: 'factor' },
  { header: 'Minutes', width: 10, role: 'number', format: 'minutes' },
  { header: 'Taken, minutes', width: 10, role: 'input', format: 'minutes' },
  { header: 'More than reckoned', width: 10, role: 'number', format: 'minutes' },
  { header: 'Caused by', width: 40, role: 'text' },
  { header: 'Note', width: 26, role: 'text' },
];

/** What the job has chosen of the norms' multipliers, in the order of the norms. */
export const multipliersIn = ({ scheme, library }: WorkbookContext): readonly Multiplier[] =>
  chosenMultipliers(scheme.worked.job.terms, library.norms);

/** The factors of a stage, by their names on the summary, multiplied; 1 where the job has chosen none for it. */
export function factorOf(
  context: WorkbookContext,
  stage: Stage,
): 1 | { readonly formula: string; readonly result: number } {
  const named = multipliersIn(context).flatMap((one, index) =>
    one.on.includes(stage) ? [{ name: `Factor${index + 1}`, factor: one.factor }] : [],
  );
  if (named.length === 0) return 1;
  return {
    formula: named.map(({ name }) => name).join('*'),
    result: named.reduce((all, { factor }) => all * factor, 1),
  };
}

/** What was taken beside what was reckoned: empty until somebody writes it down. */
function takenCells(reckonedMin: number, takenMin: number | null, row: number): readonly CellContent[] {
  const more = takenMin === null ? '' : Math.round((takenMin - reckonedMin) * 100) / 100;
  return [takenMin, { formula: `IF(L${row}="","",ROUND(L${row}-K${row},2))`, result: more }];
}

function contentsOf(context: WorkbookContext, task: LabourTask, row: number): readonly CellContent[] {
  const each = task.own ?? normOf(task.task, context.library.norms);
  const level = context.scheme.price.labourLevel;
  const minutes = { low: task.lowMin, typical: task.typicalMin, high: task.highMin }[level];
  const taken = context.scheme.worked.job.actuals?.tasks.find((one) => one.task === task.task);
  return [
    stageWords[task.stage],
    task.description,
    task.unit,
    task.quantity,
    task.lowQuantity,
    task.highQuantity,
    each?.lowMin ?? null,
    each?.typicalMin ?? null,
    each?.highMin ?? null,
    task.own === undefined ? factorOf(context, task.stage) : 1,
    {
      formula: `ROUND(D${row}*CHOOSE(LabourLevelNumber,G${row},H${row},I${row})*J${row},2)`,
      result: minutes ?? 0,
    },
    ...takenCells(minutes ?? 0, taken?.minutes ?? null, row),
    task.causes.map(context.labelOf).join(', '),
    taskNote(task),
  ];
}

/** Labour by task, by the firm's norms at the level chosen on the summary, and its sum by stage. */
export function addLabourSheet(context: WorkbookContext): void {
  const { labour, price } = context.scheme;
  const note = `Shaded cells may be changed; the rest follows. No price hangs on what was taken. Norms: ${context.library.norms.source}.`;
  const sheet = addTableSheet(context, sheetNames.labour, note, columns);
  labour.forEach((task, index) => {
    writeRow(sheet, FIRST_ROW + index, columns, contentsOf(context, task, FIRST_ROW + index));
  });
  const last = FIRST_ROW + labour.length - 1;
  const totalRow = last + 2;
  columns.forEach((_column, index) => {
    writeCell(sheet.getCell(totalRow, index + 1), null, 'total');
  });
  writeCell(sheet.getCell(totalRow, 2), 'All tasks, minutes', 'total');
  const total = labour.length === 0 ? '0' : `ROUND(SUM(K${FIRST_ROW}:K${last}),2)`;
  writeCell(sheet.getCell(totalRow, 11), { formula: total, result: price.labourMin }, 'total', 'minutes');
  nameCell(context.book, 'LabourMinutes', sheetNames.labour, `K${totalRow}`);
  writeReturns(context, sheet, totalRow + 1);
  writeStages(context, sheet, { last, start: totalRow + 3 });
}

/** What plaster is come back for, under the total: its minutes fall on no day of work, and each time is a visit of its own. */
function writeReturns({ book, scheme }: WorkbookContext, sheet: Worksheet, row: number): void {
  const { labour, price } = scheme;
  const at = labour.findIndex(({ task }) => task === 'return-visit');
  const task = FIRST_ROW + at;
  const minutes = price.labourMin - price.visits.workMin;
  writeCell(sheet.getCell(row, 2), 'of these come back for: times, minutes', 'text');
  writeCell(
    sheet.getCell(row, 4),
    { formula: at < 0 ? '0' : `ROUNDUP(D${task},0)`, result: price.visits.returns },
    'number',
    'quantity',
  );
  writeCell(
    sheet.getCell(row, 11),
    { formula: at < 0 ? '0' : `K${task}`, result: hundredths(minutes) },
    'number',
    'minutes',
  );
  nameCell(book, 'ReturnVisits', sheetNames.labour, `D${row}`);
  nameCell(book, 'ReturnMinutes', sheetNames.labour, `K${row}`);
}

/** Of the columns above, those that the stages have a figure in; the hours stand where the norms do. */
const stageHeaders: readonly TableTitle[] = [
  'Stage',
  ...Array<string>(7).fill(''),
  ...['Hours', 'Taken', 'Minutes', 'Taken', 'More'].map((overNumbers) => ({ overNumbers })),
];
const hundredths = (value: number): number => Math.round(value * 100) / 100;

/** The minutes and hours of each stage, under those of all tasks: reckoned, and taken where that was written down. */
function writeStages(
  { scheme }: WorkbookContext,
  sheet: Worksheet,
  { last, start }: { readonly last: number; readonly start: number },
): void {
  const level = ({ low: 'lowMin', typical: 'typicalMin', high: 'highMin' } as const)[
    scheme.price.labourLevel
  ];
  const told = new Map(
    scheme.worked.job.actuals?.stages.map(({ stage, minutes }) => [stage, minutes] as const),
  );
  writeHeading(sheet, start, 'By stage', stageHeaders);
  stageMinutes(scheme.labour).forEach(({ stage, ...minutes }, index) => {
    const row = start + 2 + index;
    const takenMin = told.get(stage) ?? null;
    const sum = `SUMIF(A${FIRST_ROW}:A${last},"${stageWords[stage]}",K${FIRST_ROW}:K${last})`;
    const [taken = null, more = null] = takenCells(minutes[level], takenMin, row);
    writeCell(sheet.getCell(row, 1), stageWords[stage], 'text');
    writeCell(sheet.getCell(row, 2), 'All tasks of the stage', 'text');
    const reckoned = { formula: `ROUND(${sum},2)`, result: hundredths(minutes[level]) };
    writeCell(sheet.getCell(row, 11), reckoned, 'number', 'minutes');
    writeCell(sheet.getCell(row, 12), taken, 'input', 'minutes');
    writeCell(sheet.getCell(row, 13), more, 'number', 'minutes');
    const hours = { formula: `ROUND(K${row}/60,2)`, result: hundredths(minutes[level] / 60) };
    writeCell(sheet.getCell(row, 9), hours, 'number', 'hours');
    const hoursTaken = takenMin === null ? '' : hundredths(takenMin / 60);
    const formula = `IF(L${row}="","",ROUND(L${row}/60,2))`;
    writeCell(sheet.getCell(row, 10), { formula, result: hoursTaken }, 'number', 'hours');
  });
}
