import { planPointOf } from '#engine/plan/plane.ts';
import { lineMeeting } from '#engine/plan/polygon.ts';
import { outlineEdges } from '#engine/plan/room-outline.ts';
import type { Room, Storey, Wall } from '#model/building.ts';
import { type Drawing, done, type Outcome, refused } from './drawing.ts';
import { soundly } from './soundly.ts';
import { openingAcross, splitWall } from './split-wall.ts';
import { cross, dot, leftOf, minus, plus, tidy, times, unit, type Vector } from './vector.ts';
import { newWall, type WallKind } from './wall-kinds.ts';
import { alongMm, directionOf, isSamePlace, isWithin, wallLengthMm } from './wall-line.ts';
import { wallMap } from './wall-map.ts';

/** A wall to be put across a room. */
export interface Partition {
  readonly roomId: string;
  /** The wall of the room that it starts from, at a right angle. */
  readonly wallId: string;
  /** From the inside corner on the left of somebody in the room who looks at that wall, to the near face of the new one, mm. */
  readonly fromLeftMm: number;
  readonly kind: WallKind;
  /** The room that is parted off, on the right of the new wall as seen by them. */
  readonly parted: Pick<Room, 'id' | 'name' | 'use'>;
}

/** Parts a room in two by a straight wall at a right angle to one of its walls. */
export function splitRoom(drawing: Drawing, partition: Partition): Outcome {
  const { storey } = drawing;
  const room = storey.rooms.find(({ id }) => id === partition.roomId);
  if (room === undefined) return refused('That room is not there any more.');
  const line = lineOf(storey, room, partition);
  if (line === null) return refused(`${room.name} does not close: mend its walls first.`);
  if (line.isBeyond) return refused('That wall is not so long.');
  const hits = hitsOf(storey, room, line);
  const [start, end] = [
    hits.find((hit) => hit.wall.id === partition.wallId),
    hits.find((hit) => hit.wall.id !== partition.wallId),
  ];
  if (start === undefined || end === undefined)
    return refused('The new wall would not end at a wall of the room.');
  return soundly(storey, () => putAcross(drawing, room, partition, [start, end]));
}

/** Puts the wall there, from one wall of the room to another. */
function putAcross(
  drawing: Drawing,
  room: Room,
  { kind, parted }: Pick<Partition, 'kind' | 'parted'>,
  hits: readonly [Hit, Hit],
): Outcome {
  const ends: [number, number][] = [];
  for (const { wall, at } of hits) {
    const corner = cornerAt(drawing, wall, at);
    if (typeof corner === 'string') return refused(corner);
    ends.push(corner);
  }
  const [from, to] = ends as [[number, number], [number, number]];
  const wall = newWall(kind, { id: drawing.newId(), from, to });
  drawing.storey.walls.push(wall);
  partRing(drawing.storey, room, wall, parted);
  return done;
}

interface Line {
  readonly at: Vector;
  readonly way: Vector;
  readonly isBeyond: boolean;
}

/** The centre line of the new wall, into the room. */
function lineOf(storey: Storey, room: Room, { wallId, fromLeftMm, kind }: Partition): Line | null {
  const edges = outlineEdges(room, wallMap(storey));
  const stretch = edges.filter((edge) => edge.wallId === wallId);
  const [first] = stretch;
  const last = stretch.at(-1);
  if (first === undefined || last === undefined) return null;
  // Anticlockwise round the room its inside is on the left; who looks at the wall has its end on the left hand.
  const along = unit(minus(first.to, first.from));
  const fromEndMm = fromLeftMm + kind.thicknessMm / 2;
  const at = minus(last.to, times(along, fromEndMm));
  const lengthMm = dot(minus(last.to, first.from), along);
  return { at, way: leftOf(along), isBeyond: fromLeftMm < 0 || fromLeftMm + kind.thicknessMm > lengthMm };
}

interface Hit {
  readonly wall: Wall;
  readonly at: Vector;
  readonly awayMm: number;
}

/** The walls of a room that a line into it meets: the one that it starts from, and the nearest on the other side. */
function hitsOf(storey: Storey, room: Room, { at, way }: Line): readonly Hit[] {
  const hits = room.walls.flatMap(({ wall: id }): Hit[] => {
    const wall = storey.walls.find((one) => one.id === id);
    if (wall === undefined) return [];
    const met = lineMeeting(planPointOf([...at]), [...way], planPointOf([...wall.from]), [
      ...directionOf(wall),
    ]);
    if (met === null) return [];
    const along = alongMm(wall, met);
    if (along < -1 || along > wallLengthMm(wall) + 1) return [];
    return [{ wall, at: met, awayMm: dot(minus(met, at), way) }];
  });
  return hits
    .filter(({ awayMm }) => awayMm > -1000)
    .toSorted((a, b) => a.awayMm - b.awayMm)
    .slice(0, 2);
}

/** The corner that a wall has at a place, parted there if it must be; words where it cannot. */
function cornerAt({ job, storey, newId }: Drawing, wall: Wall, at: Vector): [number, number] | string {
  for (const end of [wall.from, wall.to]) if (isSamePlace(end, at)) return [...end];
  if (!isWithin(wall, at)) return tidy(at);
  const across = openingAcross(wall, alongMm(wall, at));
  if (across !== null) return `The new wall would end where ${across}.`;
  return [...splitWall(job, storey, wall, { atMm: alongMm(wall, at), id: newId() }).from];
}

/** Gives each of the two rooms its part of the walls, and the new wall to both: the room that was there has its right side. */
function partRing(storey: Storey, room: Room, wall: Wall, parted: Partition['parted']): void {
  const edges = outlineEdges(room, wallMap(storey));
  const isRight = (wallId: string): boolean => {
    const one = storey.walls.find(({ id }) => id === wallId);
    if (one === undefined) return false;
    const middle = times(plus(one.from, one.to), 0.5);
    return cross(directionOf(wall), minus(middle, wall.from)) < 0;
  };
  // Anticlockwise, from the wall after the new one's beginning.
  const ring = edges.map(({ wallId, side }) => ({ wall: wallId, side }));
  const first = ring.findIndex((one, i) => isRight(one.wall) && !isRight(ring.at(i - 1)?.wall ?? ''));
  const turned = [...ring.slice(Math.max(0, first)), ...ring.slice(0, Math.max(0, first))];
  const right = turned.filter((one) => isRight(one.wall));
  const left = turned.filter((one) => !isRight(one.wall));
  // Who looks at the wall that the new one starts from sees its right side on the left hand.
  room.walls = [...right, { wall: wall.id, side: 'right' }];
  storey.rooms.splice(storey.rooms.indexOf(room) + 1, 0, {
    ...parted,
    block: room.block,
    walls: [...left, { wall: wall.id, side: 'left' }],
  });
}
