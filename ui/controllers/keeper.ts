import type { Held } from '../device/kept-copy.ts';
import { type Revised, ServerRefusal, type Tagged } from './api-client.ts';
import type { BothChanged, Merged } from './both-changed.ts';
import type { Steps } from './edit-history.ts';
import type { OnTheirs } from './stale-save.ts';

/** How a document is fetched and kept. */
export interface Keeper<T> {
  readonly read: () => Promise<Revised<T>>;
  /** Saves on the revision of a tag and gives the new one; refuses a stale base with 412. */
  readonly save: (value: T, base: string, how: 'autosave' | 'by-hand') => Promise<Tagged>;
  /** Looks what is there: null while it is what the tag says, else what it is now; refuses what was deleted. */
  readonly look?: (etag: string) => Promise<Revised<T> | null>;
  /** Brings what was changed here and elsewhere together; null where a person has to decide. Absent: always. */
  readonly merge?: (states: BothChanged<T>) => Merged<T> | null;
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

/** The server's word that it was deleted. */
export const isGone = (error: unknown): boolean =>
  error instanceof ServerRefusal && error.code === 'no-such-job';

/** What is there now: null while it is what the tag says; undefined where it cannot be told. */
export async function lookAt<T>(
  keeper: Keeper<T>,
  etag: string,
): Promise<Revised<T> | null | 'gone' | undefined> {
  try {
    return await keeper.look?.(etag);
  } catch (error) {
    return isGone(error) ? 'gone' : undefined;
  }
}
