import type { Plan, PlanRoom, PlanWall } from './plan.ts';
import { distanceMm, type PlanPoint, type WallSpot } from './plane.ts';
import { isInside } from './polygon.ts';
import { pointOnFace } from './position-of-place.ts';
import { wallFace } from './wall-face.ts';

/** Half of a twin outlet's plate, so that a plate stays clear of corners and of door frames, mm. */
const HALF_PLATE_MM = 75;

/** A stretch of a wall along its centre line, mm from the wall's `from`. */
type Stretch = readonly [lowMm: number, highMm: number];

interface Face {
  readonly wall: PlanWall;
  readonly side: WallSpot['side'];
}

/** The faces that can be meant: of the room that the place is in, else of all rooms, else of all walls. */
function facesAround(plan: Plan, storeyId: string, at: PlanPoint): readonly Face[] {
  const rooms = [...plan.roomById.values()].filter((room) => room.storeyId === storeyId);
  const within = rooms.filter((room) => room.outline.length > 2 && isInside(room.outline, at));
  const ofRooms = (some: readonly PlanRoom[]): Face[] =>
    some.flatMap(({ room }) =>
      room.walls.flatMap(({ wall: id, side }) => {
        const wall = plan.wallById.get(id);
        return wall === undefined || wall.wall.core === 'open' ? [] : [{ wall, side }];
      }),
    );
  const near = ofRooms(within.length > 0 ? within : rooms);
  if (near.length > 0) return near;
  return [...plan.wallById.values()]
    .filter((wall) => wall.storeyId === storeyId && wall.wall.core !== 'open')
    .flatMap((wall) => (['left', 'right'] as const).map((side) => ({ wall, side })));
}

/** What of a face can carry a plate at this height: between its corners, clear of doors, and of windows it would be in. */
function freeStretches(plan: Plan, { wall, side }: Face, heightMm: number): readonly Stretch[] {
  const face = wallFace(plan, wall.wall.id, side);
  const low = Math.max(0, face?.lowCornerMm ?? 0) + HALF_PLATE_MM;
  const high = Math.min(wall.lengthMm, face?.highCornerMm ?? wall.lengthMm) - HALF_PLATE_MM;
  const gaps = wall.wall.openings
    .filter(
      ({ kind, sillMm, headMm }) =>
        kind === 'door' ||
        kind === 'opening' ||
        (kind === 'window' && heightMm > sillMm && heightMm < headMm),
    )
    .map(({ alongMm, widthMm }): Stretch => [alongMm - HALF_PLATE_MM, alongMm + widthMm + HALF_PLATE_MM])
    .sort((a, b) => a[0] - b[0]);
  const free: Stretch[] = [];
  let from = low;
  for (const [gapLow, gapHigh] of gaps) {
    if (gapLow > from) free.push([from, Math.min(gapLow, high)]);
    from = Math.max(from, gapHigh);
  }
  if (high >= from) free.push([from, high]);
  return free.filter(([lowMm, highMm]) => highMm >= lowMm);
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

/**
 * The spot on a wall's face nearest to a position on a storey's plan, for a plate at this height: on a face of the
 * room that the position is in, between the inside corners, in no door and no window. Ties go to the wall first by id.
 *
 * @param stepMm places are told in whole steps of this.
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
    const { wall, side } = face;
    const [x, y] = wall.wall.from;
    const alongMm = (at[0] - x) * wall.direction[0] + (at[1] - y) * wall.direction[1];
    const stretches = freeStretches(plan, face, options.heightMm);
    const held = nearestAlong(stretches, Math.round(alongMm / stepMm) * stepMm);
    if (held === null) continue;
    const offMm = distanceMm(pointOnFace(wall, side, held), at);
    if (best === null || offMm < best.offMm - 1e-6)
      best = { spot: { wallId: wall.wall.id, side, alongMm: Math.round(held) }, offMm };
  }
  return best?.spot ?? null;
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
  const wall = plan.wallById.get(spot.wallId);
  if (wall === undefined) return null;
  const stretches = freeStretches(plan, { wall, side: spot.side }, heightMm);
  const target = spot.alongMm + byMm;
  const within = stretches.some(([low, high]) => low <= target && target <= high);
  const beyond =
    byMm > 0
      ? stretches.find(([low]) => low > target)?.[0]
      : stretches.findLast(([, high]) => high < target)?.[1];
  const alongMm = within ? target : (beyond ?? nearestAlong(stretches, target));
  return alongMm === null ? null : { ...spot, alongMm: Math.round(alongMm) };
}
