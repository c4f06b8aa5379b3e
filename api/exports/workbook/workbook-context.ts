import type { Workbook } from 'exceljs';
import type { ShoppingSheet } from '#drawing/shopping/shopping-sheet.ts';
import type { Estimate } from '#engine/schemes/estimate-result.ts';
import type { LineContext } from '../line-context.ts';

/** What every sheet is made from. */
export interface WorkbookContext extends LineContext {
  readonly book: Workbook;
  readonly estimate: Estimate;
  /** The name of the job's state. */
  readonly state: string;
  /** What is bought, as every format has it: where something is bought in case, not what the scheme is counted by. */
  readonly shopping: ShoppingSheet;
  /** What is said of a firm and prices that are the demo's still; null when nothing is. */
  readonly demoNote: string | null;
}

/** The sheets by name, as formulas of other sheets write them. */
export const sheetNames = {
  summary: 'Summary',
  bill: 'Bill of materials',
  shopping: 'Shopping list',
  cuts: 'Cut list',
  labour: 'Labour',
  cable: 'Cable schedule',
  points: 'Points',
  proof: 'Proof',
  checks: 'Checks',
  comparison: 'Comparison',
} as const;

/** Gives one cell of a sheet a name of the whole workbook. */
export function nameCell(book: Workbook, name: string, sheet: string, cell: string): void {
  const absolute = cell.replace(/^([A-Z]+)(\d+)$/, '$$$1$$$2');
  book.definedNames.add(`'${sheet}'!${absolute}`, name);
}
