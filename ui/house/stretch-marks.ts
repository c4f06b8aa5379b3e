import type { Plan } from '#engine/plan/plan.ts';
import type { Side, Storey } from '#model/building.ts';
import { GRID_MM } from './grid.ts';
import { type RoomSide, roomSides } from './room-sides.ts';
import type { Vector } from './vector.ts';
import { alongMm, otherSide, placeBy, roomAt, wallLengthMm } from './wall-line.ts';
import { wallMap } from './wall-map.ts';

/** A face of a wall. */
export interface WallFaceSide {
  readonly wallId: string;
  readonly side: Side;
}

/** A face as somebody measures along it: from inside corner to inside corner. */
export interface MeasuredFace {
  /** Who looks at it; null where no room that closes does. */
  readonly room: string | null;
  /** The inside corners along the wall, from its `from`, mm; they may lie beyond its ends, where the side of the room goes on. */
  readonly lowMm: number;
  readonly highMm: number;
}

type Drawn = Pick<Storey, 'walls' | 'rooms'>;

/** The side of a room that a face is part of; undefined where no room looks at it, or it does not close. */
function sideOf(storey: Drawn, { wallId, side }: WallFaceSide, map: Plan['wallById']): RoomSide | undefined {
  const room = roomAt(storey, wallId, side);
  if (room === undefined) return undefined;
  return roomSides(storey, room, map).find(({ walls }) =>
    walls.some((one) => one.wallId === wallId && one.side === side),
  );
}

/** A face between its room's inside corners; the whole of the wall where no room looks at it. */
export function faceOfWall(
  storey: Drawn,
  face: WallFaceSide,
  map: Plan['wallById'] = wallMap(storey),
): MeasuredFace {
  const wall = storey.walls.find(({ id }) => id === face.wallId);
  if (wall === undefined) return { room: null, lowMm: 0, highMm: 0 };
  const side = sideOf(storey, face, map);
  if (side === undefined) return { room: null, lowMm: 0, highMm: wallLengthMm(wall) };
  const ends = [side.from, side.to].map((at) => alongMm(wall, at));
  const room = roomAt(storey, face.wallId, face.side)?.name ?? null;
  return { room, lowMm: Math.min(...ends), highMm: Math.max(...ends) };
}

/** From which side a wall is measured first: from the room on its left, else from that on its right. */
export const firstFace = (storey: Drawn, wallId: string): WallFaceSide => ({
  wallId,
  side:
    roomAt(storey, wallId, 'left') === undefined && roomAt(storey, wallId, 'right') !== undefined
      ? 'right'
      : 'left',
});

/** The other face of a wall, where a room looks at it; null where none does. */
export function otherFace(storey: Drawn, { wallId, side }: WallFaceSide): WallFaceSide | null {
  const other = otherSide(side);
  return roomAt(storey, wallId, other) === undefined ? null : { wallId, side: other };
}

/** A mark's distances from the corners on both hands of who looks at the face, mm. */
export function fromCorners(
  { lowMm, highMm }: MeasuredFace,
  side: Side,
  markMm: number,
): { readonly leftMm: number; readonly rightMm: number } {
  const [low, high] = [markMm - lowMm, highMm - markMm];
  // Who looks at a wall's left face has its `to` on the left hand.
  return side === 'left' ? { leftMm: high, rightMm: low } : { leftMm: low, rightMm: high };
}

/** The mark that is so far from the corner on a hand. */
export const markFrom = (
  { lowMm, highMm }: MeasuredFace,
  side: Side,
  [hand, mm]: readonly [hand: 'left' | 'right', mm: number],
): number => ((side === 'left') === (hand === 'left') ? highMm - mm : lowMm + mm);

/** Where a mark is on the face, in the house; null for a wall that is not there. */
export function placeOfMark(
  { walls }: Pick<Storey, 'walls'>,
  { wallId, side }: WallFaceSide,
  markMm: number,
): Vector | null {
  const wall = walls.find(({ id }) => id === wallId);
  if (wall === undefined) return null;
  return placeBy(wall, markMm, (wall.thicknessMm / 2) * (side === 'left' ? 1 : -1));
}

/** Marks after one more was put: two at most, the nearer one of two is moved. */
export function withMark(marks: readonly number[], markMm: number): readonly number[] {
  if (marks.length < 2) return [...marks, markMm];
  const [a = 0, b = 0] = marks;
  return Math.abs(a - markMm) <= Math.abs(b - markMm) ? [markMm, b] : [a, markMm];
}

/**
 * Where a tap marks a wall: in an inside corner within reach, beside an opening that it is in or within reach of, else so many whole steps
 * from the left corner.
 */
export function tappedMark(storey: Drawn, face: WallFaceSide, at: Vector, reachMm: number): number {
  const wall = storey.walls.find(({ id }) => id === face.wallId);
  if (wall === undefined) return 0;
  const { lowMm, highMm } = faceOfWall(storey, face);
  const alongWallMm = alongMm(wall, at);
  const firm = [lowMm, highMm, ...wall.openings.flatMap((one) => [one.alongMm, one.alongMm + one.widthMm])];
  const isInOpening = wall.openings.some(
    (one) => one.alongMm < alongWallMm && alongWallMm < one.alongMm + one.widthMm,
  );
  const [nearest] = firm
    .filter((mm) => isInOpening || Math.abs(mm - alongWallMm) <= reachMm)
    .toSorted((a, b) => Math.abs(a - alongWallMm) - Math.abs(b - alongWallMm));
  if (nearest !== undefined) return nearest;
  const fromMm = face.side === 'left' ? highMm : lowMm;
  const stepped = fromMm + Math.round((alongWallMm - fromMm) / GRID_MM) * GRID_MM;
  return Math.max(lowMm, Math.min(highMm, stepped));
}
