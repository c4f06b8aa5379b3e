import type { Floor } from '#model/building.ts';
import type { Plan } from '../plan/plan.ts';
import { roomAt } from '../plan/surroundings.ts';
import { type LiftedBoard, liftedBoards, type PathOfRun } from './lifted-boards.ts';

export type { PathOfRun };

/** A place where a floor is opened. */
export interface OpenedFloor {
  readonly board: LiftedBoard;
  /** Null where nobody can say what floor it is. */
  readonly floor: Floor | null;
  /** The room, or the storey where the place is in none. */
  readonly placeId: string;
}

/** Where floors are opened for runs, with the floor there: the room's own, else the storey's. */
export function openedFloors(runs: readonly PathOfRun[], plan: Plan): readonly OpenedFloor[] {
  return liftedBoards(runs).map((board) => {
    const room = roomAt(plan, board.storeyId, board.at.at);
    const storeyFloor = plan.storeyById.get(board.storeyId)?.storey.floor ?? null;
    return { board, floor: room?.room.floor ?? storeyFloor, placeId: room?.room.id ?? board.storeyId };
  });
}
