import { sharedWayWords } from '#drawing/ways/shared-way-words.ts';
import { cableLengthM } from '#engine/takeoff/run-length.ts';
import type { Run, RunEnd } from '#engine/ways/run.ts';
import { CABLE_WASTE, cableKinds, lastRunRow } from './cable-layout.ts';
import { cableWords } from './cable-words.ts';
import { type CellContent, writeCell } from './cell-value.ts';
import { addTableSheet, type Column, FIRST_ROW, writeHeading, writeRow } from './table-sheet.ts';
import { nameCell, sheetNames, type WorkbookContext } from './workbook-context.ts';

const columns: readonly Column[] = [
  { header: 'From', width: 16, role: 'text' },
  { header: 'To', width: 16, role: 'text' },
  { header: 'Circuit', width: 16, role: 'text' },
  { header: 'Cable', width: 26, role: 'text' },
  { header: 'Way', width: 9, role: 'input', format: 'metres' },
  { header: 'Ends', width: 8, role: 'input', format: 'metres' },
  { header: 'Slack', width: 8, role: 'input', format: 'metres' },
  { header: 'Length', width: 9, role: 'number', format: 'metres' },
  { header: 'at least', width: 9, role: 'number', format: 'metres' },
  { header: 'at most', width: 9, role: 'number', format: 'metres' },
  { header: 'Known by', width: 14, role: 'text' },
  { header: 'Way in words', width: 60, role: 'text' },
];

function endWords({ nodeId, pointId, kind }: RunEnd, { labelOf }: WorkbookContext): string {
  if (pointId !== null) return labelOf(pointId);
  return kind === 'board' ? `Board, ${labelOf(nodeId)}` : labelOf(nodeId);
}

function knownBy({ segments, pinned }: Run): string {
  if (segments.length === 0) return 'typical length';
  if (segments.some(({ certainty }) => certainty === 'assumed')) return 'assumed';
  return pinned ? 'drawn by hand' : 'derived';
}

const metres = (lengthMm: number): number => lengthMm / 1000;

function contentsOf(context: WorkbookContext, run: Run, row: number): readonly CellContent[] {
  const known = run.lengthMm !== null;
  const { measuredM, lowM, highM } = cableLengthM(run);
  return [
    endWords(run.from, context),
    endWords(run.to, context),
    run.circuitIds.map(context.labelOf).join(', '),
    cableWords(run.cable),
    known ? metres(run.routeMm) : measuredM,
    known ? metres(run.endsMm) : null,
    known ? metres(run.slackMm) : null,
    { formula: `SUM(E${row}:G${row})`, result: measuredM },
    lowM,
    highM,
    knownBy(run),
    [...run.steps, ...sharedWayWords(context.scheme.worked, run)].join('; '),
  ];
}

/** The cable schedule: every new run, how its length comes about, and the sum by kind of cable. */
export function addCableSheet(context: WorkbookContext): void {
  const { runs } = context.scheme;
  const note =
    'New cable only. Length = way + ends + slack, before waste. A typical length stands where an end has no place yet: write your own over it. The bill, the cut list and what the shopping list wants follow what is changed here, with waste; tube, clips and labour stay as estimated.';
  const sheet = addTableSheet(context, sheetNames.cable, note, columns);
  runs.forEach((run, index) => {
    writeRow(sheet, FIRST_ROW + index, columns, contentsOf(context, run, FIRST_ROW + index));
  });
  const last = lastRunRow(runs);
  const start = last + 2;
  writeHeading(sheet, start, 'By kind of cable', [
    'Cable',
    '',
    '',
    '',
    '',
    '',
    '',
    { overNumbers: 'Length' },
  ]);
  const kinds = cableKinds(runs);
  for (const { words, lengthM, row } of kinds) {
    const formula = `SUMIF($D$${FIRST_ROW}:$D$${last},A${row},$H$${FIRST_ROW}:$H$${last})`;
    sheet.mergeCells(row, 1, row, 4);
    writeCell(sheet.getCell(row, 1), words, 'text');
    writeCell(sheet.getCell(row, 8), { formula, result: lengthM }, 'number', 'metres');
  }
  const wasteRow = start + 3 + kinds.length;
  sheet.mergeCells(wasteRow, 1, wasteRow, 4);
  writeCell(sheet.getCell(wasteRow, 1), 'Waste on cable, on top of its length', 'text');
  writeCell(sheet.getCell(wasteRow, 8), context.library.norms.waste.cable / 100, 'input', 'percent');
  nameCell(context.book, CABLE_WASTE, sheetNames.cable, `H${wasteRow}`);
}
