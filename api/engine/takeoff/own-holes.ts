import type { Run, Segment } from '../ways/run.ts';
import type { StretchCuts } from '../ways/run-cuts.ts';

/** A stretch whose holes are made for this run. */
export interface HoledStretch {
  readonly runId: string;
  readonly segment: Segment;
  /** Of the joists that it crosses, those that are notched from above, where no hole is allowed. */
  readonly notches: number;
}

/** Stretches with their holes counted once, in the order of the runs: cables that share a way share its holes. */
export function ownHoles(runs: readonly Run[]): readonly HoledStretch[] {
  const makerByWay = new Map<string, string>();
  return runs.flatMap((run) =>
    run.segments.flatMap((segment, index): readonly HoledStretch[] => {
      const own = { runId: run.id, segment, notches: notchesIn(run.cuts[index]) };
      if (segment.bundle === null) return [own];
      const way = `${segment.bundle} ${segment.medium} ${segment.wallId} ${segment.storeyId}`;
      const maker = makerByWay.get(way) ?? run.id;
      makerByWay.set(way, maker);
      return maker === run.id ? [own] : [];
    }),
  );
}

const notchesIn = (cuts: StretchCuts | undefined): number =>
  cuts?.holes.filter(({ judged }) => judged === 'notch').length ?? 0;
