import type { CellContent } from './cell-value.ts';
import type { CellRole, FormatName } from './sheet-style.ts';

/** One row of the summary: a label, a value, a remark; `name` is the value's name in the whole workbook. */
export interface SummaryRow {
  readonly label: string;
  readonly value: CellContent;
  readonly remark?: string;
  readonly name?: string;
  readonly role?: CellRole;
  readonly format?: FormatName;
}
