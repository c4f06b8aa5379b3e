import type { Worked } from '#engine/connections/worked.ts';
import type { PlanRoom } from '#engine/plan/plan.ts';
import { distanceMm, type PlanPoint } from '#engine/plan/plane.ts';
import { isInside } from '#engine/plan/polygon.ts';
import {
  fromSheet,
  type SheetFrame,
  type SheetPoint,
  sheetPoint,
  toSheet,
} from '#engine/plan/sheet-frame.ts';
import { type LabelPlacer, type Rectangle, textBox } from '../label-placer.ts';
import { type Shape, words } from '../scene.ts';
import type { DrawnFixture } from './fixtures.ts';

/** The smallest lettering on screen, units of the scene: 12.5 px. */
const SMALL = 2.5;
const ROOM_NAME = 3.4;
/** Between places that are tried for a name, units. */
const STEP = 3;

interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

function boxOf(corners: readonly SheetPoint[]): Box {
  const xs = corners.map(([x]) => x);
  const ys = corners.map(([, y]) => y);
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

/** Places within a box, those nearest its middle first. */
function placesWithin({ left, right, top, bottom }: Box): readonly SheetPoint[] {
  const [midX, midY] = [(left + right) / 2, (top + bottom) / 2];
  const steps = (from: number, to: number): number[] => {
    const half = Math.floor((to - from) / 2 / STEP);
    return Array.from({ length: Math.max(0, half) * 2 + 1 }, (_, i) => (i - Math.max(0, half)) * STEP);
  };
  const places = steps(left, right).flatMap((x) =>
    steps(top, bottom).map((y) => ({ at: sheetPoint(midX + x, midY + y), off: Math.hypot(x, y) })),
  );
  return places.sort((a, b) => a.off - b.off).map(({ at }) => at);
}

/** The corners of an outline at which it turns: walls in one line make none. */
function turns(outline: readonly PlanPoint[]): readonly PlanPoint[] {
  return outline.filter((at, i) => {
    const before = outline.at(i - 1) ?? at;
    const after = outline[(i + 1) % outline.length] ?? at;
    const cross = (at[0] - before[0]) * (after[1] - at[1]) - (at[1] - before[1]) * (after[0] - at[0]);
    return Math.abs(cross) > 1e-3 * distanceMm(before, at) * distanceMm(at, after);
  });
}

/** A plain four-cornered room by its two sides, in metres; empty for any other. */
function sizeOf({ outline }: PlanRoom): string {
  const corners = turns(outline);
  if (corners.length !== 4) return '';
  const box = boxOf(corners.map(([x, y]) => sheetPoint(x, y)));
  return `${((box.right - box.left) / 1000).toFixed(2)} × ${((box.bottom - box.top) / 1000).toFixed(2)} m`;
}

/** The room of lettering in the narrow face, which is at hand on screen: the placer reckons with wider ones. */
const roomFor = (at: SheetPoint, text: string, sizeMm: number): Rectangle => textBox(at, text, sizeMm * 0.85);

/** A line of lettering about its middle. */
const soft = (content: string, middle: SheetPoint, sizeMm: number): Shape =>
  words('text-soft', sheetPoint(middle[0], middle[1] + sizeMm * 0.35), content, { sizeMm, anchor: 'middle' });

const below = (at: SheetPoint): SheetPoint => sheetPoint(at[0], at[1] + ROOM_NAME);

function nameOf(room: PlanRoom, frame: SheetFrame, free: LabelPlacer): readonly Shape[] {
  const { name } = room.room;
  const size = sizeOf(room);
  const isInRoom = (at: SheetPoint, text: string, sizeMm: number): boolean => {
    const { leftMm, rightMm, topMm, bottomMm } = roomFor(at, text, sizeMm);
    return [leftMm, rightMm].every((x) =>
      [topMm, bottomMm].every((y) => isInside(room.outline, fromSheet(frame, sheetPoint(x, y)))),
    );
  };
  const isFree = (at: SheetPoint, text: string, sizeMm: number): boolean =>
    free.isFree(roomFor(at, text, sizeMm)) && isInRoom(at, text, sizeMm);
  const written = (text: string, at: SheetPoint, sizeMm: number): Shape => {
    free.take(roomFor(at, text, sizeMm));
    return soft(text, at, sizeMm);
  };
  const places = placesWithin(boxOf(room.outline.map((at) => toSheet(frame, at))));
  const forName = places.filter((at) => isFree(at, name, ROOM_NAME));
  const forBoth = size === '' ? undefined : forName.find((at) => isFree(below(at), size, SMALL));
  if (forBoth !== undefined) return [written(name, forBoth, ROOM_NAME), written(size, below(forBoth), SMALL)];
  const [alone] = forName;
  if (alone !== undefined) return [written(name, alone, ROOM_NAME)];
  const within = places.filter((at) => isInRoom(at, name, SMALL));
  return [soft(name, free.place(name, SMALL * 0.85, within.length > 0 ? within : places), SMALL)];
}

/** Each room's name with its size, where in the room there is space; smaller, and alone, where there is little. */
export const screenRoomNames = (
  worked: Worked,
  storeyId: string,
  frame: SheetFrame,
  free: LabelPlacer,
): readonly Shape[] =>
  [...worked.plan.roomById.values()]
    .filter((room) => room.storeyId === storeyId && room.outline.length > 2)
    .flatMap((room) => nameOf(room, frame, free));

function fixtureName({ name, corners }: DrawnFixture, free: LabelPlacer): readonly Shape[] {
  const box = boxOf(corners);
  const { rightMm: half, bottomMm: halfUp } = roomFor(sheetPoint(0, 0), name, SMALL);
  const [x, y] = [(box.left + box.right) / 2, (box.top + box.bottom) / 2];
  const fits = half * 2 < box.right - box.left && halfUp * 2 < box.bottom - box.top;
  const within = fits ? placesWithin({ ...box, left: x, right: x }) : [];
  const beside = [
    sheetPoint(x, box.top - halfUp - 0.3),
    sheetPoint(x, box.bottom + halfUp + 0.3),
    sheetPoint(box.left - half - 0.3, y),
    sheetPoint(box.right + half + 0.3, y),
  ];
  const at = [...within, ...beside].find((one) => free.isFree(roomFor(one, name, SMALL)));
  if (at === undefined) return [];
  free.take(roomFor(at, name, SMALL));
  return [soft(name, at, SMALL)];
}

/** Names of fixtures that have room for theirs, in them or beside; the others are known by where they stand. */
export function screenFixtureNames(fixtures: readonly DrawnFixture[], free: LabelPlacer): readonly Shape[] {
  const names = fixtures.flatMap((fixture) => fixtureName(fixture, free));
  // Names that come later keep off fixtures where they can.
  for (const { corners } of fixtures) {
    const { left, right, top, bottom } = boxOf(corners);
    free.take({ leftMm: left, rightMm: right, topMm: top, bottomMm: bottom }, 'cable');
  }
  return names;
}
