import type { Floor } from '#model/building.ts';
import { joistHoleMm } from '../ways/joist-window.ts';
import type { Run, Segment } from '../ways/run.ts';
import type { Facts } from './facts.ts';
import { floorAt } from './placed.ts';

/** A run that goes through joists, with the floor whose joists they are. */
export interface JoistCrossing {
  readonly run: Run;
  readonly segment: Segment;
  readonly floor: Floor;
  readonly holeMm: number;
}

/** The first stretch of each new run that crosses joists of each depth, in the order of the runs. */
export function joistCrossings(facts: Facts): readonly JoistCrossing[] {
  return facts.runs.flatMap((run) => {
    const crossings = run.segments.flatMap((segment) => {
      const floor = floorAt(facts, segment.storeyId, segment.from.at);
      if (segment.joistsCrossed === 0 || floor?.build !== 'suspended-timber') return [];
      return [{ run, segment, floor, holeMm: joistHoleMm(run.cable.lineMm2) }];
    });
    // The shallowest joist speaks for the run; one of unknown depth is asked about before all others.
    const depthMm = ({ floor }: JoistCrossing) => floor.joistDepthMm ?? 0;
    return crossings.sort((a, b) => depthMm(a) - depthMm(b)).slice(0, 1);
  });
}

/** Whether a run passes all its joists by notches. */
export const isNotched = ({ cuts }: Run): boolean => {
  const holes = cuts.flatMap((each) => each.holes);
  return holes.length > 0 && holes.every(({ judged }) => judged === 'notch');
};
