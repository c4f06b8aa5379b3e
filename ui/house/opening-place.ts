import type { Opening, Storey } from '#model/building.ts';
import type { RoomSide } from './room-sides.ts';
import { minus, plus, times, unit } from './vector.ts';
import { alongMm, wallLengthMm } from './wall-line.ts';

/** Where an opening is in a wall of the file. */
export interface OpeningPlace {
  readonly wallId: string;
  /** From the wall's `from` to the opening's near edge, mm. */
  readonly alongMm: number;
}

/**
 * Where an opening comes to lie that begins so far from the inside corner on the left hand of somebody in the room who looks
 * at that side of it.
 *
 * @returns null where it reaches past the side, or over a place where two walls meet.
 */
export function openingPlace(
  storey: Storey,
  side: RoomSide,
  at: { readonly leftMm: number; readonly widthMm: number },
): OpeningPlace | null {
  const along = unit(minus(side.to, side.from));
  // Going round anticlockwise the end of a side is on the left hand.
  const [far, near] = [at.leftMm, at.leftMm + at.widthMm].map((mm) => plus(side.to, times(along, -mm)));
  if (
    far === undefined ||
    near === undefined ||
    at.leftMm < 0 ||
    at.leftMm + at.widthMm > side.lengthMm + 0.5
  )
    return null;
  for (const { wallId } of side.walls) {
    const wall = storey.walls.find(({ id }) => id === wallId);
    if (wall === undefined) continue;
    const ends = [alongMm(wall, far), alongMm(wall, near)];
    if (Math.min(...ends) < -0.5 || Math.max(...ends) > wallLengthMm(wall) + 0.5) continue;
    return { wallId, alongMm: Math.round(Math.max(0, Math.min(...ends)) * 10) / 10 };
  }
  return null;
}

/** How far an opening is from the inside corner on the left hand of somebody in the room who looks at it, mm. */
export function leftOfOpeningMm(storey: Storey, side: RoomSide, wallId: string, opening: Opening): number {
  const wall = storey.walls.find(({ id }) => id === wallId);
  if (wall === undefined) return 0;
  const along = unit(minus(side.to, side.from));
  const toSideEnd = (mm: number): number => {
    const place = plus(wall.from, times(unit(minus(wall.to, wall.from)), mm));
    const [dx, dy] = minus(side.to, place);
    return dx * along[0] + dy * along[1];
  };
  return Math.round(Math.min(toSideEnd(opening.alongMm), toSideEnd(opening.alongMm + opening.widthMm)));
}
