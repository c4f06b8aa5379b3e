import type { Opening } from '#model/building.ts';
import { alongWallMm } from './along-wall.ts';
import type { Plan, PlanRoom, PlanWall } from './plan.ts';
import { distanceMm, type PlanPoint, type WallSpot } from './plane.ts';
import { isInside } from './polygon.ts';
import { pointOnFace } from './position-of-place.ts';
import { outlineEdges } from './room-outline.ts';
import { wallFace } from './wall-face.ts';

/** Half of a twin outlet's plate, so that a plate stays clear of corners and of door frames, mm. */
const HALF_PLATE_MM = 75;
/** Half of its height, so that it does not reach over a window's sill, mm. */
const HALF_PLATE_UPRIGHT_MM = 45;

/** A stretch of a wall along its centre line, mm from the wall's `from`. */
type Stretch = readonly [lowMm: number, highMm: number];

/** A side of a wall as far as one room has it. */
interface Face {
  readonly wall: PlanWall;
  readonly side: WallSpot['side'];
  readonly betweenCorners: Stretch;
}

/** A wall's whole side between its inside corners, for walls that no closed room has. */
function wholeFace(plan: Plan, wall: PlanWall, side: WallSpot['side']): Face {
  const face = wallFace(plan, wall.wall.id, side);
  const low = Math.max(0, face?.lowCornerMm ?? 0);
  const high = Math.min(wall.lengthMm, face?.highCornerMm ?? wall.lengthMm);
  return { wall, side, betweenCorners: [low, high] };
}

/** The faces round a room, anticlockwise; a wall that two rooms share on one side gives each its own part. */
function facesOfRoom(plan: Plan, { room }: PlanRoom): readonly Face[] {
  const edges = outlineEdges(room, plan.wallById);
  const faces =
    edges.length > 0
      ? edges.flatMap(({ wallId, side, from, to }): Face[] => {
          const wall = plan.wallById.get(wallId);
          if (wall === undefined) return [];
          const [a, b] = [alongWallMm(wall, from), alongWallMm(wall, to)];
          return [{ wall, side, betweenCorners: [Math.min(a, b), Math.max(a, b)] }];
        })
      : room.walls.flatMap(({ wall: id, side }): Face[] => {
          const wall = plan.wallById.get(id);
          return wall === undefined ? [] : [wholeFace(plan, wall, side)];
        });
  return faces.filter(({ wall }) => wall.wall.core !== 'open');
}

/** All faces of a storey's rooms, room by room; of all its walls where it has no rooms. */
function facesOfStorey(plan: Plan, storeyId: string): readonly Face[] {
  const rooms = [...plan.roomById.values()].filter((room) => room.storeyId === storeyId);
  const faces = rooms.flatMap((room) => facesOfRoom(plan, room));
  if (faces.length > 0) return faces;
  return [...plan.wallById.values()]
    .filter((wall) => wall.storeyId === storeyId && wall.wall.core !== 'open')
    .toSorted((a, b) => (a.wall.id < b.wall.id ? -1 : 1))
    .flatMap((wall) => (['left', 'right'] as const).map((side) => wholeFace(plan, wall, side)));
}

/** The faces that can be meant by a place: of the room that it is in, else of the storey. */
function facesAround(plan: Plan, storeyId: string, at: PlanPoint): readonly Face[] {
  const within = [...plan.roomById.values()].filter(
    (room) => room.storeyId === storeyId && room.outline.length > 2 && isInside(room.outline, at),
  );
  const near = within.flatMap((room) => facesOfRoom(plan, room));
  return near.length > 0 ? near : facesOfStorey(plan, storeyId);
}

/** Whether an opening leaves no wall for a plate at this height on this side. */
function isInTheWay({ kind, sillMm, headMm, side }: Opening, face: Face, heightMm: number): boolean {
  // The wall behind a chimney breast; one whose side nobody recorded is taken to stand on both.
  if (kind === 'breast') return side === undefined || side === face.side;
  if (kind !== 'window') return true;
  return heightMm + HALF_PLATE_UPRIGHT_MM > sillMm && heightMm - HALF_PLATE_UPRIGHT_MM < headMm;
}

/** What of a face can carry a plate at this height: between its corners, clear of doors, breasts, and of windows it would be in. */
function freeStretches(face: Face, heightMm: number): readonly Stretch[] {
  const { wall, betweenCorners } = face;
  const low = betweenCorners[0] + HALF_PLATE_MM;
  const high = betweenCorners[1] - HALF_PLATE_MM;
  const gaps = wall.wall.openings
    .filter((opening) => isInTheWay(opening, face, heightMm))
    .map(({ alongMm, widthMm }): Stretch => [alongMm - HALF_PLATE_MM, alongMm + widthMm + HALF_PLATE_MM])
    .sort((a, b) => a[0] - b[0]);
  const free: Stretch[] = [];
  let from = low;
  for (const [gapLow, gapHigh] of gaps) {
    if (gapLow > from) free.push([from, Math.min(gapLow, high)]);
    from = Math.max(from, gapHigh);
  }
  if (high >= from) free.push([from, high]);
  // Told in whole mm, inwards, so that what was found stays where it is when it is looked for again.
  return free
    .map(([lowMm, highMm]): Stretch => [Math.ceil(lowMm), Math.floor(highMm)])
    .filter(([lowMm, highMm]) => highMm >= lowMm);
}

