import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';

/** An upright rectangle on paper, mm. */
export interface Rectangle {
  readonly leftMm: number;
  readonly topMm: number;
  readonly rightMm: number;
  readonly bottomMm: number;
}

/**
 * Width of a line of drawing text, near enough for placing it. Taken for the widest of the fallback faces
 * (0.56 of the height a letter), so that a sheet also holds together where the narrow face is missing.
 */
export const textWidthMm = (text: string, sizeMm: number): number => text.length * sizeMm * 0.56;

/** The upright box round some corners. */
export function boxRound(corners: readonly SheetPoint[]): Rectangle {
  const xs = corners.map(([x]) => x);
  const ys = corners.map(([, y]) => y);
  return {
    leftMm: Math.min(...xs),
    rightMm: Math.max(...xs),
    topMm: Math.min(...ys),
    bottomMm: Math.max(...ys),
  };
}

/** A box of a size with its middle at a place; square where one side is told. */
export const boxAbout = ([x, y]: SheetPoint, wideMm: number, highMm = wideMm): Rectangle => ({
  leftMm: x - wideMm / 2,
  rightMm: x + wideMm / 2,
  topMm: y - highMm / 2,
  bottomMm: y + highMm / 2,
});

/** The corners of a box, from the upper left one on clockwise. */
export const boxCorners = ({ leftMm, topMm, rightMm, bottomMm }: Rectangle): readonly SheetPoint[] => [
  sheetPoint(leftMm, topMm),
  sheetPoint(rightMm, topMm),
  sheetPoint(rightMm, bottomMm),
  sheetPoint(leftMm, bottomMm),
];

/** How much of each other two rectangles cover, mm². */
export const overlapMm2 = (a: Rectangle, b: Rectangle): number =>
  Math.max(0, Math.min(a.rightMm, b.rightMm) - Math.max(a.leftMm, b.leftMm)) *
  Math.max(0, Math.min(a.bottomMm, b.bottomMm) - Math.max(a.topMm, b.topMm));

/** The rectangle that text takes with its middle at a place. */
export const textBox = (middle: SheetPoint, text: string, sizeMm: number): Rectangle => ({
  leftMm: middle[0] - textWidthMm(text, sizeMm) / 2 - 0.3,
  rightMm: middle[0] + textWidthMm(text, sizeMm) / 2 + 0.3,
  topMm: middle[1] - sizeMm * 0.6,
  bottomMm: middle[1] + sizeMm * 0.6,
});

/** Finds room for labels: each takes the first candidate place that covers least of what is there already. */
export interface LabelPlacer {
  /** Marks a rectangle as taken, by a cable, by a thin line, by a wall that a cable's label may stand on, or by anything else. */
  readonly take: (rectangle: Rectangle, by?: 'cable' | 'line' | 'wall') => void;
  /** The best middle among the candidates, in their order of preference; its room is then taken. */
  readonly place: (text: string, sizeMm: number, candidates: readonly SheetPoint[]) => SheetPoint;
  /** The same for a cable's own label, which may stand on cables. */
  readonly placeOnCable: (text: string, sizeMm: number, candidates: readonly SheetPoint[]) => SheetPoint;
  /** The same for rectangles of any kind: which of them it is, or 0 where there is none. */
  readonly placeBoxOnCable: (boxes: readonly Rectangle[]) => number;
  /**
   * Room for lettering with a ground of its own: the box that crosses least, near before far, among those that lie within bounds on nothing
   * but lines and what is named, all of which they interrupt; its room is then taken.
   *
   * @returns which of the boxes it is; null where each would cover something.
   */
  readonly findRoom: (boxes: readonly Rectangle[], over: Over) => number | null;
  /** True where nothing is taken yet, and all lies within bounds. */
  readonly isFree: (box: Rectangle) => boolean;
  /** The same, though cables, or cables and walls, may be there: lettering with a ground of its own may stand on them. */
  readonly isFreeOver: (over: 'cables' | 'cables-and-walls', box: Rectangle) => boolean;
}

/** What lettering may lie on: cables, which it sooner avoids; the cable that it belongs to; walls too. */
export type Over = 'cables' | 'own-cable' | 'walls-too';

/** Farther by one step of the order weighs as much as so much crossed, mm². */
const STEP_MM2 = 0.4;

/** What a place for a label costs. */
export interface PlacingCosts {
  /** Crossing cables, against covering other things. */
  readonly crossing: number;
  /** Each step down the candidates' order, in mm² covered. */
  readonly farther: number;
}

/** On paper a label goes as far as it must to cover nothing at all. */
const paperCosts: PlacingCosts = { crossing: 1, farther: 0 };

const overlapWith = (box: Rectangle, taken: readonly Rectangle[]): number =>
  taken.reduce((sum, other) => sum + overlapMm2(box, other), 0);

