/** Answers by key, as many as are worth keeping: the oldest go first. */
export class Kept<V> {
  readonly #known = new Map<string, V>();
  readonly #count: number;

  constructor(count: number) {
    this.#count = count;
  }

  /** The answer kept for a key; made and kept where there is none. */
  get(key: string, make: () => V): V {
    const known = this.#known.get(key);
    if (known !== undefined || this.#known.has(key)) return known as V;
    const made = make();
    if (this.#known.size >= this.#count) this.#known.delete(this.#known.keys().next().value ?? '');
    this.#known.set(key, made);
    return made;
  }
}
