import type { Storey } from '#model/building.ts';
import type { Beside } from './beside.ts';
import { type RoomSide, roomSides } from './room-sides.ts';
import { leftOf, minus, unit } from './vector.ts';
import { otherSide, roomAt } from './wall-line.ts';
import { wallMap } from './wall-map.ts';

/** A wall that has nothing behind it, so that a room can be drawn there. */
export interface FreeWall extends Pick<Beside, 'wallId' | 'side'> {
  /** "right of Hall". */
  readonly words: string;
  /** Its ends by `Beside.from`, as they lie on the plan: the lower or left one first. */
  readonly ends: readonly WallEnd[];
}

/** An end that a new room can be in line with. */
export interface WallEnd {
  readonly from: Beside['from'];
  /** "its left end", on the plan. */
  readonly words: string;
}

/** Which way a side of a room looks on the plan, seen from its middle. */
export function sideWord({ from, to }: Pick<RoomSide, 'from' | 'to'>): 'left' | 'right' | 'upper' | 'lower' {
  const [x, y] = leftOf(unit(minus(to, from)));
  // Out of the room is to the right of its side.
  if (Math.abs(x) >= Math.abs(y)) return x < 0 ? 'right' : 'left';
  return y < 0 ? 'upper' : 'lower';
}

const beyondWords = { left: 'left of', right: 'right of', upper: 'above', lower: 'below' } as const;

const end = (from: Beside['from'], word: string): WallEnd => ({ from, words: `its ${word} end` });

/** `from` is told as seen from within the new room: whoever stands above a wall on the plan has its right end on the left hand. */
const endsBeyond = {
  left: [end('right', 'lower'), end('left', 'upper')],
  right: [end('left', 'lower'), end('right', 'upper')],
  upper: [end('right', 'left'), end('left', 'right')],
  lower: [end('left', 'left'), end('right', 'right')],
} as const;

/** The walls of a storey beside which a room can be drawn, room by room in the order of the file. */
export function freeWalls(storey: Storey): readonly FreeWall[] {
  const map = wallMap(storey);
  return storey.rooms.flatMap((room) => {
    const sides = roomSides(storey, room, map);
    return sides.flatMap((side, i) => {
      const word = sideWord(side);
      const isOnly = sides.every((other, j) => i === j || sideWord(other) !== word);
      return side.walls
        .filter((one) => roomAt(storey, one.wallId, otherSide(one.side)) === undefined)
        .map(({ wallId, side: theirs }, part, free) => ({
          wallId,
          side: otherSide(theirs),
          words: `${beyondWords[word]} ${room.name}${isOnly ? '' : `, side ${i + 1}`}${free.length > 1 ? `, part ${part + 1}` : ''}`,
          ends: endsBeyond[word],
        }));
    });
  });
}

/** Where a room begins that is drawn where somebody tapped a wall: with the end that the tap was nearer to. */
export function besideTap(
  storey: Storey,
  {
    wall: wallId,
    side,
    alongMm,
  }: { readonly wall: string; readonly side: 'left' | 'right'; readonly alongMm: number },
): Beside | null {
  const wall = storey.walls.find(({ id }) => id === wallId);
  if (wall === undefined) return null;
  const free = [otherSide(side), side].find((one) => roomAt(storey, wallId, one) === undefined);
  if (free === undefined || roomAt(storey, wallId, otherSide(free)) === undefined) return null;
  const isNearTo = alongMm > Math.hypot(wall.to[0] - wall.from[0], wall.to[1] - wall.from[1]) / 2;
  // Who looks at a wall's left side has its `to` on the left hand.
  return { wallId, side: free, from: isNearTo === (free === 'left') ? 'left' : 'right', inMm: 0 };
}

/** Whether outer walls stand that no room has yet, as on a storey that was copied from below: what is new there is inside them. */
export const hasShell = (storey: Storey): boolean =>
  storey.walls.some(
    ({ id, external }) =>
      external && (['left', 'right'] as const).every((side) => roomAt(storey, id, side) === undefined),
  );
