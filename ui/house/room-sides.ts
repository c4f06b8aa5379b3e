import type { Plan } from '#engine/plan/plan.ts';
import { outlineEdges } from '#engine/plan/room-outline.ts';
import type { Room, Side, Storey } from '#model/building.ts';
import { type Drawing, type Outcome, refused } from './drawing.ts';
import { moveWall } from './move-walls.ts';
import { dot, leftOf, lengthOf, minus, unit, type Vector } from './vector.ts';
import { directionOf, otherSide, roomAt, runOf } from './wall-line.ts';
import { wallMap } from './wall-map.ts';

/** A straight side of a room, face to face, with the walls that it lies on. */
export interface RoomSide {
  readonly from: Vector;
  readonly to: Vector;
  readonly lengthMm: number;
  readonly walls: readonly { readonly wallId: string; readonly side: Side }[];
}

/** Walls in line within half a degree are one side. */
const STRAIGHT_COSINE = 0.99996;

/**
 * A room's sides, anticlockwise from the lowest on the plan; none where its walls do not close.
 *
 * @param walls the storey's, by id, where a plan of it is at hand: of every storey's rooms one plan is enough.
 */
export function roomSides(
  storey: Pick<Storey, 'walls'>,
  room: Room,
  walls: Plan['wallById'] = wallMap(storey),
): readonly RoomSide[] {
  const edges = outlineEdges(room, walls);
  const sides: { from: Vector; to: Vector; walls: { wallId: string; side: Side }[] }[] = [];
  for (const { from, to, wallId, side } of edges) {
    const last = sides.at(-1);
    if (last !== undefined && isStraightOn(last, { from, to })) {
      last.to = to;
      last.walls.push({ wallId, side });
    } else sides.push({ from, to, walls: [{ wallId, side }] });
  }
  const [first, last] = [sides[0], sides.at(-1)];
  if (first !== undefined && last !== undefined && first !== last && isStraightOn(last, first)) {
    first.from = last.from;
    first.walls.unshift(...last.walls);
    sides.pop();
  }
  const whole = sides.map((side) => ({ ...side, lengthMm: lengthOf(minus(side.to, side.from)) }));
  const lowest = whole.reduce(
    (best, { from }, i) => (lies(from) < lies(whole[best]?.from ?? from) ? i : best),
    0,
  );
  return [...whole.slice(lowest), ...whole.slice(0, lowest)];
}

/** The lower a corner lies, and then the further to the left, the less. */
const lies = ([x, y]: Vector): number => y * 1e7 + x;

const isStraightOn = (
  a: { readonly from: Vector; readonly to: Vector },
  b: { readonly from: Vector; readonly to: Vector },
): boolean => dot(unit(minus(a.to, a.from)), unit(minus(b.to, b.from))) > STRAIGHT_COSINE;

/**
 * Gives a side of a room another length: the wall at its end moves, or that at its beginning where nothing is behind that
 * one and a room is behind the other, so that as few rooms change as may be.
 */
export function setSideLength(
  drawing: Drawing,
  { roomId, at, lengthMm }: { readonly roomId: string; readonly at: number; readonly lengthMm: number },
): Outcome {
  const { storey } = drawing;
  const room = storey.rooms.find(({ id }) => id === roomId);
  if (room === undefined) return refused('That room is not there any more.');
  const sides = roomSides(storey, room);
  const side = sides[at];
  const [before, after] = [sides.at(at - 1), sides[(at + 1) % sides.length]];
  if (side === undefined || before === undefined || after === undefined)
    return refused(`${room.name} does not close: mend its walls first.`);
  const atEnd = isShared(storey, after) && !isShared(storey, before) ? before : after;
  const [{ wallId } = { wallId: '' }] = atEnd.walls;
  const wall = storey.walls.find(({ id }) => id === wallId);
  if (wall === undefined) return refused('That wall is not there any more.');
  const longerMm = (lengthMm - side.lengthMm) * (atEnd === after ? 1 : -1);
  const along = unit(minus(side.to, side.from));
  // A wall moves across its own line: by more where it does not meet the side at a right angle.
  const across = dot(along, leftOf(directionOf(wall)));
  if (Math.abs(across) < 0.1)
    return refused('The wall at its end runs nearly the same way: move its corner in place of that.');
  return moveWall(drawing, { wallId, byMm: longerMm * across });
}

/** Whether another room is behind a side, anywhere on the line of its walls. */
const isShared = (storey: Storey, { walls }: RoomSide): boolean =>
  walls.some(({ wallId, side }) => {
    const wall = storey.walls.find(({ id }) => id === wallId);
    return (
      wall !== undefined &&
      runOf(storey, wall).some(
        (one) =>
          roomAt(storey, one.id, dot(directionOf(one), directionOf(wall)) > 0 ? otherSide(side) : side) !==
          undefined,
      )
    );
  });
