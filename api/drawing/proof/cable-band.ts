import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import { shifted } from '../plan/cable-shapes.ts';
import { line, type Shape } from '../scene.ts';
import type { PictureLeg } from './circuit-picture.ts';

/** Width of a cable without current, units of the scene, and what each ampere adds. */
const BARE_WIDTH = 1;
const WIDTH_PER_A = 0.09;

/** How wide a cable is drawn by its current, the same in every picture; where that is not known as without any. */
export const widthOf = (currentA: number | null): number => BARE_WIDTH + WIDTH_PER_A * (currentA ?? 0);

/** A quarter of a circle between two directions, as corners of a line; the corner itself is cut. */
export function rounded(before: SheetPoint, corner: SheetPoint, after: SheetPoint): readonly SheetPoint[] {
  const steps = 6;
  return Array.from({ length: steps + 1 }, (_, i) => {
    const angle = (i / steps) * (Math.PI / 2);
    const [back, on] = [1 - Math.sin(angle), 1 - Math.cos(angle)];
    return sheetPoint(
      corner[0] + (before[0] - corner[0]) * back + (after[0] - corner[0]) * on,
      corner[1] + (before[1] - corner[1]) * back + (after[1] - corner[1]) * on,
    );
  });
}

const outline = (path: readonly SheetPoint[], width: number): readonly SheetPoint[] => [
  ...shifted(path, width / 2),
  ...shifted(path, -width / 2).toReversed(),
];

/** The line through the middle of a path between two shares of its length. */
export function partOfLine(path: readonly SheetPoint[], from: number, to: number): readonly SheetPoint[] {
  const steps = path.slice(1).map((at, i) => {
    const before = path[i] ?? at;
    return { before, at, length: Math.hypot(at[0] - before[0], at[1] - before[1]) };
  });
  const total = steps.reduce((sum, { length }) => sum + length, 0);
  const out: SheetPoint[] = [];
  let walked = 0;
  for (const { before, at, length } of steps) {
    const enter = Math.max(from * total, walked);
    const leave = Math.min(to * total, walked + length);
    if (leave > enter)
      for (const along of [enter, leave]) {
        const share = (along - walked) / length;
        out.push(
          sheetPoint(before[0] + (at[0] - before[0]) * share, before[1] + (at[1] - before[1]) * share),
        );
      }
    walked += length;
  }
  return out;
}

/**
 * A cable as wide as its current: full where it was found, hollow where it is new, and parted in the middle where the
 * scenario opens it.
 */
export function cableBand(leg: PictureLeg, path: readonly SheetPoint[]): readonly Shape[] {
  const width = widthOf(leg.currentA);
  if (leg.isOpen)
    return [
      line('removed', partOfLine(path, 0, 0.36)),
      line('removed', partOfLine(path, 0.64, 1)),
      ...[0.36, 0.64].flatMap((share) => stop(partOfLine(path, share - 0.01, share + 0.01))),
    ];
  return [line(leg.isNew ? 'symbol-new' : 'wall', outline(path, width), true)];
}

/** A stroke across the end of a parted cable. */
function stop(piece: readonly SheetPoint[]): readonly Shape[] {
  const [one] = shifted(piece, 1.6);
  const [other] = shifted(piece, -1.6);
  return one === undefined || other === undefined ? [] : [line('found', [one, other])];
}

/** The mark of the leg that carries most of what it may: a solid arrow head that points at the cable. */
export function worstMark(at: SheetPoint, toward: -1 | 1, isOver: boolean): Shape {
  const tip = sheetPoint(at[0] + toward * 2.2, at[1]);
  return line(
    isOver ? 'fails' : 'symbol-solid',
    [sheetPoint(at[0], at[1] - 1.4), tip, sheetPoint(at[0], at[1] + 1.4)],
    true,
  );
}
