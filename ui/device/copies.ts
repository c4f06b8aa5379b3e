import { newId } from '../new-id.ts';
import { CopyWriter } from './copy-writer.ts';
import type { DeviceStore } from './device-store.ts';
import type { CopyHead, KeptCopy } from './kept-copy.ts';
import type { Tab } from './this-tab.ts';

/** Unsent ones first, then the newest. */
const byWorth = (a: CopyHead, b: CopyHead): number =>
  Number(b.unsent) - Number(a.unsent) || (a.writtenAt < b.writtenAt ? 1 : -1);

/**
 * The copies of documents on this device, as one tab has to do with them. Each is written by one tab alone, so tabs never
 * overwrite each other; a copy whose tab is closed is taken over by whoever opens its document next.
 */
export class Copies {
  readonly store: Promise<DeviceStore>;
  readonly #tab: Tab;

  constructor(store: Promise<DeviceStore>, tab: Tab) {
    this.store = store;
    this.#tab = tab;
  }

  /** A writer of a document; of the copy of a key, which is this tab's, or of a new one. */
  writer<T>(name: string, key: string | undefined, told: () => void): CopyWriter<T> {
    const parts = { store: this.store, name, owner: this.#tab.id, ...(key === undefined ? {} : { key }) };
    return new CopyWriter(parts, told);
  }

  /** Of every copy, by key; none where the device refuses. */
  async heads(): Promise<readonly CopyHead[]> {
    try {
      return await (await this.store).heads();
    } catch {
      return [];
    }
  }

  /** Null where it cannot be read. */
  async read(key: string): Promise<KeptCopy | null> {
    try {
      return await (await this.store).read(key);
    } catch {
      return null;
    }
  }

  /** Those that no open tab is working on, of one name or of all, the one to go on with first. */
  async free(name: string | null = null): Promise<readonly CopyHead[]> {
    const heads = (await this.heads()).filter((head) => name === null || head.name === name);
    const isFree = await Promise.all(heads.map(({ owner }) => this.#tab.isFree(owner)));
    return heads.filter((_, i) => isFree[i]).toSorted(byWorth);
  }

  /** Makes a copy this tab's, and reads it; null where another tab was faster. */
  async claim({ key, owner }: CopyHead): Promise<KeptCopy | null> {
    try {
      const store = await this.store;
      return (await store.claim(key, owner, this.#tab.id)) ? await store.read(key) : null;
    } catch {
      return null;
    }
  }

  /** The copy of a name that another open tab is working on, as one to begin another with; null for none. */
  async besideOpen(name: string): Promise<KeptCopy | null> {
    const [head] = (await this.heads()).filter((one) => one.name === name).toSorted(byWorth);
    const copy = head === undefined ? null : await this.read(head.key);
    return copy === null ? null : { ...copy, head: { ...copy.head, key: newId() } };
  }

  async drop({ key, owner }: CopyHead): Promise<void> {
    await (await this.store).drop(key, owner).catch(() => {});
  }

  /** Undefined where there is none. */
  async note(name: string): Promise<unknown> {
    try {
      return await (await this.store).note(name);
    } catch {
      return undefined;
    }
  }

  async writeNote(name: string, value: unknown): Promise<void> {
    await (await this.store).writeNote(name, value).catch(() => {});
  }
}
