import type { Plan } from '#engine/plan/plan.ts';
import { positionOfPlace } from '#engine/plan/position-of-place.ts';
import { roomOfPosition } from '#engine/plan/surroundings.ts';
import type { Place, Point } from '#model/installation.ts';

/** The name of the room that a place lies in; null where there is no place, or it lies in no room that is drawn. */
export function roomOfPlace(plan: Plan, place: Place | undefined): string | null {
  const position = place === undefined ? null : positionOfPlace(plan, place);
  return roomOfPosition(plan, position)?.room.name ?? null;
}

/** A point among others in a list: "R4, Dining room", and what stands there where that is asked for. */
export const pointInRoom = (plan: Plan, { label, place }: Point, what?: string): string =>
  [label, roomOfPlace(plan, place), what].filter((words) => words != null).join(', ');
