import { JOIN_MM } from '#engine/plan/room-outline.ts';
import type { Side, Storey, Wall } from '#model/building.ts';
import { cross, dot, leftOf, lengthOf, minus, plus, times, unit, type Vector } from './vector.ts';

/** A straight line from one place to another: a wall's centre line, or the side of a room that is to be drawn. */
export interface Stretch {
  readonly from: Vector;
  readonly to: Vector;
}

/** Walls within half a degree run one way. */
const PARALLEL_SINE = 0.0087;

/** Unit vector from a wall's `from` to its `to`. */
export const directionOf = ({ from, to }: Stretch): Vector => unit(minus(to, from));
export const wallLengthMm = ({ from, to }: Stretch): number => lengthOf(minus(to, from));

/** How far along a wall's centre line a place is, from its `from`, mm. */
export const alongMm = (wall: Stretch, at: Vector): number => dot(minus(at, wall.from), directionOf(wall));
/** How far a place is off a wall's centre line, mm: more than nought to its left. */
export const offMm = (wall: Stretch, at: Vector): number => cross(directionOf(wall), minus(at, wall.from));
/** The place so far along a wall and so far to the left of its centre line. */
export const placeBy = (wall: Stretch, along: number, off = 0): Vector => {
  const direction = directionOf(wall);
  return plus(wall.from, plus(times(direction, along), times(leftOf(direction), off)));
};

/** Whether two places are one corner. */
export const isSamePlace = (a: Vector, b: Vector): boolean => lengthOf(minus(a, b)) <= JOIN_MM;

export const isParallel = (a: Vector, b: Vector): boolean => Math.abs(cross(a, b)) <= PARALLEL_SINE;

/** Whether a place lies on a wall's centre line, clear of both its ends. */
export function isWithin(wall: Stretch, at: Vector): boolean {
  const along = alongMm(wall, at);
  return Math.abs(offMm(wall, at)) <= JOIN_MM && along > JOIN_MM && along < wallLengthMm(wall) - JOIN_MM;
}

export const otherSide = (side: Side): Side => (side === 'left' ? 'right' : 'left');

/** The walls that go on from one in a straight line, joined end to end, in no order; it among them. */
export function runOf({ walls }: Pick<Storey, 'walls'>, wall: Wall): readonly Wall[] {
  const run = new Set([wall]);
  const direction = directionOf(wall);
  for (const one of run)
    for (const other of walls)
      if (!run.has(other) && isParallel(direction, directionOf(other)) && meet(one, other)) run.add(other);
  return [...run];
}

const meet = (a: Wall, b: Wall): boolean =>
  [a.from, a.to].some((end) => isSamePlace(end, b.from) || isSamePlace(end, b.to));

/** The room that looks at a side of a wall; undefined where none does. */
export const roomAt = ({ rooms }: Pick<Storey, 'rooms'>, wallId: string, side: Side) =>
  rooms.find(({ walls }) => walls.some((one) => one.wall === wallId && one.side === side));
