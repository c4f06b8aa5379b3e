/** Where a browser keeps texts by name, past the window or for as long as it is open. */
export type TextStore = Pick<Storage, 'getItem' | 'setItem'>;

/** One text of each job, kept by the browser beside the job: it is of the person or the device, so the job does not carry it. */
export class TextsByJob {
  readonly #name: string;
  readonly #store: () => TextStore;

  /** @param store where it keeps nothing, or may not be asked, nothing is remembered. */
  constructor(name: string, store: () => TextStore) {
    this.#name = name;
    this.#store = store;
  }

  /** Null where none was kept. */
  of(jobId: string): string | null {
    try {
      return this.#store().getItem(this.keyOf(jobId));
    } catch {
      return null;
    }
  }

  keep(jobId: string, text: string): void {
    try {
      this.#store().setItem(this.keyOf(jobId), text);
    } catch {
      // It still holds for whoever keeps it beside: only a reload forgets it.
    }
  }

  /** The key in the store. */
  keyOf(jobId: string): string {
    return `${this.#name}/${jobId}`;
  }
}

/**
 * The scheme of each job that was chosen last on this device: a job that is opened anew shows it; one that is gone from the
 * job meanwhile may be told.
 *
 * @param store the browser's, unless a test brings its own.
 */
export const lastSchemes = (store: () => TextStore = () => localStorage): TextsByJob =>
  new TextsByJob('last-scheme', store);

/**
 * What is typed of a variation of each job and not offered yet.
 *
 * @param store the browser's, unless a test brings its own.
 */
export const variationReasons = (store: () => TextStore = () => localStorage): TextsByJob =>
  new TextsByJob('variation', store);
