import type { Borders, Worksheet } from 'exceljs';
import { argb } from './sheet-style.ts';

/** The block of narrow cells at the right of the sheet: a bar a row. */
export const BAR_COLUMN = 10;
const BAR_CELLS = 24;
const BAR_CELL_WIDTH = 1.5;
/** How far the block reaches beyond the limit, as a share of it. */
const REACH = 1.2;

/** Makes the columns of the block as narrow as they are to be. */
export function narrowBarColumns(sheet: Worksheet): void {
  for (let i = 0; i < BAR_CELLS; i++) sheet.getColumn(BAR_COLUMN + i).width = BAR_CELL_WIDTH;
}

/** A row's bar. */
interface Bar {
  readonly row: number;
  /** The figure as a share of its limit; null draws the limit alone. */
  readonly share: number | null;
  readonly isNew: boolean;
}

/**
 * Fills cells up to a share of a limit, with the limit as an upright line through all rows. Found things are dark, new
 * ones hatched; what is beyond the limit is red and dotted.
 */
export function writeBar(sheet: Worksheet, { row, share, isNew }: Bar): void {
  const limitCell = Math.round(BAR_CELLS / REACH);
  const filled = share === null ? 0 : Math.min(BAR_CELLS, Math.max(1, Math.round(share * limitCell)));
  const isBeyond = share !== null && share > 1;
  for (let i = 0; i < BAR_CELLS; i++) {
    const cell = sheet.getCell(row, BAR_COLUMN + i);
    const border: Partial<Borders> = { bottom: { style: 'hair', color: argb('line') } };
    cell.border =
      i === limitCell - 1 ? { ...border, right: { style: 'medium', color: argb('fail') } } : border;
    // A bar just beyond its limit must show it.
    if (i >= filled && !(isBeyond && i === limitCell)) continue;
    const isRed = isBeyond && i >= limitCell;
    cell.fill = {
      type: 'pattern',
      pattern: isRed ? 'darkGray' : isNew ? 'darkUp' : 'solid',
      fgColor: argb(isRed ? 'fail' : isNew ? 'copper' : 'wall'),
      bgColor: argb('sheet'),
    };
  }
}

/** A spreadsheet's own bars in the cells of a column, from nothing to a limit. */
export function addDataBars(sheet: Worksheet, ref: string, limit: number, priority: number): void {
  const rule = {
    type: 'dataBar' as const,
    priority,
    gradient: true,
    cfvo: [
      { type: 'num' as const, value: 0 },
      { type: 'num' as const, value: limit },
    ],
    color: argb('copper'),
  };
  sheet.addConditionalFormatting({ ref, rules: [rule] });
}
