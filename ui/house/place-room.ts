import { planPointOf } from '#engine/plan/plane.ts';
import { lineMeeting } from '#engine/plan/polygon.ts';
import { JOIN_MM } from '#engine/plan/room-outline.ts';
import type { Room, Storey, Wall } from '#model/building.ts';
import { type CrossedWall, crossedWalls } from './crossed-walls.ts';
import { type Drawing, type Outcome, refused } from './drawing.ts';
import { edgeLines } from './edge-lines.ts';
import { partAt, partAtCorners } from './part-walls.ts';
import { soundly } from './soundly.ts';
import { dot, minus, tidy, unit, type Vector } from './vector.ts';
import { newWall, type WallKind } from './wall-kinds.ts';
import {
  alongMm,
  directionOf,
  isParallel,
  isSamePlace,
  offMm,
  otherSide,
  roomAt,
  type Stretch,
  wallLengthMm,
} from './wall-line.ts';

/** A room as it is to be drawn. */
export interface RoomAsk {
  readonly room: Pick<Room, 'id' | 'name' | 'use' | 'block'>;
  /** Its inner outline, wall face to wall face, anticlockwise, mm. */
  readonly outline: readonly Vector[];
  /** What its walls are where none is drawn yet. */
  readonly walls: WallKind;
}

/**
 * Draws a room on a storey of a draft: it takes the walls that are drawn along its sides, parts them where it begins and
 * ends, and gets new ones for the rest. A side within three centimetres of a drawn wall lines up with it.
 *
 * @returns why it cannot stand there; the draft is then not to be kept.
 */
export function placeRoom(drawing: Drawing, ask: RoomAsk): Outcome {
  const { storey } = drawing;
  const outcome = soundly(storey, () => drawRoom(drawing, ask));
  if (!outcome.ok) return outcome;
  const room = storey.rooms.find(({ id }) => id === ask.room.id);
  const [crossed] = room === undefined ? [] : crossedWalls(storey, room);
  if (crossed !== undefined) return acrossWall(crossed);
  tellInner(storey, ask.room.id);
  return outcome;
}

/** A room would stand across a wall: what crosses it, and what can be done. */
function acrossWall({ words, cut }: CrossedWall): Outcome {
  const remedy =
    cut === null
      ? 'measure the room anew, or take that wall away first'
      : `make the room ${Math.ceil(cut.byMm)} mm less there, or begin it elsewhere`;
  return { ...refused(`${words.charAt(0).toUpperCase()}${words.slice(1)}: ${remedy}.`), cut };
}

function drawRoom(drawing: Drawing, ask: RoomAsk): Outcome {
  const { storey } = drawing;
  const lines = edgeLines(storey, ask.outline, ask.walls);
  const corners = cornersOf(storey, ask.outline, lines);
  if (corners === null) return refused('Two of its sides run in one line: make them one.');
  const around = corners.map((from, i) => ({ from, to: corners[(i + 1) % corners.length] ?? from }));
  if (around.some(({ from, to }, i) => dot(minus(to, from), lines[i]?.direction ?? [1, 0]) < 1))
    return refused('One of its sides is too short for the walls that meet there.');
  const walls: Room['walls'] = [];
  for (const [i, edge] of around.entries()) {
    const blocked = partAtEnds(drawing, edge);
    if (blocked !== null) return refused(blocked);
    walls.push(...wallsAlong(drawing, edge, lines[i]?.kind ?? ask.walls));
  }
  storey.rooms.push({ ...ask.room, walls });
  return partAtCorners(drawing);
}

/** Where the walls of a room meet, on the corners that are drawn where one is near; null where two sides run in one line. */
function cornersOf(
  storey: Storey,
  outline: readonly Vector[],
  lines: ReturnType<typeof edgeLines>,
): readonly [number, number][] | null {
  const corners: [number, number][] = [];
  for (const [i] of outline.entries()) {
    const [before, after] = [lines.at(i - 1), lines[i]];
    if (before === undefined || after === undefined) return null;
    const met = lineMeeting(
      planPointOf([...before.at]),
      before.direction,
      planPointOf([...after.at]),
      after.direction,
    );
    if (met === null) return null;
    const drawn = endsOf(storey).find((end) => isSamePlace(end, met));
    corners.push(drawn === undefined ? tidy(met) : [drawn[0], drawn[1]]);
  }
  return corners;
}

const endsOf = ({ walls }: Storey): readonly Vector[] => walls.flatMap(({ from, to }) => [from, to]);

/** The walls that are drawn on an edge's line and share some of it. */
function wallsOn({ walls }: Storey, edge: Stretch): readonly Wall[] {
  const direction = directionOf(edge);
  return walls.filter((wall) => {
    if (!isParallel(direction, directionOf(wall))) return false;
    if ([wall.from, wall.to].some((end) => Math.abs(offMm(edge, end)) > JOIN_MM)) return false;
    const [low, high] = spanOn(edge, wall);
    return Math.min(high, wallLengthMm(edge)) - Math.max(low, 0) > JOIN_MM;
  });
}

/** Where a wall begins and ends along an edge, mm. */
function spanOn(edge: Stretch, wall: Wall): readonly [number, number] {
  const [a, b] = [alongMm(edge, wall.from), alongMm(edge, wall.to)];
  return a < b ? [a, b] : [b, a];
}

/** Parts the walls that go on past an edge at its ends; words where an opening is in the way. */
function partAtEnds(drawing: Drawing, edge: Stretch): string | null {
  for (const at of [edge.from, edge.to])
    for (const wall of wallsOn(drawing.storey, edge)) {
      const blocked = partAt(drawing, wall, at);
      if (blocked !== null) return blocked;
    }
  return null;
}

/** The walls along an edge from its beginning to its end, new ones where none is drawn. */
function wallsAlong({ storey, newId }: Drawing, edge: Stretch, kind: WallKind): Room['walls'] {
  const drawn = wallsOn(storey, edge)
    .map((wall) => ({ wall, span: spanOn(edge, wall) }))
    .toSorted((a, b) => a.span[0] - b.span[0]);
  const listed: Room['walls'] = [];
  const direction = unit(minus(edge.to, edge.from));
  let at = edge.from;
  const drawTo = (to: Vector): void => {
    if (isSamePlace(at, to)) return;
    const wall = newWall(kind, { id: newId(), from: [at[0], at[1]], to: [to[0], to[1]] });
    storey.walls.push(wall);
    listed.push({ wall: wall.id, side: 'left' });
  };
  for (const { wall } of drawn) {
    const forwards = dot(directionOf(wall), direction) > 0;
    drawTo(forwards ? wall.from : wall.to);
    listed.push({ wall: wall.id, side: forwards ? 'left' : 'right' });
    at = forwards ? wall.to : wall.from;
  }
  drawTo(edge.to);
  return listed;
}

/** The walls that a room shares with another are no outer walls; what was seen of them stays. */
function tellInner(storey: Storey, roomId: string): void {
  const own = storey.rooms.find(({ id }) => id === roomId)?.walls ?? [];
  const shared = own.filter(({ wall, side }) => roomAt(storey, wall, otherSide(side)) !== undefined);
  for (const wall of storey.walls) if (shared.some((one) => one.wall === wall.id)) becomeInner(wall);
}

function becomeInner(wall: Wall): void {
  wall.external = false;
  for (const side of ['left', 'right'] as const)
    if (wall.faces[side].finish === 'bare' && wall.certainty?.faces === 'assumed')
      wall.faces[side] = { finish: 'plaster', lining: 'none' };
}
