import { type RoomLevels, roomLevels } from '../plan/heights.ts';
import type { Plan } from '../plan/plan.ts';
import type { Position } from '../plan/plane.ts';
import { freePosition } from '../plan/position-of-place.ts';
import type { VoidSpace } from '../plan/voids.ts';
import { layInWall, onInVoid } from './lay-in-wall.ts';
import type { Mount } from './route.ts';
import type { Segment } from './run.ts';
import { type Lay, openLay, segmentBetween } from './segment.ts';
import type { WayTariff } from './way-tariff.ts';

/** The way from a place plumb up or down to the level of a void. */
export interface Plumb {
  /** In order from the place. */
  readonly segments: readonly Segment[];
  /** Where it arrives. */
  readonly arrival: Position;
}

/** A place, and the void whose level is wanted. */
export interface PlumbRequest {
  readonly plan: Plan;
  readonly place: Position;
  readonly mount: Mount;
  readonly space: VoidSpace;
  readonly tariff: WayTariff;
}

/** Plumb from a place to a void: in or on the wall as far as its storey's floor or ceiling, then open in the void. */
export function plumbToVoid(request: PlumbRequest): Plumb {
  const { plan, place, space } = request;
  const rooms = roomLevels(plan);
  const segments: Segment[] = [];
  let here = place;
  for (const levelMm of cutLevels(rooms, place.levelMm, space.levelMm)) {
    const room = roomBetween(rooms, place.storeyId, (here.levelMm + levelMm) / 2);
    const next = atLevel(plan, room?.storeyId ?? space.storeyId, here, levelMm);
    segments.push(plumbPiece(request, { room, from: here, to: next, last: segments.at(-1) }));
    here = next;
  }
  return { segments, arrival: here };
}

/** Levels to stop at on the way, the void's own last; none when the place is in the void already. */
function cutLevels(rooms: readonly RoomLevels[], fromMm: number, toMm: number): readonly number[] {
  if (Math.abs(fromMm - toMm) < 0.01) return [];
  const way = Math.sign(toMm - fromMm);
  const between = rooms
    .flatMap(({ floorMm, ceilingMm }) => [floorMm, ceilingMm])
    .filter((mm) => way * mm > way * fromMm && way * mm < way * toMm)
    .toSorted((a, b) => way * (a - b));
  return [...new Set(between), toMm];
}

/** The storey between whose floor and ceiling a level is, the place's own storey first; null in voids. */
function roomBetween(rooms: readonly RoomLevels[], storeyId: string, levelMm: number): RoomLevels | null {
  const holding = rooms.filter(({ floorMm, ceilingMm }) => floorMm < levelMm && levelMm < ceilingMm);
  return holding.find((room) => room.storeyId === storeyId) ?? holding[0] ?? null;
}

function atLevel(plan: Plan, storeyId: string, here: Position, levelMm: number): Position {
  const floorMm = plan.storeyById.get(storeyId)?.storey.floorLevelMm ?? 0;
  const position = { storeyId, at: here.at, heightMm: levelMm - floorMm, levelMm };
  // Only on its own storey is the place still on its wall.
  const onWall = here.storeyId === storeyId && position.heightMm >= 0 ? here.onWall : undefined;
  return onWall === undefined ? position : { ...position, onWall };
}

interface Piece {
  readonly room: RoomLevels | null;
  readonly from: Position;
  readonly to: Position;
  readonly last: Segment | undefined;
}

function plumbPiece(request: PlumbRequest, piece: Piece): Segment {
  const { plan, place, mount, space, tariff } = request;
  const { room, from, to, last } = piece;
  if (room === null) {
    const lay = openLay(space.kind === 'loft' ? 'loft' : 'void-open', 'derived');
    const containment = last === undefined ? 'none' : onInVoid(last);
    return segmentBetween(from, to, { ...lay, containment }, { storeyId: space.storeyId });
  }
  if (room.storeyId !== place.storeyId)
    return segmentBetween(from, to, openLay('riser', 'assumed'), { storeyId: room.storeyId });
  const wall = plan.wallById.get(place.onWall?.wallId ?? '');
  const lay: Lay = layInWall(wall, mount, tariff.chased);
  return segmentBetween(from, to, lay, {
    wallId: wall?.wall.id ?? null,
    side: place.onWall?.side ?? null,
    storeyId: room.storeyId,
  });
}

/** A position in a void, below the finished floor that it is under or above the ceiling that it is over. */
export function inVoid(plan: Plan, space: VoidSpace, at: Position['at']): Position {
  const floorMm = plan.storeyById.get(space.storeyId)?.storey.floorLevelMm ?? 0;
  const known = freePosition(plan, space.storeyId, at, space.levelMm - floorMm);
  return known ?? { storeyId: space.storeyId, at, heightMm: space.levelMm - floorMm, levelMm: space.levelMm };
}
