import type { Run, Segment } from '../ways/run.ts';

/** A stretch whose holes are made for this run. */
export interface HoledStretch {
  readonly runId: string;
  readonly segment: Segment;
}

/** Stretches with their holes counted once, in the order of the runs: cables that share a way share its holes. */
export function ownHoles(runs: readonly Run[]): readonly HoledStretch[] {
  const makerByWay = new Map<string, string>();
  return runs.flatMap((run) =>
    run.segments.flatMap((segment): readonly HoledStretch[] => {
      if (segment.bundle === null) return [{ runId: run.id, segment }];
      const way = `${segment.bundle} ${segment.medium} ${segment.wallId} ${segment.storeyId}`;
      const maker = makerByWay.get(way) ?? run.id;
      makerByWay.set(way, maker);
      return maker === run.id ? [{ runId: run.id, segment }] : [];
    }),
  );
}
