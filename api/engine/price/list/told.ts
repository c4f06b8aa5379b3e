/** What a cell tells, or why it tells nothing and what to do about it. */
export type Told<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly message: string; readonly remedy: string };

export const told = <T>(value: T): Told<T> => ({ ok: true, value });

export const untold = (message: string, remedy: string): Told<never> => ({ ok: false, message, remedy });

const LONGEST = 40;

/** A cell's words as a message quotes them. */
export const asQuoted = (text: string): string =>
  `“${text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text}”`;
