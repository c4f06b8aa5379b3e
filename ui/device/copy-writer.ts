import { newId } from '../new-id.ts';
import type { DeviceStore } from './device-store.ts';
import type { Held } from './kept-copy.ts';

/** What a writer writes as. */
export interface WriterParts {
  readonly store: Promise<DeviceStore>;
  readonly name: string;
  readonly owner: string;
  /** Of the copy that it goes on with; a new one without. */
  readonly key?: string;
}

const isSame = <T>(one: Held<T> | null, other: Held<T>): boolean =>
  one !== null && (Object.keys(other) as (keyof Held<T>)[]).every((key) => one[key] === other[key]);

/**
 * Keeps the newest state of one document on the device, in a copy of its own. Writing begins at once; what comes while
 * something is being written is written after it, the newest alone.
 */
export class CopyWriter<T> {
  #key: string;
  /** The newest state that was taken. */
  #newest: Held<T> | null = null;
  /** The newest that is on the device. */
  #written: Held<T> | null = null;
  #writing: Promise<void> | null = null;
  #lasts = false;
  #ended = false;
  readonly #parts: WriterParts;
  readonly #told: () => void;

  /** @param told is called whenever what is on the device has caught up, or could not be written. */
  constructor(parts: WriterParts, told: () => void) {
    this.#parts = parts;
    this.#key = parts.key ?? newId();
    this.#told = told;
  }

  /** True when the newest state is on the device, and stays there when the page is closed. */
  get isHeld(): boolean {
    return this.#lasts && this.#newest !== null && this.#written === this.#newest;
  }

  /** Takes the newest state. */
  hold(held: Held<T>): void {
    if (this.#ended || isSame(this.#newest, held)) return;
    this.#newest = held;
    this.#writing ??= this.#writeAll();
  }

  /** Resolves when everything taken so far is written, or could not be. */
  async settled(): Promise<void> {
    while (this.#writing !== null) await this.#writing;
  }

  async #writeAll(): Promise<void> {
    try {
      const store = await this.#parts.store;
      while (!this.#ended && this.#newest !== null && this.#newest !== this.#written) {
        const held = this.#newest;
        if (await this.#write(store, held)) this.#written = held;
        // Another tab has taken the copy over: what is here is written as one of its own.
        else this.#key = newId();
      }
      this.#lasts = store.lasts;
    } catch {
      // Refused by the device: it is said, since `isHeld` stays false, and tried again with the next change.
    }
    this.#writing = null;
    this.#told();
  }

  #write(store: DeviceStore, held: Held<T>): Promise<boolean> {
    const { name, owner } = this.#parts;
    const { etag, unsent } = held;
    const head = { key: this.#key, name, owner, etag, unsent, writtenAt: new Date().toISOString() };
    return store.write({ head, held });
  }

  /** Removes the copy, and writes no other. */
  async drop(): Promise<void> {
    this.#ended = true;
    await this.settled();
    const store = await this.#parts.store;
    await store.drop(this.#key, this.#parts.owner).catch(() => {});
  }
}
