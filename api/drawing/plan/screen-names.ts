import type { Worked } from '#engine/connections/worked.ts';
import type { PlanRoom } from '#engine/plan/plan.ts';
import { isInside } from '#engine/plan/polygon.ts';
import {
  fromSheet,
  type SheetFrame,
  type SheetPoint,
  sheetPoint,
  toSheet,
} from '#engine/plan/sheet-frame.ts';
import { type LabelPlacer, textBox, textWidthMm } from '../label-placer.ts';
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

/** A plain four-cornered room by its two sides, in metres; empty for any other. */
function sizeOf({ outline }: PlanRoom): string {
  if (outline.length !== 4) return '';
  const box = boxOf(outline.map(([x, y]) => sheetPoint(x, y)));
  return `${((box.right - box.left) / 1000).toFixed(2)} × ${((box.bottom - box.top) / 1000).toFixed(2)} m`;
}

/** A line of lettering about its middle. */
const soft = (content: string, middle: SheetPoint, sizeMm: number): Shape =>
  words('text-soft', sheetPoint(middle[0], middle[1] + sizeMm * 0.35), content, { sizeMm, anchor: 'middle' });

const below = (at: SheetPoint): SheetPoint => sheetPoint(at[0], at[1] + ROOM_NAME);

function nameOf(room: PlanRoom, frame: SheetFrame, free: LabelPlacer): readonly Shape[] {
  const { name } = room.room;
  const size = sizeOf(room);
  const within = (at: SheetPoint, text: string, sizeMm: number): boolean => {
    const { leftMm, rightMm, topMm, bottomMm } = textBox(at, text, sizeMm);
    const inRoom = [leftMm, rightMm].every((x) =>
      [topMm, bottomMm].every((y) => isInside(room.outline, fromSheet(frame, sheetPoint(x, y)))),
    );
    return inRoom && free.isFree(textBox(at, text, sizeMm));
  };
  const places = placesWithin(boxOf(room.outline.map((at) => toSheet(frame, at))));
  const takes = (at: SheetPoint, sizeMm: number, text = name): Shape => {
    free.take(textBox(at, text, sizeMm));
    return soft(text, at, sizeMm);
  };
  const forName = places.filter((at) => within(at, name, ROOM_NAME));
  const forBoth = size === '' ? undefined : forName.find((at) => within(below(at), size, SMALL));
  if (forBoth !== undefined) return [takes(forBoth, ROOM_NAME), takes(below(forBoth), SMALL, size)];
  const [alone] = forName;
  if (alone !== undefined) return [takes(alone, ROOM_NAME)];
  return [soft(name, free.place(name, SMALL, places), SMALL)];
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

/** Names of fixtures that have room for theirs; the others are known by where they stand. */
export const screenFixtureNames = (fixtures: readonly DrawnFixture[], free: LabelPlacer): readonly Shape[] =>
  fixtures.flatMap(({ name, corners }) => {
    const box = boxOf(corners);
    // The narrow face is at hand on screen, so that names take less than the placer reckons with.
    const width = textWidthMm(name, SMALL) * 0.85;
    const middle = (box.left + box.right) / 2;
    if (width > box.right - box.left) return [];
    const at = placesWithin({ ...box, left: middle, right: middle }).find(([x, y]) =>
      free.isFree({ leftMm: x - width / 2, rightMm: x + width / 2, topMm: y - 1.2, bottomMm: y + 1.2 }),
    );
    return at === undefined ? [] : [soft(name, at, SMALL)];
  });
