import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import { LOCK_WORDS, lockMark } from '../lock-mark.ts';
import { findingMark, outcomeInk, outcomeWords } from '../marks.ts';
import { line, type Shape, words } from '../scene.ts';
import { drawSymbol, type SymbolName, type SymbolState, symbolWords } from '../symbols.ts';
import type { NumberedFinding } from './finding-marks.ts';
import type { SheetLayout } from './sheet-layout.ts';
import { wrapped } from './text-rows.ts';
import { TITLE_BLOCK_MM, type TitleBlockContent, titleBlock } from './title-block.ts';

/** What the panel beside a plan says. */
export interface PanelContent extends TitleBlockContent {
  readonly editionNote: string;
  readonly cautions: readonly string[];
  readonly symbols: readonly { readonly name: SymbolName; readonly state: SymbolState }[];
  /** Whether something on the sheet carries the mark of a lock. */
  readonly hasLocks: boolean;
  readonly runs: readonly { readonly label: string; readonly way: string; readonly length: string }[];
  readonly marks: readonly NumberedFinding[];
  readonly adviceCount: number;
}

interface Column {
  readonly leftMm: number;
  readonly widthMm: number;
  readonly bottomMm: number;
  topMm: number;
  readonly shapes: Shape[];
}

const at = (column: Column, inset = 0): SheetPoint => sheetPoint(column.leftMm + inset, column.topMm);

function heading(column: Column, text: string): void {
  column.topMm += 5.2;
  column.shapes.push(words('text-soft', at(column), text, { sizeMm: 2.5, strong: true }));
  column.topMm += 1.2;
  column.shapes.push(line('rule', [at(column), sheetPoint(column.leftMm + column.widthMm, column.topMm)]));
}

function paragraph(column: Column, text: string, inset: number, ink: 'text' | 'text-soft' = 'text'): void {
  for (const row of wrapped(text, column.widthMm - inset, 2.2)) {
    column.topMm += 2.9;
    column.shapes.push(words(ink, at(column, inset), row, { sizeMm: 2.2 }));
  }
}

function legend(column: Column, content: PanelContent): void {
  heading(column, 'Legend');
  for (const symbol of content.symbols) {
    column.topMm += 5.4;
    const foot = sheetPoint(column.leftMm + 4, column.topMm);
    column.shapes.push(
      ...drawSymbol(
        symbol.name,
        { at: symbol.name.startsWith('joint') ? sheetPoint(foot[0], foot[1] - 1.4) : foot, into: [0, -1] },
        symbol.state,
      ),
    );
    const state = symbol.state === 'new' ? ', new' : symbol.state === 'removed' ? ', removed' : '';
    column.shapes.push(
      words('text', sheetPoint(column.leftMm + 11, column.topMm - 1), `${symbolWords[symbol.name]}${state}`, {
        sizeMm: 2.2,
      }),
    );
  }
  const strokes = [
    ['found', 'cable as found, its way seen'],
    ['found-assumed', 'cable as found, its way assumed (?)'],
    ['new', 'new cable, with its length'],
    ['removed', 'cable taken out of use'],
  ] as const;
  for (const [ink, meaning] of strokes) {
    column.topMm += 4;
    column.shapes.push(
      line(ink, [
        sheetPoint(column.leftMm, column.topMm - 0.8),
        sheetPoint(column.leftMm + 8, column.topMm - 0.8),
      ]),
    );
    column.shapes.push(words('text', sheetPoint(column.leftMm + 11, column.topMm), meaning, { sizeMm: 2.2 }));
  }
  if (content.hasLocks) lockRow(column);
}

function lockRow(column: Column): void {
  column.topMm += 4.6;
  column.shapes.push(
    ...lockMark(sheetPoint(column.leftMm + 4, column.topMm - 1)),
    words('text', sheetPoint(column.leftMm + 11, column.topMm), LOCK_WORDS, { sizeMm: 2.2 }),
  );
}

function runTable(column: Column, content: PanelContent): void {
  if (content.runs.length === 0) return;
  heading(column, 'New cables');
  for (const run of content.runs) {
    column.topMm += 3.4;
    column.shapes.push(words('text-new', at(column), run.label, { sizeMm: 2.2, strong: true }));
    column.shapes.push(
      words('text', sheetPoint(column.leftMm + column.widthMm, column.topMm), run.length, {
        sizeMm: 2.2,
        anchor: 'end',
      }),
    );
    paragraph(column, run.way, 4, 'text-soft');
  }
}

/** Lists as many findings as there is room for; returns how many. */
function findingList(column: Column, content: PanelContent): number {
  heading(column, 'Findings to see to');
  if (content.marks.length === 0) paragraph(column, 'None that fails, wants a decision or is not proven.', 0);
  let left = content.marks.length;
  for (const mark of content.marks) {
    const rows = wrapped(`${outcomeWords[mark.outcome]}: ${mark.finding.message}`, column.widthMm - 7, 2.2);
    if (column.topMm + rows.length * 2.9 + 6 > column.bottomMm) break;
    column.shapes.push(
      ...findingMark(mark.outcome, sheetPoint(column.leftMm + 2.6, column.topMm + 3.4), mark.label),
    );
    for (const row of rows) {
      column.topMm += 2.9;
      column.shapes.push(words(outcomeInk(mark.outcome), at(column, 7), row, { sizeMm: 2.2 }));
    }
    column.topMm += 2;
    left--;
  }
  const rest = [
    left > 0 ? `${left} more` : '',
    content.adviceCount > 0 ? `${content.adviceCount} of advice` : '',
  ].filter((part) => part !== '');
  if (rest.length > 0) paragraph(column, `And ${rest.join(' and ')}, in the list of checks.`, 0, 'text-soft');
  return content.marks.length - left;
}

/** The panel as drawn. */
export interface Panel {
  readonly shapes: readonly Shape[];
  /** How many of the numbered findings there was room to list, from the first. */
  readonly listed: number;
}

/** The words beside a plan: title block at the foot, then findings, new cables, legend and cautions above it. */
export function panelOf(layout: SheetLayout, content: PanelContent): Panel {
  const { leftMm, rightMm, topMm, bottomMm } = layout.panel;
  const column: Column = {
    leftMm: leftMm + 3,
    widthMm: rightMm - leftMm - 6,
    bottomMm: bottomMm - TITLE_BLOCK_MM - 4,
    topMm,
    shapes: [],
  };
  const cautionRows = content.cautions.flatMap((caution) => wrapped(caution, column.widthMm, 2.2));
  legend(column, content);
  runTable(column, content);
  const findingsColumn: Column = { ...column, bottomMm: column.bottomMm - cautionRows.length * 2.9 - 8 };
  const listed = findingList(findingsColumn, content);
  const cautions: Column = { ...column, topMm: findingsColumn.bottomMm };
  heading(cautions, 'Cautions');
  for (const caution of content.cautions) paragraph(cautions, caution, 0);
  const edge = line('rule', [sheetPoint(leftMm, topMm), sheetPoint(leftMm, bottomMm)]);
  return { shapes: [edge, ...column.shapes, ...titleBlock(layout, content)], listed };
}
