/** Why an archive cannot be read, and what to do about it. */
export interface ArchiveFault {
  /** Which entry, as the archive calls it; `file` for all of it. */
  readonly path: string;
  readonly message: string;
  readonly remedy: string;
}

/** Thrown while an archive is read; `readArchive` gives it back as an answer. */
export class UnreadableArchive extends Error {
  readonly fault: ArchiveFault;

  constructor(path: string, message: string, remedy: string) {
    super(message);
    this.fault = { path, message, remedy };
  }
}
