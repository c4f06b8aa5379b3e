import type { Run, RunEnd } from '#engine/ways/run.ts';
import type { Cable } from '#model/cable.ts';
import { type CellContent, writeCell } from './cell-value.ts';
import { addTableSheet, type Column, FIRST_ROW, writeHeading, writeRow } from './table-sheet.ts';
import { sheetNames, type WorkbookContext } from './workbook-context.ts';

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

const typeWords: Readonly<Record<Cable['type'], string>> = {
  'flat-twin': 'Flat twin and earth',
  'flat-single': 'Flat single and earth',
  'steel-wire-armoured': 'Steel-wire armoured',
  flex: 'Flex',
  imperial: 'Old imperial cable',
};

/** A cable as the schedule names it. */
function cableWords({ type, lineMm2, cpcMm2 }: Cable): string {
  return `${typeWords[type]} ${lineMm2}${cpcMm2 > 0 ? `/${cpcMm2}` : ''} mm²`;
}

function endWords({ nodeId, pointId, kind }: RunEnd, { labelOf }: WorkbookContext): string {
  if (pointId !== null) return labelOf(pointId);
  return kind === 'board' ? `Board, ${labelOf(nodeId)}` : labelOf(nodeId);
}

function knownBy({ segments, pinned }: Run): string {
  if (segments.length === 0) return 'not surveyed';
  if (segments.some(({ certainty }) => certainty === 'assumed')) return 'assumed';
  return pinned ? 'drawn by hand' : 'derived';
}

const metres = (lengthMm: number | null): number | null => (lengthMm === null ? null : lengthMm / 1000);

function contentsOf(context: WorkbookContext, run: Run, row: number): readonly CellContent[] {
  const known = run.lengthMm !== null;
  return [
    endWords(run.from, context),
    endWords(run.to, context),
    run.circuitIds.map(context.labelOf).join(', '),
    cableWords(run.cable),
    known ? metres(run.routeMm) : null,
    known ? metres(run.endsMm) : null,
    known ? metres(run.slackMm) : null,
    run.lengthMm === null ? 'not known' : { formula: `SUM(E${row}:G${row})`, result: run.lengthMm / 1000 },
    metres(run.lowMm),
    metres(run.highMm),
    knownBy(run),
    run.steps.join('; '),
  ];
}

/** What each kind of cable comes to, before waste. */
function sumRows(runs: readonly Run[]): readonly { readonly cable: string; readonly lengthMm: number }[] {
  const sums = new Map<string, number>();
  for (const { cable, lengthMm } of runs)
    sums.set(cableWords(cable), (sums.get(cableWords(cable)) ?? 0) + (lengthMm ?? 0));
  return [...sums]
    .map(([cable, lengthMm]) => ({ cable, lengthMm }))
    .toSorted((a, b) => (a.cable < b.cable ? -1 : 1));
}

/** The cable schedule: every new run, how its length comes about, and the sum by kind of cable. */
export function addCableSheet(context: WorkbookContext): void {
  const { runs } = context.scheme;
  const note =
    'New cable only. Length = way + ends + slack, before waste; the bill has it with waste and in packs.';
  const sheet = addTableSheet(context, sheetNames.cable, note, columns);
  runs.forEach((run, index) => {
    writeRow(sheet, FIRST_ROW + index, columns, contentsOf(context, run, FIRST_ROW + index));
  });
  const last = FIRST_ROW + Math.max(runs.length, 1) - 1;
  const start = last + 2;
  writeHeading(sheet, start, 'By kind of cable', ['Cable', '', '', '', '', '', '', 'Length']);
  sumRows(runs).forEach(({ cable, lengthMm }, index) => {
    const row = start + 2 + index;
    const formula = `SUMIF($D$${FIRST_ROW}:$D$${last},A${row},$H$${FIRST_ROW}:$H$${last})`;
    sheet.mergeCells(row, 1, row, 4);
    writeCell(sheet.getCell(row, 1), cable, 'text');
    writeCell(sheet.getCell(row, 8), { formula, result: lengthMm / 1000 }, 'number', 'metres');
  });
}
