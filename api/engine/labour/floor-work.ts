import type { Floor } from '#model/building.ts';
import type { Worked } from '../connections/worked.ts';
import { roomAt } from '../plan/surroundings.ts';
import { floorOpening } from '../ways/floor-opening.ts';
import { type LiftedBoard, liftedBoards } from '../ways/lifted-boards.ts';
import type { Amount } from './amount.ts';

/** Coverings that come up by the room before the boards under them do. */
const rolled: readonly Floor['covering'][] = ['carpet', 'vinyl', 'laminate'];
interface OpenedFloor {
  readonly board: LiftedBoard;
  readonly floor: Floor | null;
  /** The room, or the storey where the place is in none. */
  readonly placeId: string;
}

function openedFloor({ plan }: Worked, board: LiftedBoard): OpenedFloor {
  const room = roomAt(plan, board.storeyId, board.at.at);
  const storeyFloor = plan.storeyById.get(board.storeyId)?.storey.floor ?? null;
  return { board, floor: room?.room.floor ?? storeyFloor, placeId: room?.room.id ?? board.storeyId };
}

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
  const opened = liftedBoards(worked.runs).map((board) => openedFloor(worked, board));
  return [...opened.map(openingWork), ...rollingWork(opened)];
}
