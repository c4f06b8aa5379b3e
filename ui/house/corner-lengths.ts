import type { Plan } from '#engine/plan/plan.ts';
import type { Storey, Wall } from '#model/building.ts';
import { plainCopy } from './drawing.ts';
import { sideWord } from './free-walls.ts';
import { wallsAt } from './house-parts.ts';
import { endsAt } from './move-walls.ts';
import { type RoomSide, roomSides } from './room-sides.ts';
import { minus, plus, times, unit, type Vector } from './vector.ts';
import { isSamePlace } from './wall-line.ts';
import { wallMap } from './wall-map.ts';

type Drawn = Pick<Storey, 'walls' | 'rooms'>;

/** A side of a room along a wall that meets a corner: how long it is from inside corner to inside corner. */
export interface CornerLength {
  readonly wallId: string;
  readonly room: string;
  /** "Hall, upper side". */
  readonly words: string;
  readonly lengthMm: number;
}

/** The sides of rooms along each wall that meets a corner, by the order of the walls, one a wall; none along a wall that no room ends with there. */
export function cornerLengths(
  storey: Drawn,
  corner: Vector,
  map: Plan['wallById'] = wallMap(storey),
): readonly CornerLength[] {
  const rooms = storey.rooms.map((room) => ({ name: room.name, sides: roomSides(storey, room, map) }));
  return wallsAt(storey, corner).flatMap((wall): CornerLength[] => {
    for (const { name, sides } of rooms) {
      const side = sides.find((one) => endsWith(one, wall, corner));
      if (side === undefined) continue;
      const words = `${name}, ${sideWord(side)} side`;
      return [{ wallId: wall.id, room: name, words, lengthMm: side.lengthMm }];
    }
    return [];
  });
}

/** Whether a side of a room ends at the corner with a wall: a side that goes on beyond it is as long wherever the corner is. */
function endsWith({ walls, from, to }: RoomSide, wall: Wall, corner: Vector): boolean {
  const at = walls.findIndex(({ wallId }) => wallId === wall.id);
  if (at < 0) return false;
  if (walls.length > 1 && at > 0 && at < walls.length - 1) return false;
  const near = Math.min(...[from, to].map((end) => Math.hypot(...minus(end, corner))));
  const far = isSamePlace(wall.from, corner) ? wall.to : wall.from;
  const beyond = Math.min(...[from, to].map((end) => Math.hypot(...minus(end, far))));
  return walls.length === 1 || near < beyond;
}

/** To the tenth of a millimetre, which is what corners are kept to. */
const NEAR_MM = 0.05;
/** A secant comes near in two or three steps where the walls meet at anything like a right angle. */
const MOST_STEPS = 12;

/**
 * Where a corner goes so that the side along one of its walls is so long: along the line of that wall.
 *
 * @returns null where no place on that line makes it so long.
 */
export function cornerForLength(
  storey: Drawn,
  corner: Vector,
  { wallId, lengthMm }: Pick<CornerLength, 'wallId' | 'lengthMm'>,
): Vector | null {
  const wall = storey.walls.find(({ id }) => id === wallId);
  if (wall === undefined) return null;
  const away = unit(minus(corner, isSamePlace(wall.from, corner) ? wall.to : wall.from));
  const placeAfter = (byMm: number): Vector => plus(corner, times(away, byMm));
  const overMm = (byMm: number): number | null => {
    const now = lengthWith(storey, corner, { wallId, to: placeAfter(byMm) });
    return now === null ? null : now - lengthMm;
  };
  let [before, byMm] = [0, 0];
  let over = overMm(0);
  if (over === null) return null;
  let overBefore = over;
  for (let step = 0; step < MOST_STEPS && Math.abs(over) > NEAR_MM; step += 1) {
    const slope = byMm === before ? 1 : (over - overBefore) / (byMm - before);
    if (Math.abs(slope) < 0.01) return null;
    [before, overBefore] = [byMm, over];
    byMm -= over / slope;
    const next = overMm(byMm);
    if (next === null) return null;
    over = next;
  }
  return Math.abs(over) > NEAR_MM ? null : placeAfter(byMm);
}

/** How long the side along a wall is once the corner is elsewhere; null where its room does not close then. */
function lengthWith(
  storey: Drawn,
  corner: Vector,
  { wallId, to }: { readonly wallId: string; readonly to: Vector },
): number | null {
  const { walls, rooms } = storey;
  const copy = plainCopy({ walls, rooms });
  for (const { wall, end } of endsAt(copy, corner)) wall[end] = [to[0], to[1]];
  return cornerLengths(copy, to).find((one) => one.wallId === wallId)?.lengthMm ?? null;
}
