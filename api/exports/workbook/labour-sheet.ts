import type { LabourTask, Stage } from '#engine/labour/task.ts';
import { type CellContent, writeCell } from './cell-value.ts';
import { addTableSheet, type Column, FIRST_ROW, writeRow } from './table-sheet.ts';
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
  { header: 'Minutes', width: 10, role: 'number', format: 'minutes' },
  { header: 'Caused by', width: 40, role: 'text' },
  { header: 'Note', width: 26, role: 'text' },
];

const stageWords: Readonly<Record<Stage, string>> = {
  before: 'Before',
  'first-fix': 'First fix',
  'second-fix': 'Second fix',
  test: 'Test',
  after: 'After',
};

function noteOf(task: LabourTask): string | null {
  if (task.typicalMin === null) return 'No norm in the library: not in the price';
  return task.quantity === 0 ? 'May turn out to be needed' : null;
}

function contentsOf(context: WorkbookContext, task: LabourTask, row: number): readonly CellContent[] {
  const norm = context.library.norms.tasks.find((candidate) => candidate.task === task.task);
  const level = context.scheme.price.labourLevel;
  const minutes = { low: task.lowMin, typical: task.typicalMin, high: task.highMin }[level];
  return [
    stageWords[task.stage],
    task.description,
    task.unit,
    task.quantity,
    task.lowQuantity,
    task.highQuantity,
    norm?.lowMin ?? null,
    norm?.typicalMin ?? null,
    norm?.highMin ?? null,
    {
      formula: `ROUND(D${row}*CHOOSE(LabourLevelNumber,G${row},H${row},I${row}),2)`,
      result: minutes ?? 0,
    },
    task.causes.map(context.labelOf).join(', '),
    noteOf(task),
  ];
}

/** Labour by task, by the firm's norms at the level chosen on the summary. */
export function addLabourSheet(context: WorkbookContext): void {
  const { labour, price } = context.scheme;
  const note = `Shaded cells may be changed; the rest follows. Norms: ${context.library.norms.source}.`;
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
  const total = labour.length === 0 ? '0' : `ROUND(SUM(J${FIRST_ROW}:J${last}),2)`;
  writeCell(sheet.getCell(totalRow, 10), { formula: total, result: price.labourMin }, 'total', 'minutes');
  nameCell(context.book, 'LabourMinutes', sheetNames.labour, `J${totalRow}`);
}
