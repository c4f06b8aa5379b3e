import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import { line, type Shape, words } from '../scene.ts';

/** A row of points in the order in which a cable passes them, in the scene; what has no place is left out by whoever gives it. */
export interface RowPicture {
  /** The board that it begins at; null where that is not in sight. */
  readonly board: SheetPoint | null;
  /** Each with its number, the first first. */
  readonly points: readonly { readonly at: SheetPoint; readonly number: number }[];
  /** Whether it is to come back to the board. */
  readonly isRing: boolean;
}

const RADIUS = 2.2;
const FIGURE = 3.2;

const badge = (at: SheetPoint, number: number): readonly Shape[] => [
  { kind: 'circle', at, radiusMm: RADIUS, ink: 'symbol-new-solid' },
  words('text-paper', sheetPoint(at[0], at[1] + FIGURE * 0.35), String(number), {
    sizeMm: FIGURE,
    anchor: 'middle',
    strong: true,
  }),
];

/** The line so far from the board through the points, each with its number, and dashes back to the board where it is a ring. */
export function rowShapes({ board, points, isRing }: RowPicture): readonly Shape[] {
  const places = points.map(({ at }) => at);
  const so = board === null ? places : [board, ...places];
  const [last] = places.slice(-1);
  return [
    ...(so.length > 1 && places.length > 0 ? [line('halo-line', so), line('new', so)] : []),
    ...(isRing && board !== null && last !== undefined && places.length > 1
      ? [line('new-next', [last, board])]
      : []),
    ...points.flatMap(({ at, number }) => badge(at, number)),
  ];
}
