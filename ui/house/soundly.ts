import type { Storey } from '#model/building.ts';
import { type Outcome, refused } from './drawing.ts';
import { flawsOf } from './flaws.ts';

/** Makes a change; where it has made a room stand in another, turn over or not close that did not before, says so. */
export function soundly(storey: Storey, change: () => Outcome): Outcome {
  const before = flawsOf(storey);
  const outcome = change();
  if (!outcome.ok) return outcome;
  const flaw = [...flawsOf(storey)].find((one) => !before.has(one));
  return flaw === undefined ? outcome : refused(flaw);
}
