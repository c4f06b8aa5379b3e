/** How far a part of the screen is: its files are `there`, on their way, or could not be had. */
export type PartState = 'there' | 'coming' | 'failed';

/** When the page has nothing to do; at once or soon where a browser does not tell. */
const inIdleTime = (): Promise<void> =>
  new Promise((resolve) => {
    if (typeof requestIdleCallback === 'function') requestIdleCallback(() => resolve());
    else setTimeout(resolve, 50);
  });

/**
 * Parts of the screen whose files come once they are wanted, so that the first page need not wait for them; the rest of them
 * come while it is looked at, so that nobody waits at the second, nor stands there without a connection.
 */
export class ScreenParts<Name extends string> {
  readonly #loads: Readonly<Record<Name, () => Promise<unknown>>>;
  readonly #states = new Map<Name, PartState>();
  readonly #watchers = new Set<() => void>();

  /** @param loads what has the files of a part fetched; asked again only after it failed. */
  constructor(loads: Readonly<Record<Name, () => Promise<unknown>>>) {
    this.#loads = loads;
  }

  /** How far a part is. One that nobody wanted before comes from now on; one that could not be had, only once `again` is called. */
  want(name: Name): PartState {
    const state = this.#states.get(name);
    if (state !== undefined) return state;
    void this.#load(name);
    return 'coming';
  }

  /** What could not be had is asked for once more. */
  again(): void {
    const failed = [...this.#states].filter(([, state]) => state === 'failed').map(([name]) => name);
    for (const name of failed) void this.#load(name);
    if (failed.length > 0) this.#tell();
  }

  /** Has everything fetched that nobody has wanted yet, one part after another, each when the page has nothing to do. */
  async rest(): Promise<void> {
    for (const name of Object.keys(this.#loads) as Name[]) {
      if (!this.#states.has(name)) await inIdleTime();
      if (!this.#states.has(name)) await this.#load(name, false);
    }
  }

  /** Whether all of them are there: from then on nothing of the screen is fetched any more. */
  get isWhole(): boolean {
    return (Object.keys(this.#loads) as Name[]).every((name) => this.#states.get(name) === 'there');
  }

  /** @returns what ends the watch. */
  watch(changed: () => void): () => void {
    this.#watchers.add(changed);
    return () => this.#watchers.delete(changed);
  }

  async #load(name: Name, isWanted = true): Promise<void> {
    this.#states.set(name, 'coming');
    try {
      await this.#loads[name]();
      this.#states.set(name, 'there');
    } catch {
      // What nobody waits for yet is asked for again when somebody does.
      if (isWanted) this.#states.set(name, 'failed');
      else this.#states.delete(name);
    }
    this.#tell();
  }

  #tell(): void {
    for (const changed of this.#watchers) changed();
  }
}
