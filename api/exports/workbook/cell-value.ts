import type { Cell } from 'exceljs';
import { cellText, looksLikeFormula } from './cell-text.ts';
import { alignAsText, type CellRole, type FormatName, formats, restyle, styleCell } from './sheet-style.ts';

/** A live formula with what it gives as the engine has it, for viewers that do not calculate. */
export interface LiveFormula {
  readonly formula: string;
  readonly result: number | string;
}

/** What a cell may hold; null leaves it empty. */
export type CellContent = string | number | LiveFormula | null;

/**
 * Writes one cell. Text is only ever text: it is cleaned, and where it begins as a formula would, the cell
 * is marked as text, so that typing it in again leaves it one.
 */
export function writeCell(cell: Cell, content: CellContent, role: CellRole, format?: FormatName): void {
  styleCell(cell, role, format);
  if (content === null) return;
  if (typeof content === 'string') {
    cell.value = cellText(content);
    if (role === 'input') alignAsText(cell);
    if (looksLikeFormula(content)) restyle(cell, { numFmt: formats.text });
  } else if (typeof content === 'number') cell.value = content;
  else cell.value = { formula: content.formula, result: content.result, date1904: false };
}

/** Pence as the pounds of a cell. */
export function pounds(pence: number): number {
  return pence / 100;
}
