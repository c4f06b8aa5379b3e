import { cornerDistances } from '#engine/plan/corners.ts';
import { nearestFace, steppedAlongFace } from '#engine/plan/nearest-face.ts';
import type { Plan } from '#engine/plan/plan.ts';
import type { PlanPoint, WallSpot } from '#engine/plan/plane.ts';
import type { Place } from '#model/installation.ts';

/** Height that a point gets which had none, mm above floor. */
export const USUAL_HEIGHT_MM = 450;

const placeOf = (spot: WallSpot, heightMm: number): Place => ({
  wall: spot.wallId,
  side: spot.side,
  alongMm: spot.alongMm,
  heightMm,
});

/** The place on a wall that a position on plan means; a free place where the storey has no wall to take it. */
export function placeAt(plan: Plan, storeyId: string, at: PlanPoint, heightMm: number): Place {
  const spot = nearestFace(plan, storeyId, at, { heightMm });
  if (spot !== null) return placeOf(spot, heightMm);
  return { storey: storeyId, at: [Math.round(at[0]), Math.round(at[1])], heightMm };
}

/**
 * A place moved along its wall by so many mm as seen from the room (positive: to the right); it passes doors and stops
 * at the corners. A free place moves across the plan.
 */
export function movedAlong(plan: Plan, place: Place, byMm: number): Place {
  if (!('wall' in place)) return { ...place, at: [place.at[0] + byMm, place.at[1]] };
  // Seen from its left face, a wall's `to` end is on the left hand.
  const sign = place.side === 'left' ? -1 : 1;
  const spot = { wallId: place.wall, side: place.side, alongMm: place.alongMm };
  const moved = steppedAlongFace(plan, spot, sign * byMm, place.heightMm);
  return moved === null ? place : placeOf(moved, place.heightMm);
}

/** Where a place is, told from the corners: "1080 mm from the left corner, 2510 mm from the right, 450 mm above floor". */
export function placeInWords(plan: Plan, place: Place): string {
  const height = `${place.heightMm} mm above floor`;
  if (!('wall' in place)) return height;
  const spot = { wallId: place.wall, side: place.side, alongMm: place.alongMm };
  const { leftMm, rightMm } = cornerDistances(plan, spot);
  const parts = [
    ...(leftMm === null ? [] : [`${Math.round(leftMm)} mm from the left corner`]),
    ...(rightMm === null ? [] : [`${Math.round(rightMm)} mm from the right corner`]),
    height,
  ];
  return parts.join(', ');
}
