import type { Fault } from '#model/fault.ts';

/** What a reader finds where a newer version has written: its version, keys and words that it does not know. */
const signs: ReadonlySet<Fault['code']> = new Set(['newer-version', 'unknown-key', 'unknown-value']);

/** Whether faults of something that was stored are those of a newer version's, and none is of a damaged one. */
export const isNewer = (faults: readonly Pick<Fault, 'code'>[]): boolean =>
  faults.length > 0 && faults.every(({ code }) => signs.has(code));
