import type { Held } from '../device/kept-copy.ts';
import type { Revised, Tagged } from './api-client.ts';
import type { Steps } from './edit-history.ts';
import type { OnTheirs } from './stale-save.ts';

/** How a document is fetched and kept. */
export interface Keeper<T> {
  readonly read: () => Promise<Revised<T>>;
  /** Saves on the revision of a tag and gives the new one; refuses a stale base with 412. */
  readonly save: (value: T, base: string, how: 'autosave' | 'by-hand') => Promise<Tagged>;
  /** Looks what is there: null while it is what the tag says, else what it is now; refuses what was deleted. */
  readonly look?: (etag: string) => Promise<Revised<T> | null>;
  /** Where it is kept past the page; nowhere without. */
  readonly device?: Holder<T>;
  /** How the own state goes on from what somebody else saved; a person decides without. */
  readonly onTheirs?: OnTheirs<T>;
}

/** What keeps the newest state on the device. */
export interface Holder<T> {
  /** True when the newest state is there. */
  readonly isHeld: boolean;
  readonly hold: (held: Held<T>) => void;
}

/** What a session begins with: what the server has, and what the device kept of an earlier one. */
export interface SessionStart<T> extends Revised<T> {
  readonly goneOn?: Steps & { readonly now: T; readonly sent: readonly T[] };
}
