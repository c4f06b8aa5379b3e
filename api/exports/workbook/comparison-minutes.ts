import type { Worksheet } from 'exceljs';
import { type StageMinutes, stageMinutes } from '#engine/labour/stage-hours.ts';
import type { LabourTask } from '#engine/labour/task.ts';
import { stageWords } from '../line-notes.ts';
import { writeCell } from './cell-value.ts';
import { factorOf } from './labour-sheet.ts';
import { fitHeight, type TableTitle, writeHeading } from './table-sheet.ts';
import type { WorkbookContext } from './workbook-context.ts';

const headers: readonly TableTitle[] = [
  'Scheme',
  'Stage',
  '',
  '',
  { overNumbers: 'Low, minutes' },
  { overNumbers: 'Typical, minutes' },
  { overNumbers: 'High, minutes' },
  { overNumbers: 'Times, as estimated' },
  { overNumbers: 'Times now' },
];

/** The rows of one scheme's minutes on the comparison sheet, both included. */
export interface MinuteRows {
  readonly first: number;
  readonly last: number;
}

/** Minutes of a row, and what they are multiplied by. */
interface MinutesToWrite extends Omit<StageMinutes, 'stage'> {
  readonly words: string;
  readonly times: ReturnType<typeof factorOf>;
}

/** Minutes by the norms stage by stage, then those that were given for the job alone: no factor counts for them. */
function minutesToWrite(context: WorkbookContext, labour: readonly LabourTask[]): readonly MinutesToWrite[] {
  const byNorms = stageMinutes(labour.filter(({ own }) => own === undefined));
  const given = stageMinutes(labour.filter(({ own }) => own !== undefined));
  return [
    ...byNorms.map(({ stage, ...minutes }) => ({
      ...minutes,
      words: stageWords[stage],
      times: factorOf(context, stage),
    })),
    ...given.map(({ stage, ...minutes }) => ({
      ...minutes,
      words: `${stageWords[stage]}, not on the drawing`,
      times: 1 as const,
    })),
  ];
}

/**
 * Writes the minutes of every scheme but the workbook's own, stage by stage at the three levels of the norms, with what
 * the stage's minutes were multiplied by when they were estimated and what they are multiplied by now.
 *
 * @param start the row of the table's heading.
 * @returns the rows by scheme; a scheme without labour has none. With one scheme only nothing is written.
 */
export function writeStageMinutes(
  context: WorkbookContext,
  sheet: Worksheet,
  start: number,
): ReadonlyMap<string, MinuteRows> {
  const others = context.estimate.schemes.filter(({ id }) => id !== context.scheme.id);
  const found = new Map<string, MinuteRows>();
  if (others.length === 0) return found;
  writeHeading(sheet, start, 'Minutes of the other schemes, by stage', headers);
  let row = start + 2;
  for (const { id, name, labour } of others) {
    const stages = minutesToWrite(context, labour);
    if (stages.length > 0) found.set(id, { first: row, last: row + stages.length - 1 });
    for (const { words, times, ...minutes } of stages) {
      writeCell(sheet.getCell(row, 1), name, 'text');
      writeCell(sheet.getCell(row, 2), words, 'text');
      writeCell(sheet.getCell(row, 5), minutes.lowMin, 'input', 'minutes');
      writeCell(sheet.getCell(row, 6), minutes.typicalMin, 'input', 'minutes');
      writeCell(sheet.getCell(row, 7), minutes.highMin, 'input', 'minutes');
      writeCell(sheet.getCell(row, 8), typeof times === 'number' ? times : times.result, 'number', 'factor');
      writeCell(sheet.getCell(row, 9), times, 'number', 'factor');
      fitHeight(sheet, row, [{ text: name, widthChars: sheet.getColumn(1).width ?? 10 }]);
      row++;
    }
  }
  return found;
}

/** The minutes at one level, its column given, as they are multiplied now; hundredths, as those of the tasks are. */
export function minutesFormula(rows: MinuteRows | undefined, column: string): string {
  if (rows === undefined) return '0';
  const of = (letter: string): string => `${letter}${rows.first}:${letter}${rows.last}`;
  return `ROUND(SUMPRODUCT(${of(column)},${of('I')}/${of('H')}),2)`;
}
