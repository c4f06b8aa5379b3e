import type { WaitRule } from './people-stores.ts';

/** What was counted; null: nothing. */
export interface Attempts {
  readonly failures: number;
  /** ISO 8601 in UTC. */
  readonly lastAt: string;
}

/** A count that nothing was added to for so long is forgotten, ms. */
export const FORGOTTEN_MS = 24 * 60 * 60_000;

/** How long nothing is tried after so many failures, ms. */
export function waitMs(failures: number, { free, firstMs, mostMs }: WaitRule): number {
  if (failures < free) return 0;
  // Beyond 2^30 every wait is the longest.
  return Math.min(firstMs * 2 ** Math.min(failures - free, 30), mostMs);
}

/** What still counts at a moment. A clock that was set back makes the last failure one of now: no wait is longer than its span. */
export function countedAt(had: Attempts | null, now: Date): Attempts {
  const at = now.getTime();
  const none = { failures: 0, lastAt: now.toISOString() };
  if (had === null) return none;
  const last = Date.parse(had.lastAt);
  if (last > at) return { failures: had.failures, lastAt: now.toISOString() };
  return at - last >= FORGOTTEN_MS ? none : had;
}

/** How long is still to be waited, ms; 0: not at all. */
export function waitLeftMs({ failures, lastAt }: Attempts, rule: WaitRule, now: Date): number {
  return Math.max(0, Date.parse(lastAt) + waitMs(failures, rule) - now.getTime());
}
