import type { PlacedHole } from '../ways/holes-placed.ts';
import type { Run, Segment } from '../ways/run.ts';

/** A stretch whose holes are made for this run. */
export interface HoledStretch {
  readonly runId: string;
  /** All runs that lie in these holes, the one that they are made for first. */
  readonly sharedBy: readonly string[];
  readonly segment: Segment;
  /** As many as the joists that it crosses, in the run's order; none where nothing tells where they are. */
  readonly holes: readonly PlacedHole[];
  /** Of the joists that it crosses, those that are notched from above, where no hole is allowed. */
  readonly notches: number;
}

/** Stretches with their holes counted once, in the order of the runs: cables that share a way share its holes. */
export function ownHoles(runs: readonly Run[]): readonly HoledStretch[] {
  const usersByWay = new Map<string, string[]>();
  for (const run of runs)
    for (const segment of run.segments) {
      const users = usersByWay.get(wayOf(segment) ?? '') ?? [];
      if (segment.bundle !== null && !users.includes(run.id))
        usersByWay.set(wayOf(segment) ?? '', [...users, run.id]);
    }
  return runs.flatMap((run) =>
    run.segments.flatMap((segment, index): readonly HoledStretch[] => {
      const holes = run.cuts[index]?.holes ?? [];
      const sharedBy = usersByWay.get(wayOf(segment) ?? '') ?? [run.id];
      const notches = holes.filter(({ judged }) => judged === 'notch').length;
      return sharedBy[0] === run.id ? [{ runId: run.id, sharedBy, segment, holes, notches }] : [];
    }),
  );
}

/** What cables that are bundled share; null for a cable by itself. */
const wayOf = ({ bundle, medium, wallId, storeyId }: Segment): string | null =>
  bundle === null ? null : `${bundle} ${medium} ${wallId} ${storeyId}`;
