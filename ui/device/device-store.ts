import type { CopyHead, Held, KeptCopy } from './kept-copy.ts';
import { memoryShelf, type PictureShelf } from './picture-shelf.ts';

/** Where a device keeps documents past the page. Every call throws where the device refuses. */
export interface DeviceStore {
  /** True where what is written is there after the page is closed. */
  readonly lasts: boolean;
  /** Where pictures are kept. */
  readonly pictures: PictureShelf;
  /** Of every copy, by key. */
  readonly heads: () => Promise<readonly CopyHead[]>;
  /** Null where there is none by that key. */
  readonly read: (key: string) => Promise<KeptCopy | null>;
  /**
   * Writes a copy whole, over the one of its key; resolves once it is on the disk.
   *
   * @returns false where another tab has taken that copy over meanwhile: nothing is written then.
   */
  readonly write: (copy: KeptCopy) => Promise<boolean>;
  /** Gives a copy another owner; false where it was not `from`'s any more. */
  readonly claim: (key: string, from: string, to: string) => Promise<boolean>;
  /** Removes a copy, while it is its owner's. */
  readonly drop: (key: string, owner: string) => Promise<void>;
  /** A value that is kept beside the copies, such as the list of jobs; undefined where there is none. */
  readonly note: (name: string) => Promise<unknown>;
  readonly writeNote: (name: string, value: unknown) => Promise<void>;
}

/** A store that lasts as long as the page: for browsers that give no other, and for tests. What goes in is copied, as a real one does. */
export function memoryStore(lasts = false): DeviceStore {
  const copies = new Map<string, { readonly head: CopyHead; readonly held: Held<unknown> }>();
  const notes = new Map<string, unknown>();
  const isOwned = (key: string, owner: string): boolean => copies.get(key)?.head.owner === owner;
  return {
    lasts,
    pictures: memoryShelf(),
    heads: async () =>
      [...copies.values()].map(({ head }) => head).toSorted((a, b) => (a.key < b.key ? -1 : 1)),
    read: async (key) => structuredClone(copies.get(key) ?? null),
    write: async (copy) => {
      const { key, owner } = copy.head;
      if (copies.has(key) && !isOwned(key, owner)) return false;
      copies.set(key, structuredClone(copy));
      return true;
    },
    claim: async (key, from, to) => {
      const copy = copies.get(key);
      if (copy === undefined || copy.head.owner !== from) return false;
      copies.set(key, { ...copy, head: { ...copy.head, owner: to } });
      return true;
    },
    drop: async (key, owner) => {
      if (isOwned(key, owner)) copies.delete(key);
    },
    note: async (name) => structuredClone(notes.get(name)),
    writeNote: async (name, value) => {
      notes.set(name, structuredClone(value));
    },
  };
}
