import type { Alignment, Borders, Cell, Fill, Font, Style } from 'exceljs';
import { tokens } from '#drawing/ink.ts';

/** How numbers are written, as the trade writes them. */
export const formats = {
  money: '£#,##0.00',
  percent: '0.00%',
  wholePercent: '0%',
  metres: '0.00" m"',
  millimetres: '0" mm"',
  hours: '0.00" h"',
  amps: '0.0" A"',
  volts: '0.0" V"',
  ohms: '0.00" Ω"',
  minutes: 'General',
  factor: 'General',
  quantity: 'General',
  text: '@',
} as const;
export type FormatName = keyof typeof formats;

/** A colour as the file format writes it: opaque, without the hash. */
export function argb(token: keyof typeof tokens): { argb: string } {
  return { argb: `FF${tokens[token].slice(1).toUpperCase()}` };
}

function solid(token: keyof typeof tokens): Fill {
  return { type: 'pattern', pattern: 'solid', fgColor: argb(token) };
}

function font(size: number, bold: boolean, token: keyof typeof tokens): Partial<Font> {
  return { name: 'Arial', family: 2, size, bold, color: argb(token) };
}

const hairline: Partial<Borders> = { bottom: { style: 'hair', color: argb('line') } };
const wrapped: Partial<Alignment> = { vertical: 'top', wrapText: true, horizontal: 'left', indent: 1 };

/** What a cell is, by which it looks. `input` may be changed by hand and all else follows. */
export type CellRole =
  | 'title'
  | 'note'
  | 'heading'
  | 'header'
  | 'number-header'
  | 'text'
  | 'number'
  | 'input'
  | 'total'
  | 'price';

interface Look {
  readonly font: Partial<Font>;
  readonly fill?: Fill;
  readonly border?: Partial<Borders>;
  readonly alignment: Partial<Alignment>;
}

const header = {
  font: font(9, true, 'ink'),
  fill: solid('paper'),
  border: { bottom: { style: 'thin', color: argb('ink') } },
} as const;

const looks: Readonly<Record<CellRole, Look>> = {
  title: { font: font(14, true, 'ink'), alignment: { vertical: 'middle' } },
  note: { font: font(9, false, 'inkSoft'), alignment: { vertical: 'top' } },
  heading: { font: font(11, true, 'ink'), alignment: { vertical: 'bottom' } },
  header: { ...header, alignment: { vertical: 'bottom', wrapText: true, horizontal: 'left', indent: 1 } },
  'number-header': { ...header, alignment: { vertical: 'bottom', wrapText: true, horizontal: 'right' } },
  text: { font: font(10, false, 'ink'), border: hairline, alignment: wrapped },
  number: { font: font(10, false, 'ink'), border: hairline, alignment: { vertical: 'top' } },
  input: {
    font: font(10, false, 'ink'),
    fill: solid('askWash'),
    border: { bottom: { style: 'hair', color: argb('ask') } },
    alignment: { vertical: 'top' },
  },
  total: {
    font: font(10, true, 'ink'),
    border: { top: { style: 'thin', color: argb('ink') } },
    alignment: { vertical: 'top' },
  },
  price: { font: font(12, true, 'sheet'), fill: solid('ink'), alignment: { vertical: 'middle' } },
};

/** Looks that have been asked for, by their words. Cells that look alike share one: the package turns each style object into text to tell
 * which it is, which takes longer than all else of a cell. */
const known = new Map<string, Partial<Style>>();

function sharedStyle(key: string, make: () => Partial<Style>): Partial<Style> {
  const style = known.get(key) ?? make();
  known.set(key, style);
  return style;
}

/** Changes some of a cell's look, and no other cell's. */
export function restyle(cell: Cell, part: Partial<Style>): void {
  const style = { ...cell.style, ...part };
  cell.style = sharedStyle(JSON.stringify(style), () => style);
}

/** Words in a cell for numbers keep clear of the number before them. */
export const alignAsText = (cell: Cell): void =>
  restyle(cell, { alignment: { ...cell.alignment, horizontal: 'left', indent: 1 } });

/** Gives a cell its look and its number format. */
export function styleCell(cell: Cell, role: CellRole, format?: FormatName): void {
  cell.style = sharedStyle(`${role} ${format}`, () => ({
    ...looks[role],
    ...(format === undefined ? {} : { numFmt: formats[format] }),
  }));
}
