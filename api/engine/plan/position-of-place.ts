import type { Place } from '#model/installation.ts';
import { placeByWall } from './along-wall.ts';
import type { Plan, PlanWall } from './plan.ts';
import { type PlanPoint, type Position, planPointOf, type WallSpot } from './plane.ts';

/** The parts of a plan that are enough to find a position, so that a plan can be built with it. */
export type PlanFrame = Pick<Plan, 'storeyById' | 'wallById'>;

/** Unit vector out of a wall's face. */
export function faceNormal(wall: PlanWall, side: WallSpot['side']): readonly [number, number] {
  const [x, y] = wall.leftNormal;
  return side === 'left' ? [x, y] : [-x, -y];
}

/** The spot on a wall's face, half the wall's thickness off its centre line. */
export function pointOnFace(wall: PlanWall, side: WallSpot['side'], alongMm: number): PlanPoint {
  const halfMm = wall.wall.thicknessMm / 2;
  return placeByWall(wall, alongMm, side === 'left' ? halfMm : -halfMm);
}

/** A free position on a storey; null for a storey that the plan does not have. */
export function freePosition(
  frame: PlanFrame,
  storeyId: string,
  at: PlanPoint,
  heightMm: number,
): Position | null {
  const storey = frame.storeyById.get(storeyId)?.storey;
  if (storey === undefined) return null;
  return { storeyId, at, heightMm, levelMm: storey.floorLevelMm + heightMm };
}

/** A position on a wall's face; null for a wall that the plan does not have. */
export function facePosition(frame: PlanFrame, spot: WallSpot, heightMm: number): Position | null {
  const wall = frame.wallById.get(spot.wallId);
  if (wall === undefined) return null;
  const free = freePosition(frame, wall.storeyId, pointOnFace(wall, spot.side, spot.alongMm), heightMm);
  return free && { ...free, onWall: spot };
}

/**
 * Where a place of the job file is in the building: for a place on a wall, the spot on the wall's face.
 *
 * @returns null when the wall or the storey is not in the plan.
 */
export function positionOfPlace(frame: PlanFrame, place: Place): Position | null {
  if ('wall' in place) {
    const spot = { wallId: place.wall, side: place.side, alongMm: place.alongMm };
    return facePosition(frame, spot, place.heightMm);
  }
  return freePosition(frame, place.storey, planPointOf(place.at), place.heightMm);
}
