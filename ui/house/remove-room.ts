import { buildPlan } from '#engine/plan/build-plan.ts';
import { facePosition } from '#engine/plan/position-of-place.ts';
import { outlineEdges } from '#engine/plan/room-outline.ts';
import type { Room, Storey } from '#model/building.ts';
import type { Job } from '#model/job.ts';
import { extrasWithout } from '../edits/extras.ts';
import { type Drawing, done, type Outcome, refused } from './drawing.ts';
import { joinInLine } from './join-walls.ts';
import { soundly } from './soundly.ts';
import { tidy } from './vector.ts';
import { otherSide, roomAt } from './wall-line.ts';
import { wallMap } from './wall-map.ts';
import { placesOnWalls } from './wall-places.ts';

/** Takes a room away with the walls that no other room has; what stands on these stays where it is, on no wall. */
export function removeRoom(drawing: Drawing, roomId: string): Outcome {
  const { storey } = drawing;
  const room = storey.rooms.find(({ id }) => id === roomId);
  if (room === undefined) return refused('That room is not there any more.');
  return soundly(storey, () => {
    storey.rooms = storey.rooms.filter((one) => one !== room);
    extrasWithout(drawing.job, new Set([room.id]));
    const alone = room.walls.filter(({ wall, side }) => roomAt(storey, wall, otherSide(side)) === undefined);
    removeWalls(drawing.job, storey, new Set(alone.map(({ wall }) => wall)));
    joinInLine(drawing);
    return done;
  });
}

/**
 * Makes two rooms one by taking away the walls between them: the first keeps its name, and has the photos of both.
 *
 * @returns why not: they share no wall, or what is left does not close.
 */
export function joinRooms(drawing: Drawing, keptId: string, goneId: string): Outcome {
  const { storey } = drawing;
  const [kept, gone] = [keptId, goneId].map((id) => storey.rooms.find((room) => room.id === id));
  if (kept === undefined || gone === undefined) return refused('That room is not there any more.');
  const shared = new Set(
    kept.walls
      .filter(({ wall, side }) => gone.walls.some((one) => one.wall === wall && one.side === otherSide(side)))
      .map(({ wall }) => wall),
  );
  if (shared.size === 0) return refused(`${kept.name} and ${gone.name} have no wall between them.`);
  const ring = joinedRing(storey, [kept, gone], shared);
  if (ring === null) return refused(`${kept.name} and ${gone.name} meet in more than one place.`);
  return soundly(storey, () => {
    storey.rooms = storey.rooms.filter((one) => one !== gone);
    extrasWithout(drawing.job, new Set([gone.id]), kept.id);
    kept.walls = ring;
    const photos = [...new Set([...(kept.photos ?? []), ...(gone.photos ?? [])])];
    if (photos.length > 0) kept.photos = photos;
    removeWalls(drawing.job, storey, shared);
    joinInLine(drawing);
    return done;
  });
}

/** The walls round two rooms without those between them; null where these are not all in one stretch. */
function joinedRing(
  storey: Storey,
  rooms: readonly [Room, Room] | readonly Room[],
  shared: ReadonlySet<string>,
): Room['walls'] | null {
  const map = wallMap(storey);
  const parts = rooms.map((room) => {
    const ring = outlineEdges(room, map).map(({ wallId, side }) => ({ wall: wallId, side }));
    const first = ring.findIndex((one, i) => !shared.has(one.wall) && shared.has(ring.at(i - 1)?.wall ?? ''));
    const turned = [...ring.slice(first), ...ring.slice(0, first)];
    const end = turned.findIndex(({ wall }) => shared.has(wall));
    const isOneStretch = first >= 0 && end >= 0 && turned.slice(end).every(({ wall }) => shared.has(wall));
    return isOneStretch ? turned.slice(0, end) : null;
  });
  const [a, b] = parts;
  return a && b ? [...a, ...b] : null;
}

/** Takes walls away; points, boards and units on them stay where they were, free on the storey. */
export function removeWalls(job: Job, storey: Storey, ids: ReadonlySet<string>): void {
  const plan = buildPlan({ storeys: [storey], points: [], boards: [] });
  const { onWall, inWall } = placesOnWalls(job);
  for (const place of onWall) {
    if (!ids.has(place.wall)) continue;
    const { wall: wallId, side, alongMm } = place;
    const position = facePosition(plan, { wallId, side, alongMm }, 0);
    if (position === null) continue;
    const free = place as object;
    for (const key of ['wall', 'side', 'alongMm']) Reflect.deleteProperty(free, key);
    Object.assign(free, { storey: storey.id, at: tidy(position.at) });
  }
  for (const corner of inWall)
    if (ids.has(corner.wall)) for (const key of ['wall', 'side']) Reflect.deleteProperty(corner, key);
  storey.walls = storey.walls.filter(({ id }) => !ids.has(id));
}
