import { newId } from '../new-id.ts';

/** A tab of the browser, as copies on the device know it. */
export interface Tab {
  /** Of this load of the page. */
  readonly id: string;
  /** The owners of copies that no other open tab is working on may be taken over from. */
  readonly isFree: (owner: string) => Promise<boolean>;
}

const lockOf = (id: string): string => `ringwright-tab/${id}`;
const REMEMBERED_AS = 'ringwright-tab';

/** The id that this tab had before it was loaded again; null for none. */
function idBefore(id: string): string | null {
  try {
    const before = sessionStorage.getItem(REMEMBERED_AS);
    sessionStorage.setItem(REMEMBERED_AS, id);
    return before;
  } catch {
    return null;
  }
}

/**
 * This tab. While it is open it holds a lock of its own, so that the others know that it is; a closed or crashed one holds
 * none. Over plain HTTP browsers have no locks: every owner counts as free then, which loses nothing, since whose copy was
 * taken over writes another.
 */
export function thisTab(): Tab {
  const id = newId();
  // A page that is loaded again may find the lock of the one before it still held for a moment.
  const before = idBefore(id);
  const locks: LockManager | undefined = globalThis.navigator?.locks;
  void locks?.request(lockOf(id), () => new Promise(() => {}));
  return {
    id,
    isFree: async (owner) => {
      if (owner === before) return true;
      if (owner === id) return false;
      const { held = [] } = (await locks?.query()) ?? {};
      return !held.some(({ name }) => name === lockOf(owner));
    },
  };
}
