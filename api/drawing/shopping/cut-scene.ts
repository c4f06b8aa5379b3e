import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import { textWidthMm } from '../label-placer.ts';
import { type Ink, line, type Scene, type Shape, words } from '../scene.ts';
import { type Cut, type CutBar, plainMetres } from './cut-lists.ts';

const NAME_SIZE = 2.8;
const LABEL_SIZE = 2.6;
/** The narrow face, which is at hand, against the wider ones that widths are reckoned for. */
const NARROW = 0.85;
const HEAD = 4.4;
const BAR = 8.8;
const GAP = 4;
const HATCH = 2;
const EDGE = 0.4;

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** A line of what is told below a bar. */
const BELOW_LINE = 3.8;
/** Between two cuts that are told below a bar. */
const BELOW_GAP = 5;

/**
 * Every length of an item as a bar, all to one scale, with its cuts in the order of cutting and what is left hatched. Each
 * cut is a group under its cause. A cut has in it what there is room for of its number, its name
 * and its length.
 *
 * @param widthMm how wide the drawing is; the longest bar takes all of it.
 * @param tellsBelow whether a cut that has no room for all three is told in full below its bar: for paper, where no list stands beside.
 */
export function cutScene(bars: readonly CutBar[], widthMm: number, tellsBelow = false): Scene {
  const longestMm = Math.max(1, ...bars.map(({ lengthMm }) => lengthMm));
  const perMm = (widthMm - 2 * EDGE) / longestMm;
  let foot = 0;
  const placed = bars.map((bar) => {
    const top = foot + HEAD;
    const box = { left: EDGE, right: EDGE + bar.lengthMm * perMm, top, bottom: top + BAR };
    const below = tellsBelow ? belowBar(bar, box, { perMm, widthMm }) : { shapes: [], lines: 0 };
    foot = box.bottom + below.lines * BELOW_LINE + GAP;
    return { bar, box, below };
  });
  return {
    title: 'What is cut from which length',
    widthMm,
    heightMm: Math.max(1, foot - GAP + EDGE),
    scale: null,
    layers: [
      { name: 'below', shapes: placed.flatMap(({ below }) => below.shapes) },
      { name: 'heads', shapes: placed.flatMap(({ bar, box }) => headShapes(bar, box, widthMm)) },
      { name: 'left', shapes: placed.flatMap(({ bar, box }) => leftShapes(bar, box, perMm)) },
      { name: 'cuts', shapes: placed.flatMap(({ bar, box }) => cutShapes(bar, box, perMm)) },
      { name: 'lengths', shapes: placed.map(({ box }) => rectangle('scale-bar', box)) },
    ],
  };
}

function headShapes({ words: name, leftMm }: CutBar, { left, top }: Box, widthMm: number): readonly Shape[] {
  const rest = leftMm > 0 ? `${plainMetres(leftMm)} left` : 'nothing left';
  return [
    words('text', sheetPoint(left, top - 1.3), name, { sizeMm: NAME_SIZE, strong: true }),
    words('text-soft', sheetPoint(widthMm - EDGE, top - 1.3), rest, { sizeMm: LABEL_SIZE, anchor: 'end' }),
  ];
}

function cutShapes({ cuts, words: from }: CutBar, box: Box, perMm: number): readonly Shape[] {
  let left = box.left;
  return cuts.map((cut): Shape => {
    const own = { ...box, left, right: left + cut.lengthMm * perMm };
    left = own.right;
    return {
      kind: 'group',
      subject: cut.cause,
      title: `${cut.number}: ${cut.label}, ${plainMetres(cut.lengthMm)}, from: ${from}`,
      shapes: [rectangle('symbol-new', own), ...cutWords(cut, own)],
    };
  });
}

const wordsMm = (text: string): number => textWidthMm(text, LABEL_SIZE) * NARROW;
const named = ({ number, label }: Cut): string => `${number}  ${label}`;
const fitsIn = (text: string, roomMm: number): boolean => wordsMm(text) + 1.2 <= roomMm;

/** Below a bar the cuts that have no room for their names, in the order of cutting, in lines as wide as the drawing. */
function belowBar(
  { cuts }: CutBar,
  { left, bottom }: Box,
  { perMm, widthMm }: { readonly perMm: number; readonly widthMm: number },
): { readonly shapes: readonly Shape[]; readonly lines: number } {
  const shapes: Shape[] = [];
  let [line, x] = [0, left];
  for (const cut of cuts.filter((each) => !fitsIn(named(each), each.lengthMm * perMm))) {
    const told = `${named(cut)}, ${plainMetres(cut.lengthMm)}`;
    if (line === 0 || x + wordsMm(told) > widthMm) [line, x] = [line + 1, left];
    shapes.push(words('text', sheetPoint(x, bottom + line * BELOW_LINE - 0.4), told, { sizeMm: LABEL_SIZE }));
    x += wordsMm(told) + BELOW_GAP;
  }
  return { shapes, lines: line };
}

/** What fits into a cut. */
function cutWords(cut: Cut, box: Box): readonly Shape[] {
  const { lengthMm, number } = cut;
  const fits = (text: string): boolean => fitsIn(text, box.right - box.left);
  const middle = (box.left + box.right) / 2;
  const at = (y: number): SheetPoint => sheetPoint(middle, y);
  const text = (y: number, said: string): Shape =>
    words('text', at(y), said, { sizeMm: LABEL_SIZE, anchor: 'middle' });
  const length = plainMetres(lengthMm);
  if (fits(length))
    return [text(box.top + 3.8, fits(named(cut)) ? named(cut) : String(number)), text(box.top + 7.2, length)];
  return fits(String(number)) ? [text(box.top + 5.4, String(number))] : [];
}

function leftShapes({ leftMm }: CutBar, box: Box, perMm: number): readonly Shape[] {
  if (leftMm <= 0) return [];
  return hatch({ ...box, left: box.right - leftMm * perMm });
}

/** Slanting lines at 45°, cut off at the edges of the box. */
function hatch({ left, right, top, bottom }: Box): readonly Shape[] {
  const height = bottom - top;
  const lines: Shape[] = [];
  for (let foot = left - height + HATCH; foot < right; foot += HATCH) {
    const low = Math.max(foot, left);
    const high = Math.min(foot + height, right);
    if (high > low)
      lines.push(
        line('fixture', [sheetPoint(low, bottom - (low - foot)), sheetPoint(high, bottom - (high - foot))]),
      );
  }
  return lines;
}

const rectangle = (ink: Ink, { left, right, top, bottom }: Box): Shape =>
  line(
    ink,
    [sheetPoint(left, top), sheetPoint(right, top), sheetPoint(right, bottom), sheetPoint(left, bottom)],
    true,
  );
