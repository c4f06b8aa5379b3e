/** A cell as it was read: a text without blanks at its ends, or a number where the file holds one. */
export type SheetCell = string | number;

/** A row that is not empty, with its number as a spreadsheet shows it: the first is 1. */
export interface SheetRow {
  readonly number: number;
  readonly cells: readonly SheetCell[];
}

/** One sheet of a file, whatever kind of file it was; rows in their order. */
export interface Sheet {
  /** Empty where the file has only one and no name for it. */
  readonly name: string;
  readonly rows: readonly SheetRow[];
}

/** A cell's words; a number as it is written with a decimal point. */
export function cellWords(cell: SheetCell | undefined): string {
  return cell === undefined ? '' : String(cell);
}
