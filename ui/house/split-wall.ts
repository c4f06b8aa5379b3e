import { outlineEdges } from '#engine/plan/room-outline.ts';
import type { Room, Storey, Wall } from '#model/building.ts';
import type { Job } from '#model/job.ts';
import { plainCopy } from './drawing.ts';
import { tidy } from './vector.ts';
import { alongMm, placeBy, wallLengthMm } from './wall-line.ts';
import { wallMap } from './wall-map.ts';
import { placesOnWalls } from './wall-places.ts';

/** Why a wall cannot be parted there: a door or a window is in the way. */
export const openingAcross = ({ openings }: Wall, atMm: number): string | null => {
  const across = openings.find((one) => one.alongMm < atMm && atMm < one.alongMm + one.widthMm);
  return across === undefined ? null : `a ${words[across.kind]} is there`;
};
const words = { door: 'door', window: 'window', opening: 'gap', breast: 'chimney breast' } as const;

/**
 * Parts a wall in two at a distance from its `from`, mm: the wall keeps the beginning, a new one has the rest. Outlets,
 * openings and rooms that are on the rest are told so.
 *
 * @returns the new wall.
 * @throws where an opening lies across the place: ask `openingAcross` before.
 */
export function splitWall(
  job: Job,
  storey: Storey,
  wall: Wall,
  { atMm, id }: { atMm: number; id: string },
): Wall {
  const why = openingAcross(wall, atMm);
  if (why !== null) throw new Error(`A wall cannot be parted ${Math.round(atMm)} mm along: ${why}.`);
  const at = tidy(placeBy(wall, atMm));
  const rest: Wall = {
    ...plainCopy(wall),
    id,
    from: at,
    openings: wall.openings
      .filter((one) => one.alongMm >= atMm)
      .map((one) => ({ ...plainCopy(one), alongMm: one.alongMm - atMm })),
  };
  moveRefs(job, wall, { atMm, id });
  wall.openings = wall.openings.filter((one) => one.alongMm < atMm);
  wall.to = [...at];
  storey.walls.splice(storey.walls.indexOf(wall) + 1, 0, rest);
  for (const room of storey.rooms)
    if (room.walls.some((one) => one.wall === wall.id)) halve(storey, room, wall.id, id);
  return rest;
}

function moveRefs(job: Job, wall: Wall, { atMm, id }: { readonly atMm: number; readonly id: string }): void {
  const { onWall, inWall } = placesOnWalls(job);
  for (const place of onWall)
    if (place.wall === wall.id && place.alongMm > atMm) {
      place.wall = id;
      place.alongMm -= atMm;
    }
  for (const corner of inWall)
    if (
      corner.wall === wall.id &&
      alongMm(wall, corner.at) > atMm &&
      alongMm(wall, corner.at) <= wallLengthMm(wall) + 1
    )
      corner.wall = id;
}

/** A room that had the wall has both parts, in the order that it lists its walls in. */
function halve(storey: Storey, room: Room, first: string, second: string): void {
  const listed = (order: readonly [string, string]): Room['walls'] =>
    room.walls.flatMap((one) =>
      one.wall === first ? order.map((wall) => ({ wall, side: one.side })) : [one],
    );
  const map = wallMap(storey);
  const orders = [listed([first, second]), listed([second, first])];
  // A room whose walls do not close keeps them in the order of the first.
  room.walls = orders.find((walls) => outlineEdges({ ...room, walls }, map).length > 0) ?? orders[0] ?? [];
}
