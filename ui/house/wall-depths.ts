import type { Plan } from '#engine/plan/plan.ts';
import type { Storey } from '#model/building.ts';
import { sideWord } from './free-walls.ts';
import { roomSides } from './room-sides.ts';
import { dot, minus, unit } from './vector.ts';
import { directionOf, roomAt } from './wall-line.ts';
import { wallMap } from './wall-map.ts';

/** How far a wall stands from what is across a room from it: the side of the room that ends at the wall. */
export interface WallDepth {
  readonly room: string;
  /** "Hall, upper side". */
  readonly words: string;
  readonly lengthMm: number;
  /** 1 where the room grows when the wall moves to its left, -1 where it shrinks. */
  readonly sign: 1 | -1;
}

/** A side this near square to a wall gets longer by as much as the wall moves; the cosine of half a degree off. */
const SQUARE_COSINE = 0.0087;

/** How deep the rooms on both sides of a wall are, the room on its left first; none where no side is square to it. */
export function wallDepths(
  storey: Pick<Storey, 'walls' | 'rooms'>,
  wallId: string,
  map: Plan['wallById'] = wallMap(storey),
): readonly WallDepth[] {
  const wall = storey.walls.find(({ id }) => id === wallId);
  if (wall === undefined) return [];
  return (['left', 'right'] as const).flatMap((side) => {
    const room = roomAt(storey, wallId, side);
    if (room === undefined) return [];
    const sides = roomSides(storey, room, map);
    const at = sides.findIndex(({ walls }) =>
      walls.some((one) => one.wallId === wallId && one.side === side),
    );
    const beside = at < 0 ? [] : [sides[(at + 1) % sides.length], sides.at(at - 1)];
    const square = beside.find(
      (one) =>
        one !== undefined && Math.abs(dot(unit(minus(one.to, one.from)), directionOf(wall))) < SQUARE_COSINE,
    );
    if (square === undefined) return [];
    const words = `${room.name}, ${sideWord(square)} side`;
    return [
      {
        room: room.name,
        words,
        lengthMm: square.lengthMm,
        sign: side === 'left' ? (-1 as const) : (1 as const),
      },
    ];
  });
}

/** How far a wall moves, to its left more than nought, so that a side that ends at it is so long, mm. */
export const moveForDepth = ({ lengthMm, sign }: WallDepth, askedMm: number): number =>
  (askedMm - lengthMm) * sign;
