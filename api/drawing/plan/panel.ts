import { sheetPoint } from '#engine/plan/sheet-frame.ts';
import { line, type Shape } from '../scene.ts';
import { type Column, flowed, type Section, sectionMm, sectionsIn, textBlocks } from './sheet/column.ts';
import { LETTERS_MM } from './sheet/lettering.ts';
import type { StoreyLists } from './sheet/sections.ts';
import { listLayout, type SheetLayout } from './sheet-layout.ts';
import { TITLE_BLOCK_MM, type TitleBlockContent, titleBlock } from './title-block.ts';

const INSET_MM = 3;

/** The room over the title block, mm on paper. */
function columnOf({ panel: { leftMm, rightMm, topMm, bottomMm } }: SheetLayout): Column {
  return {
    leftMm: leftMm + INSET_MM,
    widthMm: rightMm - leftMm - 2 * INSET_MM,
    topMm,
    bottomMm: bottomMm - TITLE_BLOCK_MM - 2,
  };
}

/** Which lists stand beside the plan, and which go on to a sheet of their own. */
export interface SharedOut {
  readonly beside: readonly Section[];
  readonly away: readonly Section[];
}

/** Room for two rows that say where the other lists are. */
const POINTER_MM = 3 * 3.4;

/**
 * Shares lists out: cautions and legend stay beside the plan as long as they fit; of the others, each that has room in its order. Where all
 * fit nothing goes away.
 */
export function sharedOut(
  layout: SheetLayout,
  legend: Section,
  { cautions, others }: StoreyLists,
): SharedOut {
  const { widthMm, topMm, bottomMm } = columnOf(layout);
  const room = bottomMm - topMm;
  const inOrder = [legend, ...others, cautions];
  const all = inOrder.reduce((sum, section) => sum + sectionMm(section, widthMm), 0);
  if (all <= room) return { beside: inOrder, away: [] };
  let left = room - POINTER_MM;
  const kept = new Set<Section>();
  for (const section of [cautions, legend, ...others]) {
    const tall = sectionMm(section, widthMm);
    if (tall > left) continue;
    kept.add(section);
    left -= tall;
  }
  return {
    beside: inOrder.filter((section) => kept.has(section)),
    away: inOrder.filter((section) => !kept.has(section)),
  };
}

const inWords = (sections: readonly Section[]): string =>
  sections.map(({ title }) => title.charAt(0).toLowerCase() + title.slice(1)).join(', ');

/** The words beside a plan: the lists that have room there, where the others are, and the title block at the foot. */
export function panelShapes(
  layout: SheetLayout,
  { beside, away }: SharedOut,
  content: TitleBlockContent,
): readonly Shape[] {
  const column = columnOf(layout);
  const { leftMm, topMm, bottomMm } = layout.panel;
  const edge = line('rule', [sheetPoint(leftMm, topMm), sheetPoint(leftMm, bottomMm)]);
  const lists = sectionsIn(beside, column);
  const pointer =
    away.length === 0
      ? []
      : textBlocks(`On sheet ${content.sheet.number + 1}: ${inWords(away)}.`, column.widthMm, {
          strong: true,
        });
  const rows = pointer.flatMap((row, i) =>
    row.shapesAt(sheetPoint(column.leftMm, lists.topMm + 1 + i * row.heightMm)),
  );
  return [edge, ...lists.shapes, ...rows, ...titleBlock(layout, content, true)];
}

/** A sheet of lists as laid out, before it is known which of how many it is. */
export interface ListSheet {
  readonly layout: SheetLayout;
  readonly shapes: readonly Shape[];
}

/** Sheets of lists that have no room beside their plan: two columns each, the second over the title block. */
export function listSheets(away: readonly Section[]): readonly ListSheet[] {
  if (away.length === 0) return [];
  const layout = listLayout();
  const { border, panel } = layout;
  const first: Column = {
    leftMm: border.leftMm + INSET_MM,
    widthMm: panel.leftMm - border.leftMm - 2 * INSET_MM,
    topMm: border.topMm,
    bottomMm: border.bottomMm - LETTERS_MM.notes,
  };
  return flowed(away, [first, columnOf(layout)]).map((shapes) => ({ layout, shapes }));
}
