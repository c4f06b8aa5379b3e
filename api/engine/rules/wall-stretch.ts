import { alongWallMm } from '../plan/along-wall.ts';
import type { PlanWall } from '../plan/plan.ts';
import type { Run, Segment } from '../ways/run.ts';
import type { Facts } from './facts.ts';

/** A straight stretch of new cable inside a wall, with its reach along the wall and up it. */
export interface WallStretch {
  readonly run: Run;
  readonly segment: Segment;
  readonly wall: PlanWall;
  readonly alongLowMm: number;
  readonly alongHighMm: number;
  readonly heightLowMm: number;
  readonly heightHighMm: number;
}

/** The stretches of new cable in chases or in the cavities of studwork, run by run in their order. */
export function stretchesInWalls(facts: Facts): readonly WallStretch[] {
  return facts.runs.flatMap((run) =>
    run.segments.flatMap((segment) => {
      const wall = segment.wallId === null ? undefined : facts.plan.wallById.get(segment.wallId);
      if (!wall || (segment.medium !== 'wall-chase' && segment.medium !== 'stud-cavity')) return [];
      const alongs = [segment.from, segment.to].map(({ at }) => alongWallMm(wall, at));
      const storey = facts.plan.storeyById.get(wall.storeyId);
      const floorLevelMm = storey?.storey.floorLevelMm ?? 0;
      const heights = [segment.from, segment.to].map(({ levelMm }) => levelMm - floorLevelMm);
      return [
        {
          run,
          segment,
          wall,
          alongLowMm: Math.min(...alongs),
          alongHighMm: Math.max(...alongs),
          heightLowMm: Math.min(...heights),
          heightHighMm: Math.max(...heights),
        },
      ];
    }),
  );
}
