import { outlineCorners, outlineEdges } from '#engine/plan/room-outline.ts';
import type { Room, Storey, Wall } from '#model/building.ts';
import { sideWord } from './free-walls.ts';
import { overlapMm2 } from './overlap.ts';
import { type RoomSide, roomSides } from './room-sides.ts';
import { dot, leftOf, minus, plus, times, unit, type Vector } from './vector.ts';
import { directionOf, isParallel } from './wall-line.ts';
import { wallMap } from './wall-map.ts';

/** A wall that runs through a room, and by how much less a side of the room would have to reach so that it does not. */
export interface CrossedWall {
  readonly wallId: string;
  /** "an outer wall would run through Bedroom, 640 mm within its right side". */
  readonly words: string;
  /** Which side would have to come in; null where the wall runs along none. */
  readonly cut: { readonly side: ReturnType<typeof sideWord>; readonly byMm: number } | null;
}

/** So much of a wall may reach into a room, mm²: what measuring does. */
const COMMON_MM2 = 60_000;

/** The walls that run through a room without being its own, by the order of the storey's walls. */
export function crossedWalls(storey: Pick<Storey, 'walls' | 'rooms'>, room: Room): readonly CrossedWall[] {
  const map = wallMap(storey);
  const outline = outlineCorners(outlineEdges(room, map));
  if (outline.length < 3) return [];
  const own = new Set(room.walls.map(({ wall }) => wall));
  const sides = roomSides(storey, room, map);
  return storey.walls
    .filter(({ id, core }) => !own.has(id) && core !== 'open')
    .filter((wall) => overlapMm2(outline, bodyOf(wall)) > COMMON_MM2)
    .map((wall) => {
      const cut = leastCut(sides, wall);
      const kind = wall.external ? 'an outer wall' : 'a wall';
      const where = cut === null ? '' : `, ${placeWords(cut)} its ${cut.side} side`;
      const words = `${kind} that is drawn already would run through ${room.name}${where}`;
      return {
        wallId: wall.id,
        words,
        cut: cut === null ? null : { side: cut.side, byMm: cut.byMm },
      };
    });
}

const placeWords = ({ withinMm }: { readonly withinMm: number }): string =>
  withinMm < 0 ? 'over' : `${Math.round(withinMm)} mm within`;

/** What a wall takes of the plan. */
function bodyOf(wall: Wall): readonly Vector[] {
  const across = times(leftOf(directionOf(wall)), wall.thicknessMm / 2);
  return [minus(wall.from, across), minus(wall.to, across), plus(wall.to, across), plus(wall.from, across)];
}

/** Of the sides along a wall the one that has to come in least to lie on this side of it. */
function leastCut(sides: readonly RoomSide[], wall: Wall) {
  const cuts = sides.flatMap((side) => {
    const along = unit(minus(side.to, side.from));
    if (!isParallel(along, directionOf(wall))) return [];
    // The room is on the left of its sides.
    const withinMm = dot(minus(wall.from, side.from), leftOf(along)) - wall.thicknessMm / 2;
    return [{ side: sideWord(side), withinMm, byMm: withinMm + wall.thicknessMm }];
  });
  return cuts.toSorted((a, b) => a.byMm - b.byMm)[0] ?? null;
}
