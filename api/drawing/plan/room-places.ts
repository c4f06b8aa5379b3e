import type { PlanRoom } from '#engine/plan/plan.ts';
import { isInside } from '#engine/plan/polygon.ts';
import {
  fromSheet,
  type SheetFrame,
  type SheetPoint,
  sheetPoint,
  toSheet,
} from '#engine/plan/sheet-frame.ts';
import { boxRound, type LabelPlacer, type Rectangle } from '../label-placer.ts';

/** Between places that are tried for a name, mm on paper. */
const STEP = 1.5;

/** Places within a box, those nearest its middle first. */
export function placesWithin({ leftMm, rightMm, topMm, bottomMm }: Rectangle): readonly SheetPoint[] {
  const [midX, midY] = [(leftMm + rightMm) / 2, (topMm + bottomMm) / 2];
  const steps = (lengthMm: number): number[] => {
    const half = Math.max(0, Math.floor(lengthMm / 2 / STEP));
    return Array.from({ length: half * 2 + 1 }, (_, i) => (i - half) * STEP);
  };
  const places = steps(rightMm - leftMm).flatMap((x) =>
    steps(bottomMm - topMm).map((y) => ({ at: sheetPoint(midX + x, midY + y), off: Math.hypot(x, y) })),
  );
  return places.sort((a, b) => a.off - b.off).map(({ at }) => at);
}

/** What a room offers to its name. */
export interface RoomPlaces {
  /** Those nearest the room's middle first. */
  readonly places: readonly SheetPoint[];
  readonly holds: (box: Rectangle) => boolean;
}

export function roomPlaces(room: PlanRoom, frame: SheetFrame): RoomPlaces {
  return {
    places: placesWithin(boxRound(room.outline.map((at) => toSheet(frame, at)))),
    holds: ({ leftMm, rightMm, topMm, bottomMm }) =>
      [leftMm, rightMm].every((x) =>
        [topMm, bottomMm].every((y) => isInside(room.outline, fromSheet(frame, sheetPoint(x, y)))),
      ),
  };
}

/** A name in a size at a place. */
export interface PlacedName {
  readonly at: SheetPoint;
  readonly sizeMm: number;
}

/**
 * Where in its room a name goes: where nothing is in its way, in the first of the sizes that finds such a place; else on
 * cables, and then on walls, but on nothing else, the smallest size first; null where there is no such place either.
 */
export function placeForName(
  { places, holds }: RoomPlaces,
  sizesMm: readonly number[],
  boxAt: (at: SheetPoint, sizeMm: number) => Rectangle,
  free: LabelPlacer,
): PlacedName | null {
  const find = (sizeMm: number, isRight: (box: Rectangle) => boolean): PlacedName | null => {
    const at = places.find((one) => isRight(boxAt(one, sizeMm)));
    return at === undefined ? null : { at, sizeMm };
  };
  for (const sizeMm of sizesMm) {
    const placed = find(sizeMm, (box) => free.isFree(box) && holds(box));
    if (placed !== null) return placed;
  }
  const small = sizesMm.at(-1) ?? 0;
  return (
    find(small, (box) => free.isFreeOver('cables', box) && holds(box)) ??
    find(small, (box) => free.isFreeOver('cables-and-walls', box))
  );
}
