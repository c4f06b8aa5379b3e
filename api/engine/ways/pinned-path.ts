import type { Floor } from '#model/building.ts';
import type { Waypoint } from '#model/cable.ts';
import { alongWallMm, offWallMm } from '../plan/along-wall.ts';
import { roomLevels } from '../plan/heights.ts';
import type { Plan } from '../plan/plan.ts';
import { type Position, planPointOf, type WallSpot } from '../plan/plane.ts';
import { freePosition } from '../plan/position-of-place.ts';
import { roomAt } from '../plan/surroundings.ts';
import { cheapestPath } from './cheapest-path.ts';
import { joistsCrossed, joistsCut, liesAlongJoists } from './joists.ts';
import { layInWall } from './lay-in-wall.ts';
import type { RouteRequest } from './route.ts';
import type { Segment } from './run.ts';
import { type Lay, openLay, segmentBetween } from './segment.ts';
import { studsOnWay } from './studs.ts';

/** A waypoint within this of a wall's face, in the room, is on that face. */
const ON_FACE_MM = 20;

/**
 * The path by waypoints pinned by hand: one stretch to each, with what is said of it, the rest derived; then
 * on to the end as any path is found. Waypoints on a storey that the plan does not have are passed over.
 */
export function pinnedPath(request: RouteRequest): readonly Segment[] {
  const { plan, from, to, via } = request;
  const segments: Segment[] = [];
  let here = from;
  for (const waypoint of via) {
    const next = positionOfWaypoint(plan, waypoint, [here, to]);
    if (next === null) continue;
    const segment = pinnedStretch(request, here, next, waypoint);
    if (segment.lengthMm > 0.01) segments.push(segment);
    here = next;
  }
  const toMount = request.toMount;
  // What is known of its length is of the whole.
  const rest = request.asFound === undefined ? request : { ...request, asFound: { knownMm: null } };
  return [...segments, ...cheapestPath({ ...rest, from: here, via: [], fromMount: toMount })];
}

function positionOfWaypoint(plan: Plan, waypoint: Waypoint, ends: readonly Position[]): Position | null {
  const free = freePosition(plan, waypoint.storey, planPointOf(waypoint.at), waypoint.heightMm);
  if (free === null || waypoint.heightMm < 0) return free;
  const { wall: wallId, side } = waypoint;
  const spot =
    wallId === undefined || side === undefined ? wallOfNeighbour(plan, free, ends) : { wallId, side };
  const wall = spot && plan.wallById.get(spot.wallId);
  if (!wall || !spot) return free;
  return { ...free, onWall: { wallId: spot.wallId, side: spot.side, alongMm: alongWallMm(wall, free.at) } };
}

/** The face of a neighbouring position's wall, when the waypoint lies on it as well. */
function wallOfNeighbour(plan: Plan, free: Position, ends: readonly Position[]): WallSpot | null {
  const neighbour = ends.find((end) => {
    const wall = plan.wallById.get(end.onWall?.wallId ?? '');
    if (wall === undefined || end.storeyId !== free.storeyId) return false;
    const offMm = Math.abs(offWallMm(wall, free.at) - offWallMm(wall, end.at));
    const alongMm = alongWallMm(wall, free.at);
    return offMm <= ON_FACE_MM && alongMm >= 0 && alongMm <= wall.lengthMm;
  });
  return neighbour?.onWall ?? null;
}

function pinnedStretch(request: RouteRequest, from: Position, to: Position, waypoint: Waypoint): Segment {
  const { plan } = request;
  const derived = derivedLay(request, from, to, waypoint.wall ?? sharedWallId(from, to));
  const medium = waypoint.medium ?? derived.medium;
  // What was derived for another medium says nothing about the one given.
  const base = medium === derived.medium ? derived : openLay(medium, 'pinned');
  const over = floorOver(plan, from, to);
  const wallId = waypoint.wall ?? sharedWallId(from, to);
  return segmentBetween(
    onFaceOf(plan, from, to),
    to,
    {
      medium,
      depthMm: waypoint.depthMm ?? base.depthMm,
      containment: waypoint.containment ?? (medium === 'surface-channel' ? 'channel' : base.containment),
      insulation: waypoint.insulation ?? base.insulation,
      certainty: 'pinned',
    },
    {
      wallId,
      side: waypoint.side ?? (wallId === null ? null : (to.onWall?.side ?? from.onWall?.side ?? null)),
      storeyId: over?.storeyId ?? waypoint.storey,
      bundle: waypoint.bundle ?? null,
      joistsCrossed: medium === 'void-across' && over ? cutUnder(plan, over, [from, to]) : 0,
      studsCrossed: studsOnWay(plan.wallById.get(wallId ?? ''), medium, [from, to]),
    },
  );
}