/** A label placer for one sheet, keeping all labels within `bounds`. */
export function labelPlacer(bounds: Rectangle, costs: PlacingCosts = paperCosts): LabelPlacer {
  const things: Rectangle[] = [];
  const cables: Rectangle[] = [];
  const lines: Rectangle[] = [];
  const walls: Rectangle[] = [];
  const kinds = { cable: cables, line: lines, wall: walls } as const;
  const outside = (box: Rectangle): number =>
    Math.max(0, bounds.leftMm - box.leftMm) +
    Math.max(0, box.rightMm - bounds.rightMm) +
    Math.max(0, bounds.topMm - box.topMm) +
    Math.max(0, box.bottomMm - bounds.bottomMm);
  const onCable = (box: Rectangle): number => outside(box) * 100 + overlapWith(box, things);
  const anywhere = (box: Rectangle): number =>
    onCable(box) +
    overlapWith(box, walls) +
    (overlapWith(box, cables) + overlapWith(box, lines)) * costs.crossing;
  const placeBox = (boxes: readonly Rectangle[], costOf: (box: Rectangle) => number): number => {
    const all = boxes.map((box, i) => costOf(box) + i * costs.farther);
    const best = Math.max(0, all.indexOf(Math.min(...all)));
    const box = boxes[best];
    if (box !== undefined) things.push(box);
    return best;
  };
  const placeBy =
    (costOf: (box: Rectangle) => number) =>
    (text: string, sizeMm: number, candidates: readonly SheetPoint[]): SheetPoint => {
      const boxes = candidates.map((at) => textBox(at, text, sizeMm));
      return candidates[placeBox(boxes, costOf)] ?? sheetPoint(bounds.leftMm, bounds.topMm);
    };
  const taken = (box: Rectangle, by: readonly (readonly Rectangle[])[]): number =>
    outside(box) + by.reduce((sum, some) => sum + overlapWith(box, some), 0);
  const roomCost = (box: Rectangle, over: Over): number =>
    taken(box, over === 'walls-too' ? [things] : [things, walls]) > 0
      ? Number.POSITIVE_INFINITY
      : overlapWith(box, lines) +
        (over === 'own-cable' ? 0 : overlapWith(box, cables)) +
        (over === 'walls-too' ? overlapWith(box, walls) : 0);
  const findRoom = (boxes: readonly Rectangle[], over: Over): number | null => {
    let best: number | null = null;
    let least = Number.POSITIVE_INFINITY;
    boxes.forEach((box, i) => {
      // Nothing farther can be better than what was found.
      if (i * STEP_MM2 >= least) return;
      const cost = roomCost(box, over) + i * STEP_MM2;
      if (cost < least) [best, least] = [i, cost];
    });
    const box = best === null ? undefined : boxes[best];
    if (box !== undefined) things.push(box);
    return best;
  };
  return {
    take: (rectangle, by) => (by === undefined ? things : kinds[by]).push(rectangle),
    findRoom,
    place: placeBy(anywhere),
    placeOnCable: placeBy(onCable),
    placeBoxOnCable: (boxes) => placeBox(boxes, onCable),
    isFree: (box) => taken(box, [things, cables, lines, walls]) === 0,
    isFreeOver: (over, box) => taken(box, over === 'cables' ? [things, walls] : [things]) === 0,
  };
}

/**
 * Places round a spot, nearest first: for labels beside symbols.
 *
 * @param turnsDeg from `into`, the best first.
 */
export function placesAround(
  at: SheetPoint,
  into: readonly [number, number],
  nearMm: number,
  turnsDeg: readonly number[] = [0, 45, -45, 90, -90, 135, -135, 180],
): readonly SheetPoint[] {
  const out: SheetPoint[] = [];
  for (const reach of [nearMm, nearMm * 1.5, nearMm * 2.2, nearMm * 3, nearMm * 4]) {
    for (const turn of turnsDeg) {
      const radians = (turn * Math.PI) / 180;
      const x = into[0] * Math.cos(radians) - into[1] * Math.sin(radians);
      const y = into[0] * Math.sin(radians) + into[1] * Math.cos(radians);
      out.push(sheetPoint(at[0] + x * reach, at[1] + y * reach));
    }
  }
  return out;
}

/** The best middle for a square beside something on a screen, above it first, where it covers least; its room is then taken. */
export function squareBeside(
  free: LabelPlacer,
  middle: SheetPoint,
  { besideMm, sideMm }: { readonly besideMm: number; readonly sideMm: number },
): SheetPoint {
  const places = placesAround(middle, [0, -1], besideMm);
  return places[free.placeBoxOnCable(places.map((at) => boxAbout(at, sideMm)))] ?? middle;
}
