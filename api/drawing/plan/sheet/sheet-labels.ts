import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import {
  boxAbout,
  boxCorners,
  type LabelPlacer,
  type Over,
  type Rectangle,
  textBox,
} from '../../label-placer.ts';
import { type Ink, line, type Shape, words } from '../../scene.ts';
import { LETTERS_MM } from './lettering.ts';

/** From what is named to the nearest edge of its name, nearest first, mm on paper. */
const REACHES_MM = [0.6, 1.8, 3.2, 5, 7, 9.5, 12.5, 16, 20, 25, 31] as const;
/** Farther off than this a name has a line that leads to what it names, mm. */
const LED_MM = 3.4;
/** Every eighth of a turn, straight ahead first. */
const TURNS_DEG = [0, 45, -45, 90, -90, 135, -135, 180, 22, -22, 67, -67, 112, -112, 157, -157] as const;
/** From this part of a unit vector on, a place counts as being to that side. */
const ASIDE = 0.35;

/** What is named, as it lies on the sheet. */
export interface Named {
  /** Its middle. */
  readonly at: SheetPoint;
  /** Half of the room that it takes, mm. */
  readonly halfMm: number;
  /** Where its name should sooner stand: a unit vector on paper; absent: above it. */
  readonly into?: readonly [number, number];
  readonly turnsDeg?: readonly number[];
}

const middleOf = ({ leftMm, rightMm, topMm, bottomMm }: Rectangle): SheetPoint =>
  sheetPoint((leftMm + rightMm) / 2, (topMm + bottomMm) / 2);

/** Boxes of one size round a thing, nearest first: measured to their edges, so that a long name stands as close as a short one. */
export function boxesRound(
  { at, halfMm, into = [0, -1], turnsDeg = TURNS_DEG }: Named,
  wideMm: number,
  highMm: number,
): readonly Rectangle[] {
  const towards = (part: number): number => (Math.abs(part) > ASIDE ? Math.sign(part) : 0);
  return REACHES_MM.flatMap((reachMm) =>
    turnsDeg.map((turn) => {
      const radians = (turn * Math.PI) / 180;
      const x = into[0] * Math.cos(radians) - into[1] * Math.sin(radians);
      const y = into[0] * Math.sin(radians) + into[1] * Math.cos(radians);
      const middle = sheetPoint(
        at[0] + x * (halfMm + reachMm) + (towards(x) * wideMm) / 2,
        at[1] + y * (halfMm + reachMm) + (towards(y) * highMm) / 2,
      );
      return boxAbout(middle, wideMm, highMm);
    }),
  );
}

/** A thin line from the edge of what is named to the nearest place of its name; none where that is close by. */
function leaderTo({ at, halfMm }: Named, box: Rectangle): readonly Shape[] {
  const end = sheetPoint(
    Math.min(box.rightMm, Math.max(box.leftMm, at[0])),
    Math.min(box.bottomMm, Math.max(box.topMm, at[1])),
  );
  const [dx, dy] = [end[0] - at[0], end[1] - at[1]];
  const far = Math.hypot(dx, dy);
  if (far <= halfMm + LED_MM) return [];
  const from = sheetPoint(at[0] + (dx / far) * halfMm, at[1] + (dy / far) * halfMm);
  return [line('leader', [from, end])];
}

/** Lettering with its middle at a place, on a strip of paper, so that what goes through is interrupted. */
export function labelShapes(at: SheetPoint, text: string, ink: Ink, strong = false): readonly Shape[] {
  return [
    line('halo', boxCorners(textBox(at, text, LETTERS_MM.notes)), true),
    words(ink, sheetPoint(at[0], at[1] + LETTERS_MM.notes * 0.35), text, {
      sizeMm: LETTERS_MM.notes,
      anchor: 'middle',
      strong,
    }),
  ];
}

/** The lettering of one sheet that must find its room. */
export interface SheetLabels {
  /** The middle of the room that a text finds about a thing, which then is taken; null where there is none: it is told as not marked. */
  readonly place: (text: string, named: Named, over?: Over) => SheetPoint | null;
  /** The same for a sign of a size; `saidAs` is what the sheet calls it where there is none. */
  readonly placeBox: (
    size: { readonly wideMm: number; readonly highMm: number; readonly saidAs: string },
    named: Named,
    over?: Over,
  ) => SheetPoint | null;
  /** The same among boxes in their order. */
  readonly placeAmong: (
    boxes: readonly Rectangle[],
    named: Named & { readonly saidAs: string },
    over: Over,
  ) => SheetPoint | null;
  /** Tells of something that is on no plan for want of room. */
  readonly leaveOut: (saidAs: string) => void;
  /** Lines that lead to what stands farther off, in the order in which they came. */
  readonly leaders: () => readonly Shape[];
  /** What found no room, each once. */
  readonly unmarked: () => readonly string[];
}

/** Room for a sheet's lettering: nothing stands on anything else, and what finds no room is told. */
export function sheetLabels(free: LabelPlacer): SheetLabels {
  const leaders: Shape[] = [];
  const unmarked = new Set<string>();
  const placeAmong: SheetLabels['placeAmong'] = (boxes, named, over) => {
    const found = free.findRoom(boxes, over);
    const box = found === null ? undefined : boxes[found];
    if (box === undefined) {
      unmarked.add(named.saidAs);
      return null;
    }
    for (const leader of leaderTo(named, box)) leaders.push(leader);
    return middleOf(box);
  };
  const placeBox: SheetLabels['placeBox'] = ({ wideMm, highMm, saidAs }, named, over = 'cables') =>
    placeAmong(boxesRound(named, wideMm, highMm), { ...named, saidAs }, over);
  return {
    placeAmong,
    placeBox,
    place: (text, named, over) => {
      const { leftMm, rightMm, topMm, bottomMm } = textBox(sheetPoint(0, 0), text, LETTERS_MM.notes);
      const size = { wideMm: rightMm - leftMm, highMm: bottomMm - topMm };
      return placeBox({ ...size, saidAs: text }, named, over);
    },
    leaveOut: (saidAs) => unmarked.add(saidAs),
    leaders: () => leaders,
    unmarked: () => [...unmarked],
  };
}
