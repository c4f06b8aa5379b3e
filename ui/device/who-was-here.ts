import type { Role } from '../rights.ts';

/** Who used this device last: enough to open it without a connection, and no secret. */
export interface Remembered {
  readonly firm: string;
  readonly role: Role;
  readonly name: string | null;
  /** True once they signed out: nothing of the device is shown before somebody signs in. */
  readonly isOut: boolean;
}

const KEY = 'ringwright-here';

/** Null where nobody is remembered, or the browser keeps nothing. */
export function whoWasHere(): Remembered | null {
  try {
    return JSON.parse(localStorage.getItem(KEY) ?? 'null') as Remembered | null;
  } catch {
    return null;
  }
}

/** Remembers who is here; where the browser keeps nothing, they sign in anew each time. */
export function rememberWho(now: Remembered): void {
  try {
    // What was typed and not sent stands by job, and two firms may have jobs of one name.
    if (whoWasHere()?.firm !== now.firm) {
      localStorage.clear();
      sessionStorage.clear();
    }
    localStorage.setItem(KEY, JSON.stringify(now));
  } catch {
    // Nothing is kept, so nothing of anybody is.
  }
}

/** The firm of a store on one's own machine. */
export const OWN_FIRM = 'own';

/** What the browser's database of a firm is called: each has its own, so that nobody sees another's. */
export const deviceNameOf = (firm: string): string =>
  firm === OWN_FIRM ? 'ringwright' : `ringwright-${firm}`;

/** Removes what the device keeps of a firm; whoever has it open lets go of it. */
export function forgetFirm(firm: string): Promise<void> {
  try {
    localStorage.clear();
    sessionStorage.clear();
  } catch {
    // There was nothing.
  }
  return new Promise((resolve) => {
    const request = globalThis.indexedDB?.deleteDatabase(deviceNameOf(firm));
    if (request === undefined) return resolve();
    request.onsuccess = () => resolve();
    request.onerror = () => resolve();
    request.onblocked = () => resolve();
  });
}
