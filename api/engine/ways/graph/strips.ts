/** Things by strips of one coordinate that they reach into, to find those at a place without looking at all. */
export class Strips<T> {
  readonly #widthMm: number;
  readonly #byStrip = new Map<number, T[]>();

  /** @param widthMm of a strip. */
  constructor(widthMm: number) {
    this.#widthMm = widthMm;
  }

  /** @param lowMm, highMm how far the thing reaches, both included. */
  add(lowMm: number, highMm: number, thing: T): void {
    const last = Math.floor(highMm / this.#widthMm);
    for (let strip = Math.floor(lowMm / this.#widthMm); strip <= last; strip += 1) {
      const things = this.#byStrip.get(strip);
      if (things === undefined) this.#byStrip.set(strip, [thing]);
      else things.push(thing);
    }
  }

  /** All that reach into the strip of a place, in the order in which they were added: those at the place are among them. */
  at(mm: number): readonly T[] {
    return this.#byStrip.get(Math.floor(mm / this.#widthMm)) ?? [];
  }

  /** Puts the things of every strip in an order. */
  sort(compare: (a: T, b: T) => number): void {
    for (const things of this.#byStrip.values()) things.sort(compare);
  }
}
