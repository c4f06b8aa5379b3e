import type { Worked } from '#engine/connections/worked.ts';
import { drawnThings } from './drawn-things.ts';
import { storeyOfThing } from './storey-of-thing.ts';

/** What is lit and what is chosen on a plan. */
export interface Marked {
  readonly lit: ReadonlySet<string>;
  readonly chosen: string | null;
}

/** The ids of all that is marked on the plans: what is lit, and what is chosen. */
export const markedThings = (worked: Worked, { lit, chosen }: Marked): ReadonlySet<string> =>
  drawnThings(worked, chosen === null ? lit : [...lit, chosen]);

/** How many marked things are drawn on each storey, by storey id; no entry for a storey without any. */
export function markedStoreys(worked: Worked, marked: Marked): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  // A connection stands for its cables and joints, which are there themselves.
  const connections = new Set(worked.runs.map(({ connectionId }) => connectionId));
  for (const id of markedThings(worked, marked)) {
    const storeyId = connections.has(id) ? null : storeyOfThing(worked, id);
    if (storeyId !== null) counts.set(storeyId, (counts.get(storeyId) ?? 0) + 1);
  }
  return counts;
}

/** The first storey on which any of these things is drawn; null where none is drawn anywhere. */
export function storeyOfAny(worked: Worked, ids: Iterable<string>): string | null {
  for (const id of ids) {
    const storeyId = storeyOfThing(worked, id);
    if (storeyId !== null) return storeyId;
  }
  return null;
}
