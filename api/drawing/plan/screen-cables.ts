import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import { type LabelPlacer, placesAround, type Rectangle } from '../label-placer.ts';
import { narrowTextBox } from '../lettering-box.ts';
import { type Shape, words } from '../scene.ts';
import type { LabelCable } from './cable-layer.ts';
import { type LabelSpot, spotsAlong } from './cable-shapes.ts';

/** Room left at both ends of a label, and between a cable and a label beside it, units of the scene. */
const AROUND = 0.6;
const BESIDE = 2.2;
/** From the middle of a short cable to the nearest places for a length that has no room along it. */
const ROUND_ABOUT = 6;
/** Two rings of them: from farther off nobody sees whose length it is. */
const NEAR_PLACES = 16;

/** The room that a label takes; a turned one goes up the sheet with its cable. */
function roomOf({ at, isTurned }: LabelSpot, text: string, sizeMm: number): Rectangle {
  const { rightMm: half, bottomMm: halfUp } = narrowTextBox(sheetPoint(0, 0), text, sizeMm);
  const [x, y] = isTurned ? [halfUp, half] : [half, halfUp];
  return { leftMm: at[0] - x, rightMm: at[0] + x, topMm: at[1] - y, bottomMm: at[1] + y };
}

const longest = (path: readonly SheetPoint[]): number =>
  path.reduce((most, at, i) => {
    const before = path[i - 1] ?? at;
    return Math.max(most, Math.hypot(at[0] - before[0], at[1] - before[1]));
  }, 0);

/** Level places round the middle of a cable that has no room for its length along it. */
const roundAbout = (middle: LabelSpot | undefined): readonly LabelSpot[] =>
  middle === undefined
    ? []
    : placesAround(middle.at, [1, 0], ROUND_ABOUT)
        .slice(0, NEAR_PLACES)
        .map((at) => ({ at, isTurned: false }));

/**
 * Labels that stand on their cable and turn with it, so that nobody asks whose they are; beside it where it is short, or round about; none where
 * each place would be over another label or a symbol.
 *
 * @param terse short cables get no length at all.
 * @param sizeMm of the figures, units of the scene.
 */
export const labelsAlong =
  (free: LabelPlacer, terse: boolean, sizeMm: number): LabelCable =>
  (text, path) => {
    const isAsked = text === '?';
    const { rightMm: half } = narrowTextBox(sheetPoint(0, 0), text, sizeMm);
    const lengthMm = (half + AROUND) * 2;
    if (terse && !isAsked && longest(path) < lengthMm) return [];
    const along = spotsAlong(path, lengthMm, BESIDE);
    const spots = isAsked
      ? along.map((spot) => ({ ...spot, isTurned: false }))
      : [...along, ...roundAbout(along[0])];
    // Over another label neither could be read: the cable's own words, at a touch, have its length as well.
    const spot = spots.find((one) => free.isFreeOver('cables-and-walls', roomOf(one, text, sizeMm)));
    if (spot === undefined) return [];
    free.take(roomOf(spot, text, sizeMm));
    const { at, isTurned } = spot;
    const middle = isTurned ? sheetPoint(at[0] + 0.9, at[1]) : sheetPoint(at[0], at[1] + 0.9);
    const look = { sizeMm, anchor: 'middle', angleDeg: isTurned ? -90 : 0, strong: !isAsked } as const;
    const figure: Shape = words(isAsked ? 'text-soft' : 'text-new', middle, text, look);
    return isAsked ? [{ kind: 'circle', at, radiusMm: 1.5, ink: 'halo' }, figure] : [figure];
  };
