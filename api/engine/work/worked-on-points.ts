import type { Worked } from '../connections/worked.ts';

/**
 * Ids of the points that a scheme does something to: those that are new or go, that a cable is brought to or lifted at, or whose box is not
 * left as it is.
 */
export function workedOnPoints({ job, scheme, things }: Worked): ReadonlySet<string> {
  if (scheme === null) return new Set();
  return new Set(
    [
      ...job.points.filter(({ status }) => status !== 'existing').map(({ id }) => id),
      ...things.terminals.filter(({ affected }) => affected).map(({ pointId }) => pointId),
      ...things.boxes
        .filter(({ action }) => action !== 'keep' && action !== 'unknown')
        .map(({ pointId }) => pointId),
    ].filter((id) => id !== null),
  );
}
