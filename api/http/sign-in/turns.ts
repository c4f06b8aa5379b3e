/** Thrown where too many wait already. */
export class TooMany extends Error {}

/** Lets a few tasks run at once; the others wait their turn, and what is beyond those is refused. */
export class Turns {
  #running = 0;
  readonly #waiting: (() => void)[] = [];
  readonly #atOnce: number;
  readonly #waitingMost: number;

  constructor(atOnce: number, waitingMost: number) {
    this.#atOnce = atOnce;
    this.#waitingMost = waitingMost;
  }

  /** Resolves or rejects as the task does, once it has had its turn. */
  async take<T>(task: () => Promise<T>): Promise<T> {
    if (this.#running >= this.#atOnce) {
      if (this.#waiting.length >= this.#waitingMost) throw new TooMany();
      // Whoever ends hands the turn on: the count stays as it is.
      await new Promise<void>((resolve) => this.#waiting.push(resolve));
    } else this.#running += 1;
    try {
      return await task();
    } finally {
      const next = this.#waiting.shift();
      if (next === undefined) this.#running -= 1;
      else next();
    }
  }
}
