/**
 * Asks the browser, once, not to clear what this device keeps when it runs short of room. It is asked when there is
 * something to lose for the first time: some browsers ask the person then, who would not know why before.
 */
export class AskedToLast {
  #asked = false;
  readonly #storage: Pick<StorageManager, 'persist'> | undefined;

  /** @param storage none over plain HTTP. */
  constructor(storage: Pick<StorageManager, 'persist'> | undefined = globalThis.navigator?.storage) {
    this.#storage = storage;
  }

  ask(isSomethingToLose: boolean): void {
    if (this.#asked || !isSomethingToLose) return;
    this.#asked = true;
    void this.#storage?.persist?.().catch(() => {});
  }
}
