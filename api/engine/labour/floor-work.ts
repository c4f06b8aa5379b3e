import type { Floor } from '#model/building.ts';
import type { Worked } from '../connections/worked.ts';
import { floorOpening } from '../ways/floor-opening.ts';
import { type OpenedFloor, openedFloors } from '../ways/opened-floors.ts';
import type { Amount } from './amount.ts';

/** Coverings that come up by the room before the boards under them do. */
const rolled: readonly Floor['covering'][] = ['carpet', 'vinyl', 'laminate'];

/** One opening; where nobody has said whether the floor lifts, a second beside it may be needed. */
function openingWork({ board, floor }: OpenedFloor): Amount {
  const causes = board.runIds;
  if (floor === null) return { task: 'lift-board', causes, quantity: 1, low: 1, high: 2 };
  return {
    task: floorOpening(floor),
    causes,
    quantity: 1,
    low: 1,
    high: floor.liftable === undefined ? 2 : 1,
  };
}

function rollingWork(opened: readonly OpenedFloor[]): readonly Amount[] {
  const causesByPlace = new Map<string, readonly string[]>();
  for (const { floor, placeId, board } of opened)
    if (floor !== null && rolled.includes(floor.covering))
      causesByPlace.set(placeId, [...(causesByPlace.get(placeId) ?? []), ...board.runIds]);
  return [...causesByPlace.values()].map((causes) => ({
    task: 'roll-covering',
    causes,
    quantity: 1,
    low: 1,
    high: 1,
  }));
}

/** Floors opened and closed for new cables, and coverings rolled back once a room. */
export function floorWork(worked: Worked): readonly Amount[] {
  const opened = openedFloors(worked.runs, worked.plan);
  return [...opened.map(openingWork), ...rollingWork(opened)];
}