/** Where along the stretches a distance is nearest to; null where there is none. */
function nearestAlong(stretches: readonly Stretch[], alongMm: number): number | null {
  let best: number | null = null;
  for (const [low, high] of stretches) {
    const held = Math.min(Math.max(alongMm, low), high);
    if (best === null || Math.abs(held - alongMm) < Math.abs(best - alongMm)) best = held;
  }
  return best;
}

const spotOn = ({ wall, side }: Face, alongMm: number): WallSpot => ({ wallId: wall.wall.id, side, alongMm });

/**
 * The spot on a wall's face nearest to a position on a storey's plan, for a plate at this height: on a face of the
 * room that the position is in, between the inside corners, in no door, no window, and behind no chimney breast. Ties go to the wall first by id.
 *
 * @param stepMm places are told in whole steps of this, save where a corner or an opening holds them off.
 * @returns null where no face of the storey can carry a plate.
 */
export function nearestFace(
  plan: Plan,
  storeyId: string,
  at: PlanPoint,
  options: { readonly heightMm: number; readonly stepMm?: number },
): WallSpot | null {
  const stepMm = options.stepMm ?? 10;
  let best: { readonly spot: WallSpot; readonly offMm: number } | null = null;
  const faces = facesAround(plan, storeyId, at).toSorted((a, b) =>
    a.wall.wall.id < b.wall.wall.id ? -1 : 1,
  );
  for (const face of faces) {
    const wanted = Math.round(alongWallMm(face.wall, at) / stepMm) * stepMm;
    const held = nearestAlong(freeStretches(face, options.heightMm), wanted);
    if (held === null) continue;
    const offMm = distanceMm(pointOnFace(face.wall, face.side, held), at);
    if (best === null || offMm < best.offMm - 1e-6) best = { spot: spotOn(face, held), offMm };
  }
  return best?.spot ?? null;
}

/** True for the face that a spot is on; of two parts of one side, the one that reaches it. */
const carries =
  ({ wallId, side, alongMm }: WallSpot) =>
  ({ wall, side: faceSide, betweenCorners: [low, high] }: Face): boolean =>
    wall.wall.id === wallId && faceSide === side && alongMm >= low - 1 && alongMm <= high + 1;

function faceOf(plan: Plan, spot: WallSpot): Face | null {
  const wall = plan.wallById.get(spot.wallId);
  if (wall === undefined) return null;
  return facesOfStorey(plan, wall.storeyId).find(carries(spot)) ?? wholeFace(plan, wall, spot.side);
}

/**
 * A spot moved along its own face by so many mm (positive: towards the wall's `to`): over doors to their far side, and
 * to the last free place before a corner.
 *
 * @returns null for a wall that the plan does not have, or a face that can carry nothing.
 */
export function steppedAlongFace(
  plan: Plan,
  spot: WallSpot,
  byMm: number,
  heightMm: number,
): WallSpot | null {
  const face = faceOf(plan, spot);
  if (face === null) return null;
  const stretches = freeStretches(face, heightMm);
  const target = spot.alongMm + byMm;
  const within = stretches.some(([low, high]) => low <= target && target <= high);
  const beyond =
    byMm > 0
      ? stretches.find(([low]) => low > target)?.[0]
      : stretches.findLast(([, high]) => high < target)?.[1];
  const alongMm = within ? target : (beyond ?? nearestAlong(stretches, target));
  return alongMm === null ? null : { ...spot, alongMm: Math.round(alongMm) };
}

/**
 * The next face of the storey that can carry a plate at this height, in the middle of its longest free stretch: round
 * the spot's room wall by wall, then on to the next room, and after the last one to the first.
 *
 * @param way 1: to the right hand of someone who stands in the room and looks at the wall; −1: to the left hand.
 * @returns null for a wall that the plan does not have, or where nothing can carry a plate.
 */
export function nextFace(plan: Plan, spot: WallSpot, way: 1 | -1, heightMm: number): WallSpot | null {
  const storeyId = plan.wallById.get(spot.wallId)?.storeyId;
  if (storeyId === undefined) return null;
  const usable = (face: Face): boolean => freeStretches(face, heightMm).length > 0 || carries(spot)(face);
  const faces = facesOfStorey(plan, storeyId).filter(usable);
  // The list goes round a room anticlockwise, which is to the left for someone inside it.
  const at = faces.findIndex(carries(spot));
  const next = faces.at(at === -1 ? 0 : (at - way) % faces.length);
  if (next === undefined) return null;
  const longest = freeStretches(next, heightMm).toSorted((a, b) => b[1] - b[0] - (a[1] - a[0]))[0];
  return longest === undefined ? null : spotOn(next, Math.round((longest[0] + longest[1]) / 2));
}
