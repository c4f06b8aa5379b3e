import { sharedWayWords } from '#drawing/ways/shared-way-words.ts';
import { cableLengthM } from '#engine/takeoff/run-length.ts';
import type { Run, RunEnd } from '#engine/ways/run.ts';
import type { Cable } from '#model/cable.ts';
import { cableTypeWords, cableWords } from './cable-words.ts';
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

/** What each kind of cable comes to, before waste. */
function sumRows(runs: readonly Run[]): readonly { readonly cable: string; readonly lengthM: number }[] {
  const sums = new Map<string, { readonly cable: Cable; readonly lengthM: number }>();
  for (const run of runs) {
    const words = cableWords(run.cable);
    sums.set(words, {
      cable: run.cable,
      lengthM: (sums.get(words)?.lengthM ?? 0) + cableLengthM(run).measuredM,
    });
  }
  return [...sums]
    .toSorted(([, a], [, b]) => bySize(a.cable, b.cable))
    .map(([cable, { lengthM }]) => ({ cable, lengthM }));
}

/** Kinds in the order of their names, in each the thinnest first. */
const bySize = (a: Cable, b: Cable): number =>
  cableTypeWords[a.type].localeCompare(cableTypeWords[b.type], 'en-GB') ||
  a.lineMm2 - b.lineMm2 ||
  a.cpcMm2 - b.cpcMm2;

/** The cable schedule: every new run, how its length comes about, and the sum by kind of cable. */
export function addCableSheet(context: WorkbookContext): void {
  const { runs } = context.scheme;
  const note =
    'New cable only. Length = way + ends + slack, before waste; the bill has it with waste and in packs. A typical length stands where an end has no place yet: write your own over it.';
  const sheet = addTableSheet(context, sheetNames.cable, note, columns);
  runs.forEach((run, index) => {
    writeRow(sheet, FIRST_ROW + index, columns, contentsOf(context, run, FIRST_ROW + index));
  });
  const last = FIRST_ROW + Math.max(runs.length, 1) - 1;
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
  sumRows(runs).forEach(({ cable, lengthM }, index) => {
    const row = start + 2 + index;
    const formula = `SUMIF($D$${FIRST_ROW}:$D$${last},A${row},$H$${FIRST_ROW}:$H$${last})`;
    sheet.mergeCells(row, 1, row, 4);
    writeCell(sheet.getCell(row, 1), cable, 'text');
    writeCell(sheet.getCell(row, 8), { formula, result: lengthM }, 'number', 'metres');
  });
}
