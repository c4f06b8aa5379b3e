/** Where a browser keeps texts by name, past the window. */
export type TextStore = Pick<Storage, 'getItem' | 'setItem'>;

const keyOf = (jobId: string): string => `last-scheme/${jobId}`;

/**
 * The scheme of each job that was chosen last on this device: a job that is opened anew shows it. It is of the device, not
 * of the job, so the job does not carry it.
 */
export class LastSchemes {
  readonly #store: () => TextStore;

  /** @param store the browser's, unless a test brings its own; where it keeps nothing, nothing is remembered. */
  constructor(store: () => TextStore = () => localStorage) {
    this.#store = store;
  }

  /** Null where none was chosen; one that is gone from the job meanwhile may be told. */
  of(jobId: string): string | null {
    try {
      return this.#store().getItem(keyOf(jobId));
    } catch {
      return null;
    }
  }

  keep(jobId: string, schemeId: string): void {
    try {
      this.#store().setItem(keyOf(jobId), schemeId);
    } catch {
      // The choice still holds while the job is on the desk.
    }
  }
}
