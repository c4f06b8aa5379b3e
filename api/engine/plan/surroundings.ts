import type { Plan, PlanRoom, PlanWall, Surroundings } from './plan.ts';
import { type PlanPoint, type Position, planPoint, planPointOf, type WallSpot } from './plane.ts';
import { isInside } from './polygon.ts';
import { faceNormal, pointOnFace } from './position-of-place.ts';
import { remembered, rememberedOfTwo } from './remembered.ts';

/** A step off a wall's face that is surely in the room and in front of nothing. */
const NUDGE_MM = 5;

/** The rooms of a storey, sorted by id. */
export function roomsOfStorey(plan: Plan, storeyId: string): readonly PlanRoom[] {
  return roomsByStorey(plan.roomById).get(storeyId) ?? [];
}

const roomsByStorey = remembered((roomById: Plan['roomById']) =>
  byStorey([...roomById.values()].toSorted((a, b) => (a.room.id < b.room.id ? -1 : 1))),
);

/** The walls of a storey, sorted by id. */
export function wallsOfStorey(plan: Plan, storeyId: string): readonly PlanWall[] {
  return wallsByStorey(plan.wallById).get(storeyId) ?? [];
}

const wallsByStorey = remembered((wallById: Plan['wallById']) =>
  byStorey([...wallById.values()].toSorted((a, b) => (a.wall.id < b.wall.id ? -1 : 1))),
);

function byStorey<T extends { readonly storeyId: string }>(
  all: readonly T[],
): ReadonlyMap<string, readonly T[]> {
  const ids = new Set(all.map(({ storeyId }) => storeyId));
  return new Map([...ids].map((id) => [id, all.filter(({ storeyId }) => storeyId === id)]));
}

/** The room that a place on a storey's plan is in; null between rooms, outside, or where no outline closes. */
export function roomAt(plan: Plan, storeyId: string, at: PlanPoint): PlanRoom | null {
  return roomsOfStorey(plan, storeyId).find((room) => isInside(room.outline, at)) ?? null;
}

/**
 * The room that a spot on a wall's face looks into: the one that holds the place just off the face, else one
 * that names the face among its walls (a room whose walls do not close has no outline to hold it).
 */
export function roomOfWallFace(plan: Plan, spot: WallSpot): PlanRoom | null {
  const wall = plan.wallById.get(spot.wallId);
  if (wall === undefined) return null;
  const [x, y] = pointOnFace(wall, spot.side, spot.alongMm);
  const normal = faceNormal(wall, spot.side);
  const inFront = planPoint(x + normal[0] * NUDGE_MM, y + normal[1] * NUDGE_MM);
  const naming = roomsOfStorey(plan, wall.storeyId).find((room) =>
    room.room.walls.some((each) => each.wall === spot.wallId && each.side === spot.side),
  );
  return roomAt(plan, wall.storeyId, inFront) ?? naming ?? null;
}

/**
 * The room and the floor at a position. The room's own floor wins over the storey's.
 *
 * @returns null for a storey that the plan does not have.
 */
export const surroundingsAt = rememberedOfTwo(foundAround);

/** The room that a position lies in; null for no position, and where it lies in none. */
export const roomOfPosition = (plan: Plan, position: Position | null | undefined): PlanRoom | null =>
  position == null ? null : (surroundingsAt(plan, position)?.room ?? null);

function foundAround(plan: Plan, position: Position): Surroundings | null {
  const storey = plan.storeyById.get(position.storeyId)?.storey;
  if (storey === undefined) return null;
  const room =
    position.onWall === undefined
      ? roomAt(plan, position.storeyId, position.at)
      : roomOfWallFace(plan, position.onWall);
  return { room, floor: room?.room.floor ?? storey.floor, storey };
}

/** Whether a place on a storey's plan is over a stairwell: there is no floor there, and no void in it. */
export function isInStairwell(plan: Plan, storeyId: string, at: PlanPoint): boolean {
  const stairwells = plan.storeyById.get(storeyId)?.storey.stairwells ?? [];
  return stairwells.some((outline) => isInside(outline.map(planPointOf), at));
}
