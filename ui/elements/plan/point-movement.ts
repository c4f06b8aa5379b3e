import type { Worked } from '#engine/connections/worked.ts';
import { cornerDistances } from '#engine/plan/corners.ts';
import { nearestFace, nextFace, steppedAlongFace } from '#engine/plan/nearest-face.ts';
import type { Plan } from '#engine/plan/plan.ts';
import type { PlanPoint, WallSpot } from '#engine/plan/plane.ts';
import type { Place } from '#model/installation.ts';

/** Further than any wall is long, mm. */
const TO_THE_CORNER_MM = 1e6;

type Arrow = 'ArrowLeft' | 'ArrowRight' | 'ArrowUp' | 'ArrowDown';

/** Where arrows point on plan, where y goes up. */
const arrows: Readonly<Record<Arrow, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

const isArrow = (key: string): key is Arrow => key in arrows;

const placeOf = (spot: WallSpot, heightMm: number): Place => ({
  wall: spot.wallId,
  side: spot.side,
  alongMm: spot.alongMm,
  heightMm,
});

/** A position on a storey, on no wall; to the millimetre. */
export const freePlace = (storey: string, [x, y]: PlanPoint, heightMm: number): Place => ({
  storey,
  at: [Math.round(x), Math.round(y)],
  heightMm,
});

/** The place on a wall that a position on plan means; a free place where the storey has no wall to take it. */
export function placeAt(plan: Plan, storeyId: string, at: PlanPoint, heightMm: number): Place {
  const spot = nearestFace(plan, storeyId, at, { heightMm });
  if (spot !== null) return placeOf(spot, heightMm);
  return freePlace(storeyId, at, heightMm);
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

/** A place moved the way an arrow points on screen; across its wall, right and down mean the right hand. */
function movedByArrow(plan: Plan, place: Place, arrow: Arrow, byMm: number): Place {
  const [x, y] = arrows[arrow];
  if (!('wall' in place)) return { ...place, at: [place.at[0] + x * byMm, place.at[1] + y * byMm] };
  const direction = plan.wallById.get(place.wall)?.direction ?? [1, 0];
  const along = x * direction[0] + y * direction[1];
  if (Math.abs(along) < 0.3) return movedAlong(plan, place, (x - y) * byMm);
  const toTheRight = place.side === 'left' ? -1 : 1;
  return movedAlong(plan, place, Math.sign(along) * toTheRight * byMm);
}

/**
 * Where a key brings a place: arrows along its wall by 50 mm, by 10 mm with Shift; Home and End to the corners on the
 * left and right hand; [ and ] to the next wall on that hand.
 *
 * @returns null for a key that moves nothing.
 */
export function movedByKey(plan: Plan, place: Place, key: string, isFine: boolean): Place | null {
  if (isArrow(key)) return movedByArrow(plan, place, key, isFine ? 10 : 50);
  if (!('wall' in place)) return null;
  if (key === 'Home') return movedAlong(plan, place, -TO_THE_CORNER_MM);
  if (key === 'End') return movedAlong(plan, place, TO_THE_CORNER_MM);
  if (key !== '[' && key !== ']') return null;
  const spot = { wallId: place.wall, side: place.side, alongMm: place.alongMm };
  const next = nextFace(plan, spot, key === ']' ? 1 : -1, place.heightMm);
  return next === null ? place : placeOf(next, place.heightMm);
}

/** Where a place is, told from the corners: "1080 mm from the left corner, 2510 mm from the right corner, 450 mm above floor". */
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

/** Whose a place is and in which room: "W1, Living room"; "New point" for one that is not there yet. */
export function placeName({ job, plan }: Worked, place: Place, pointId: string | null): string {
  const label = job.points.find(({ id }) => id === pointId)?.label ?? 'New point';
  const room = [...plan.roomById.values()].find(
    ({ room: { walls } }) =>
      'wall' in place && walls.some(({ wall, side }) => wall === place.wall && side === place.side),
  );
  return room === undefined ? label : `${label}, ${room.room.name}`;
}
