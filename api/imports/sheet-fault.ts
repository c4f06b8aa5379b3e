/** Why a file cannot be read as a list at all, and what to do about it. */
export interface SheetFault {
  /** Where in the file: a row, a sheet, or the file. */
  readonly path: string;
  readonly message: string;
  readonly remedy: string;
}

/** Thrown while a file is read; `readSheets` gives it back as an answer. */
export class UnreadableSheet extends Error {
  readonly fault: SheetFault;

  constructor(fault: SheetFault) {
    super(fault.message);
    this.fault = fault;
  }
}
