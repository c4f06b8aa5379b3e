import type { Worked } from '#engine/connections/worked.ts';
import type { PlanRoom } from '#engine/plan/plan.ts';
import { distanceMm, type PlanPoint } from '#engine/plan/plane.ts';
import { type SheetFrame, type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import { boxRound, type LabelPlacer } from '../label-placer.ts';
import { narrowTextBox } from '../lettering-box.ts';
import { type Shape, words } from '../scene.ts';
import type { DrawnFixture } from './fixtures.ts';
import { placeForName, placesWithin, roomPlaces } from './room-places.ts';

/** The smallest lettering on screen, units of the scene: 12.5 px. */
export const SMALL = 2.5;
const ROOM_NAME = 3.4;

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
  const box = boxRound(corners.map(([x, y]) => sheetPoint(x, y)));
  return `${((box.rightMm - box.leftMm) / 1000).toFixed(2)} × ${((box.bottomMm - box.topMm) / 1000).toFixed(2)} m`;
}

/** A line of lettering about its middle. */
const soft = (content: string, middle: SheetPoint, sizeMm: number): Shape =>
  words('text-soft', sheetPoint(middle[0], middle[1] + sizeMm * 0.35), content, { sizeMm, anchor: 'middle' });

const below = (at: SheetPoint, figuresMm: number): SheetPoint =>
  sheetPoint(at[0], at[1] + (ROOM_NAME + figuresMm + 0.9) / 2);

function nameOf(room: PlanRoom, frame: SheetFrame, free: LabelPlacer, figuresMm: number): readonly Shape[] {
  const { name } = room.room;
  const size = sizeOf(room);
  const own = roomPlaces(room, frame);
  const isFree = (at: SheetPoint, text: string, sizeMm: number): boolean => {
    const box = narrowTextBox(at, text, sizeMm);
    return free.isFree(box) && own.holds(box);
  };
  const written = (text: string, at: SheetPoint, sizeMm: number): Shape => {
    free.take(narrowTextBox(at, text, sizeMm));
    return soft(text, at, sizeMm);
  };
  const forBoth =
    size === ''
      ? undefined
      : own.places.find((at) => isFree(at, name, ROOM_NAME) && isFree(below(at, figuresMm), size, figuresMm));
  if (forBoth !== undefined)
    return [written(name, forBoth, ROOM_NAME), written(size, below(forBoth, figuresMm), figuresMm)];
  const alone = placeForName(own, [ROOM_NAME, SMALL], (at, sizeMm) => narrowTextBox(at, name, sizeMm), free);
  // A name that would be struck out by others, or stand on a wall, is left to who comes nearer.
  const isReadable = alone !== null && free.isFreeOver('cables', narrowTextBox(alone.at, name, alone.sizeMm));
  return isReadable ? [written(name, alone.at, alone.sizeMm)] : [];
}

/**
 * Each room's name with its size, where in the room there is space; smaller, and alone, where there is little.
 *
 * @param figuresMm lettering of the sizes, units of the scene.
 */
export const screenRoomNames = (
  worked: Worked,
  storeyId: string,
  { frame, free, figuresMm }: { frame: SheetFrame; free: LabelPlacer; figuresMm: number },
): readonly Shape[] =>
  [...worked.plan.roomById.values()]
    .filter((room) => room.storeyId === storeyId && room.outline.length > 2)
    .flatMap((room) => nameOf(room, frame, free, figuresMm));

function fixtureName({ name, corners }: DrawnFixture, free: LabelPlacer): readonly Shape[] {
  const box = boxRound(corners);
  const { rightMm: half, bottomMm: halfUp } = narrowTextBox(sheetPoint(0, 0), name, SMALL);
  const [x, y] = [(box.leftMm + box.rightMm) / 2, (box.topMm + box.bottomMm) / 2];
  const fits = half * 2 < box.rightMm - box.leftMm && halfUp * 2 < box.bottomMm - box.topMm;
  const within = fits ? placesWithin({ ...box, leftMm: x, rightMm: x }) : [];
  const beside = [
    sheetPoint(x, box.topMm - halfUp - 0.3),
    sheetPoint(x, box.bottomMm + halfUp + 0.3),
    sheetPoint(box.leftMm - half - 0.3, y),
    sheetPoint(box.rightMm + half + 0.3, y),
  ];
  const at = [...within, ...beside].find((one) => free.isFree(narrowTextBox(one, name, SMALL)));
  if (at === undefined) return [];
  free.take(narrowTextBox(at, name, SMALL));
  return [soft(name, at, SMALL)];
}

/** Names of fixtures that have room for theirs, in them or beside; the others are known by where they stand. */
export function screenFixtureNames(fixtures: readonly DrawnFixture[], free: LabelPlacer): readonly Shape[] {
  const names = fixtures.flatMap((fixture) => fixtureName(fixture, free));
  // Names that come later keep off fixtures where they can.
  for (const { corners } of fixtures) free.take(boxRound(corners), 'cable');
  return names;
}
