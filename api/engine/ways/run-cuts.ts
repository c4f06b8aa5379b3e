import type { Plan } from '../plan/plan.ts';
import type { Position } from '../plan/plane.ts';
import { rememberedOfTwo } from '../plan/remembered.ts';
import { roomAt } from '../plan/surroundings.ts';
import { type ChaseCut, chaseCut } from './chase-cut.ts';
import { type FloorOpening, floorOpening } from './floor-opening.ts';
import { holesPlaced, type PlacedHole } from './holes-placed.ts';
import { boardPlaces } from './lifted-boards.ts';
import type { Segment } from './run.ts';

/** A place at which a floor is opened for a run by itself; runs nearby may share it, which is counted in the kit. */
export interface OpenedFloor {
  readonly storeyId: string;
  readonly at: Position;
  readonly opening: FloorOpening;
}

/** What one stretch of a run cuts and opens. */
export interface StretchCuts {
  /** As many as the joists that it crosses, in its order. */
  readonly holes: readonly PlacedHole[];
  /** Null where nothing is chased. */
  readonly chase: ChaseCut | null;
  readonly opened: readonly OpenedFloor[];
}

/** What a run cuts and opens, stretch by stretch in its order. */
export const cutsOf = rememberedOfTwo((plan: Plan, segments: readonly Segment[]): readonly StretchCuts[] => {
  const places = boardPlaces(segments).flat();
  return segments.map((segment, index) => ({
    holes: holesPlaced(plan, [segment]),
    chase: chaseCut(plan.wallById.get(segment.wallId ?? ''), segment),
    opened: places
      .filter(({ stretch }) => stretch === index)
      .map(({ storeyId, at }) => ({ storeyId, at, opening: openingOf(plan, storeyId, at) })),
  }));
});

function openingOf(plan: Plan, storeyId: string, at: Position): FloorOpening {
  const floor = roomAt(plan, storeyId, at.at)?.room.floor ?? plan.storeyById.get(storeyId)?.storey.floor;
  return floor === undefined ? 'lift-board' : floorOpening(floor);
}
