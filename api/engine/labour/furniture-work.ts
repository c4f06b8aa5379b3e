import type { Room } from '#model/building.ts';
import type { Worked } from '../connections/worked.ts';
import { roomOfPosition, roomOfWallFace } from '../plan/surroundings.ts';
import { openedFloors } from '../ways/opened-floors.ts';
import type { Amount } from './amount.ts';

/** A room that is worked in, and by what. */
interface RoomWorked {
  readonly roomId: string;
  readonly cause: string;
}

const unfurnished: readonly Room['use'][] = ['outside', 'loft'];

/** Rooms whose floor is opened. */
const byFloors = ({ runs, plan }: Worked): readonly RoomWorked[] =>
  openedFloors(runs, plan).flatMap(({ placeId, board }) =>
    board.runIds.map((cause) => ({ roomId: placeId, cause })),
  );

/** Rooms whose walls are chased. */
const byChases = ({ runs, plan }: Worked): readonly RoomWorked[] =>
  runs.flatMap(({ id, segments }) =>
    segments.flatMap(({ medium, from, to }) => {
      const spot = from.onWall ?? to.onWall;
      const room = medium === 'wall-chase' && spot !== undefined ? roomOfWallFace(plan, spot) : null;
      return room === null ? [] : [{ roomId: room.room.id, cause: id }];
    }),
  );

/** Rooms in which a box is let in, screwed on or exchanged. */
const byBoxes = ({ things, plan }: Worked): readonly RoomWorked[] =>
  things.boxes.flatMap(({ action, pointId }) => {
    if (pointId === null || (action !== 'fit' && action !== 're-box')) return [];
    const room = roomOfPosition(plan, plan.positionOfPoint.get(pointId));
    return room === null ? [] : [{ roomId: room.room.id, cause: pointId }];
  });

/**
 * Moving furniture, once a room of the house that is worked in; only where the job says that the firm does it and nobody
 * says that the house is empty. Like all that a room takes once it is in no column of the search.
 */
export function furnitureWork(worked: Worked): readonly Amount[] {
  const { job } = worked;
  if (job.terms.furniture !== 'firm' || job.site.occupied === false) return [];
  const furnished = new Set(
    job.storeys.flatMap(({ rooms }) =>
      rooms.filter(({ use }) => !unfurnished.includes(use)).map(({ id }) => id),
    ),
  );
  const causesByRoom = new Map<string, Set<string>>();
  for (const { roomId, cause } of [...byFloors(worked), ...byChases(worked), ...byBoxes(worked)]) {
    if (!furnished.has(roomId)) continue;
    const causes = causesByRoom.get(roomId) ?? new Set();
    causesByRoom.set(roomId, causes.add(cause));
  }
  return [...causesByRoom.values()].map((causes) => ({
    task: 'move-furniture',
    causes: [...causes].sort(),
    quantity: 1,
    low: 1,
    high: 1,
  }));
}
