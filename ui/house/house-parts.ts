import type { Room, Storey, Wall } from '#model/building.ts';
import type { RoomSide } from './room-sides.ts';
import { minus, type Vector } from './vector.ts';
import { alongMm, isSamePlace, offMm, wallLengthMm } from './wall-line.ts';

/** A part of the house that can be taken hold of: a wall, or a corner with all the walls that meet there. */
export type HousePart =
  | { readonly part: 'wall'; readonly wallId: string }
  | { readonly part: 'corner'; readonly at: Vector };

/** A part by one word, for what knows things by their names alone. */
export const keyOfPart = (part: HousePart): string =>
  part.part === 'wall' ? `wall/${part.wallId}` : `corner/${part.at.join(',')}`;

/** The part that a word stands for; null for no word of a part. */
export function partOfKey(key: string): HousePart | null {
  const [kind, rest = ''] = [key.slice(0, key.indexOf('/')), key.slice(key.indexOf('/') + 1)];
  if (kind === 'wall') return { part: 'wall', wallId: rest };
  const [x, y] = rest.split(',').map(Number);
  return kind === 'corner' && x !== undefined && y !== undefined ? { part: 'corner', at: [x, y] } : null;
}

/** The corners of a storey, each once, in the order of its walls. */
export function cornersOf({ walls }: Pick<Storey, 'walls'>): readonly Vector[] {
  const corners: Vector[] = [];
  for (const { from, to } of walls)
    for (const at of [from, to]) if (!corners.some((one) => isSamePlace(one, at))) corners.push(at);
  return corners;
}

/** The parts of a storey, walls first, as keys go from one to the next. */
export const partsOf = (storey: Pick<Storey, 'walls'>): readonly HousePart[] => [
  ...storey.walls.map(({ id }): HousePart => ({ part: 'wall', wallId: id })),
  ...cornersOf(storey).map((at): HousePart => ({ part: 'corner', at })),
];

/** Of a short wall this much is left to the wall itself: the rest of it is its corners'. */
const CORNER_SHARE = 0.3;

/**
 * The part that a place means: a corner within reach, else the nearest wall within reach of its faces; null for neither.
 *
 * @param reachMm how far off something is still meant.
 */
export function meantPart(storey: Pick<Storey, 'walls'>, at: Vector, reachMm: number): HousePart | null {
  let corner: { readonly at: Vector; readonly offMm: number } | null = null;
  for (const one of cornersOf(storey)) {
    const shortest = Math.min(...wallsAt(storey, one).map(wallLengthMm));
    const off = Math.hypot(...minus(at, one));
    if (off <= Math.min(reachMm, shortest * CORNER_SHARE) && (corner === null || off < corner.offMm))
      corner = { at: one, offMm: off };
  }
  if (corner !== null) return { part: 'corner', at: corner.at };
  let nearest: { readonly wall: Wall; readonly offMm: number } | null = null;
  for (const wall of storey.walls) {
    const off = offWallMm(wall, at);
    if (off <= reachMm && (nearest === null || off < nearest.offMm)) nearest = { wall, offMm: off };
  }
  return nearest === null ? null : { part: 'wall', wallId: nearest.wall.id };
}

/** How far a place is from a wall's nearer face or its ends, mm; nought on it. */
function offWallMm(wall: Wall, at: Vector): number {
  const beyondMm = Math.max(0, -alongMm(wall, at), alongMm(wall, at) - wallLengthMm(wall));
  return Math.hypot(beyondMm, Math.max(0, Math.abs(offMm(wall, at)) - wall.thicknessMm / 2));
}

/** The walls that end at a corner. */
export const wallsAt = ({ walls }: Pick<Storey, 'walls'>, corner: Vector): readonly Wall[] =>
  walls.filter(({ from, to }) => [from, to].some((end) => isSamePlace(end, corner)));

/** The rooms that change where a part is moved, in the order of the file: those that have it among their walls. */
export function roomsAt(storey: Pick<Storey, 'walls' | 'rooms'>, part: HousePart): readonly Room[] {
  const ids = new Set(part.part === 'wall' ? [part.wallId] : wallsAt(storey, part.at).map(({ id }) => id));
  return storey.rooms.filter(({ walls }) => walls.some(({ wall }) => ids.has(wall)));
}

/** "the wall between Hall and Kitchen", "the corner of Hall and Kitchen"; by no room where none has it. */
export function partWords(storey: Pick<Storey, 'walls' | 'rooms'>, part: HousePart): string {
  const names = roomsAt(storey, part).map(({ name }) => name);
  const [last = '', ...before] = names.toReversed();
  const all = before.length === 0 ? last : `${before.toReversed().join(', ')} and ${last}`;
  if (all === '') return part.part === 'wall' ? 'a wall of no room' : 'a corner of no room';
  if (part.part === 'corner') return `the corner of ${all}`;
  return before.length === 0 ? `the wall of ${all}` : `the wall between ${all}`;
}

/** The corner of the walls at the end of a side of a room; null where its walls and those of the next side do not meet. */
export function cornerAfterSide(
  { walls }: Pick<Storey, 'walls'>,
  sides: readonly RoomSide[],
  at: number,
): Vector | null {
  const next = sides[(at + 1) % sides.length];
  const wallOf = (id: string | undefined): Wall | undefined => walls.find((wall) => wall.id === id);
  const [before, after] = [wallOf(sides[at]?.walls.at(-1)?.wallId), wallOf(next?.walls[0]?.wallId)];
  if (before === undefined || after === undefined) return null;
  const ends = [after.from, after.to];
  return [before.from, before.to].find((end) => ends.some((other) => isSamePlace(end, other))) ?? null;
}
