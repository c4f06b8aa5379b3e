import { isSameData } from '#engine/plan/same-data.ts';

/** Most states without an answer that are remembered. */
const MOST = 20;

/** What was sent since the last answer, and has none so far, the oldest first: any of it may have arrived all the same. */
export class Unanswered<T> {
  #sent: readonly T[];

  constructor(sent: readonly T[] = []) {
    this.#sent = sent;
  }

  get sent(): readonly T[] {
    return this.#sent;
  }

  add(value: T): void {
    this.#sent = [...this.#sent.filter((one) => one !== value), value].slice(-MOST);
  }

  /** It was refused, so it did not arrive. */
  drop(value: T): void {
    this.#sent = this.#sent.filter((one) => one !== value);
  }

  clear(): void {
    this.#sent = [];
  }

  /** The one of them that somewhere turned up again; nothing where it is none. */
  found(value: T): T | undefined {
    return this.#sent.find((one) => isSameData(one, value));
  }
}