/** A place in a corner as one on the wall that the stretch from there goes along; any other as it is. */
function onFaceOf(plan: Plan, from: Position, { onWall, storeyId }: Position): Position {
  const wall = plan.wallById.get(onWall?.wallId ?? '');
  if (wall === undefined || onWall === undefined || from.storeyId !== storeyId) return from;
  if (from.onWall === undefined || from.onWall.wallId === onWall.wallId) return from;
  const faceMm = ((onWall.side === 'left' ? 1 : -1) * wall.wall.thicknessMm) / 2;
  const alongMm = alongWallMm(wall, from.at);
  const isThere = alongMm >= -ON_FACE_MM && alongMm <= wall.lengthMm + ON_FACE_MM;
  if (!isThere || Math.abs(offWallMm(wall, from.at) - faceMm) > ON_FACE_MM) return from;
  return { ...from, onWall: { ...onWall, alongMm } };
}

function sharedWallId(from: Position, to: Position): string | null {
  const [a, b] = [from.onWall?.wallId, to.onWall?.wallId];
  if (a !== undefined && a === b) return a;
  return isPlumb(from, to) ? (a ?? b ?? null) : null;
}

/** What a stretch lies in by where its middle is: in a room, under a floor, or in the loft. */
function derivedLay(request: RouteRequest, from: Position, to: Position, wallId: string | null): Lay {
  const { plan, tariff } = request;
  if (isInRoom(plan, middleLevelMm(from, to))) {
    const mount = from === request.from ? request.fromMount : request.toMount;
    return layInWall(plan.wallById.get(wallId ?? ''), mount, tariff.chased);
  }
  const over = floorOver(plan, from, to);
  if (over === null) return openLay('loft', 'pinned');
  if (isPlumb(from, to) || over.floor.build !== 'suspended-timber') return openLay('void-open', 'pinned');
  const along = liesAlongJoists(over.floor, from.at, to.at);
  return openLay(along ? 'void-along' : 'void-across', 'pinned');
}

/** Joists that are cut: where cable could pass beneath them, only those that it was seen or set to go through. */
function cutUnder(plan: Plan, { storeyId, floor }: FloorOver, [from, to]: readonly [Position, Position]) {
  const floorMm = plan.storeyById.get(storeyId)?.storey.floorLevelMm ?? 0;
  const belowMm = floorMm - Math.max(from.levelMm, to.levelMm);
  const isInJoists = floor.joistDepthMm !== undefined && belowMm < floor.joistDepthMm;
  return (isInJoists ? joistsCrossed : joistsCut)(floor, from.at, to.at);
}

interface FloorOver {
  readonly storeyId: string;
  readonly floor: Floor;
}

/** The floor in whose void a stretch is: the next one above its middle; null in rooms and above all floors. */
function floorOver(plan: Plan, from: Position, to: Position): FloorOver | null {
  const levelMm = middleLevelMm(from, to);
  const over = plan.storeys.find(({ storey }) => storey.floorLevelMm > levelMm)?.storey;
  if (over === undefined || isInRoom(plan, levelMm)) return null;
  return { storeyId: over.id, floor: roomAt(plan, over.id, to.at)?.room.floor ?? over.floor };
}

function middleLevelMm(from: Position, to: Position): number {
  return (from.levelMm + to.levelMm) / 2;
}

function isInRoom(plan: Plan, levelMm: number): boolean {
  return roomLevels(plan).some(({ floorMm, ceilingMm }) => levelMm > floorMm && levelMm < ceilingMm);
}

function isPlumb(from: Position, to: Position): boolean {
  return Math.hypot(to.at[0] - from.at[0], to.at[1] - from.at[1]) < ON_FACE_MM;
}
