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

const overlapMm2 = (a: Rectangle, b: Rectangle): number =>
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
  /** Marks a rectangle as taken, by a cable, by a wall that a cable's label may stand on, or by anything else. */
  readonly take: (rectangle: Rectangle, by?: 'cable' | 'wall') => void;
  /** The best middle among the candidates, in their order of preference; its room is then taken. */
  readonly place: (text: string, sizeMm: number, candidates: readonly SheetPoint[]) => SheetPoint;
  /** The same for a cable's own label, which may stand on cables. */
  readonly placeOnCable: (text: string, sizeMm: number, candidates: readonly SheetPoint[]) => SheetPoint;
  /** True where nothing is taken yet, and all lies within bounds. */
  readonly isFree: (box: Rectangle) => boolean;
}

/** A label placer for one sheet, keeping all labels within `bounds`. */
export function labelPlacer(bounds: Rectangle): LabelPlacer {
  const things: Rectangle[] = [];
  const cables: Rectangle[] = [];
  const walls: Rectangle[] = [];
  const covered = (box: Rectangle, taken: readonly Rectangle[]): number =>
    taken.reduce((sum, other) => sum + overlapMm2(box, other), 0);
  const outside = (box: Rectangle): number =>
    Math.max(0, bounds.leftMm - box.leftMm) +
    Math.max(0, box.rightMm - bounds.rightMm) +
    Math.max(0, bounds.topMm - box.topMm) +
    Math.max(0, box.bottomMm - bounds.bottomMm);
  const best = (boxes: readonly Rectangle[], costOf: (box: Rectangle) => number): number => {
    const costs = boxes.map(costOf);
    return Math.max(0, costs.indexOf(Math.min(...costs)));
  };
  const placeBy =
    (costOf: (box: Rectangle) => number) =>
    (text: string, sizeMm: number, candidates: readonly SheetPoint[]): SheetPoint => {
      const boxes = candidates.map((at) => textBox(at, text, sizeMm));
      const at = candidates[best(boxes, costOf)] ?? sheetPoint(bounds.leftMm, bounds.topMm);
      things.push(textBox(at, text, sizeMm));
      return at;
    };
  const all = [things, walls, cables];
  const allCovered = (box: Rectangle): number =>
    outside(box) * 100 + all.reduce((sum, taken) => sum + covered(box, taken), 0);
  return {
    take: (rectangle, by) => (by === 'cable' ? cables : by === 'wall' ? walls : things).push(rectangle),
    place: placeBy(allCovered),
    placeOnCable: placeBy((box) => outside(box) * 100 + covered(box, things)),
    isFree: (box) => allCovered(box) === 0,
  };
}

/** Places round a spot, nearest first: for labels beside symbols. */
export function placesAround(
  at: SheetPoint,
  into: readonly [number, number],
  nearMm: number,
): readonly SheetPoint[] {
  const out: SheetPoint[] = [];
  for (const reach of [nearMm, nearMm * 1.5, nearMm * 2.2, nearMm * 3, nearMm * 4]) {
    for (const turn of [0, 45, -45, 90, -90, 135, -135, 180]) {
      const radians = (turn * Math.PI) / 180;
      const x = into[0] * Math.cos(radians) - into[1] * Math.sin(radians);
      const y = into[0] * Math.sin(radians) + into[1] * Math.cos(radians);
      out.push(sheetPoint(at[0] + x * reach, at[1] + y * reach));
    }
  }
  return out;
}
