import type { Borders, Fill, Style, Worksheet } from 'exceljs';
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

const hairline: Partial<Borders> = { bottom: { style: 'hair', color: argb('line') } };
const limitLine: Partial<Borders> = { ...hairline, right: { style: 'medium', color: argb('fail') } };

const filledWith = (pattern: 'solid' | 'darkUp' | 'darkGray', token: Parameters<typeof argb>[0]): Fill => ({
  type: 'pattern',
  pattern,
  fgColor: argb(token),
  bgColor: argb('sheet'),
});
const fills = {
  found: filledWith('solid', 'wall'),
  new: filledWith('darkUp', 'copper'),
  beyond: filledWith('darkGray', 'fail'),
} as const;

const styles = new Map<Fill | undefined, Map<Partial<Borders>, Partial<Style>>>();

/** One style for all cells that look alike (see `styleCell`). */
function barStyle(fill: Fill | undefined, border: Partial<Borders>): Partial<Style> {
  const byBorder = styles.get(fill) ?? new Map<Partial<Borders>, Partial<Style>>();
  styles.set(fill, byBorder);
  const style = byBorder.get(border) ?? { border, ...(fill === undefined ? {} : { fill }) };
  byBorder.set(border, style);
  return style;
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
    // A bar just beyond its limit must show it.
    const isFilled = i < filled || (isBeyond && i === limitCell);
    const fill = fills[isBeyond && i >= limitCell ? 'beyond' : isNew ? 'new' : 'found'];
    cell.style = barStyle(isFilled ? fill : undefined, i === limitCell - 1 ? limitLine : hairline);
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
