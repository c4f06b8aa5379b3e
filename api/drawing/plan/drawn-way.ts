import type { PlanPoint, Position } from '#engine/plan/plane.ts';
import { type SheetFrame, type SheetPoint, sheetPoint, toSheet } from '#engine/plan/sheet-frame.ts';
import { line, type Shape } from '../scene.ts';

/** A way that is drawn by hand, as it is seen on plan. */
export interface WayPicture {
  /** Its corners in order, the beginning first. */
  readonly corners: readonly Position[];
  /** Where it is to end. */
  readonly end: Position;
  /** From the last corner to the end, as it would be found. */
  readonly rest: readonly PlanPoint[];
  /** The next corner under the hand, with those that lead to it; null where none is. */
  readonly next: {
    readonly places: readonly PlanPoint[];
    readonly at: PlanPoint;
    readonly possible: boolean;
  } | null;
}

const isPlumb = (one: Position, other: Position): boolean =>
  Math.hypot(one.at[0] - other.at[0], one.at[1] - other.at[1]) < 1 && one.levelMm !== other.levelMm;

const dot = (at: SheetPoint): Shape => ({ kind: 'circle', at, radiusMm: 0.8, ink: 'symbol-new-solid' });

/** An arrow head beside a corner at which the way goes up or down. */
function riser([x, y]: SheetPoint, isUp: boolean): Shape {
  const tip = isUp ? -1 : 1;
  return line(
    'symbol-new-solid',
    [
      sheetPoint(x + 2.4, y + tip * 1.3),
      sheetPoint(x + 1.4, y - tip * 0.7),
      sheetPoint(x + 3.4, y - tip * 0.7),
    ],
    true,
  );
}

/** A cross where the way cannot go. */
const cross = ([x, y]: SheetPoint): readonly Shape[] => [
  line('mark-fails', [sheetPoint(x - 1.5, y - 1.5), sheetPoint(x + 1.5, y + 1.5)]),
  line('mark-fails', [sheetPoint(x - 1.5, y + 1.5), sheetPoint(x + 1.5, y - 1.5)]),
];

function nextShapes(
  frame: SheetFrame,
  last: SheetPoint,
  next: NonNullable<WayPicture['next']>,
): readonly Shape[] {
  const at = toSheet(frame, next.at);
  if (!next.possible) return cross(at);
  const path = [last, ...next.places.map((place) => toSheet(frame, place))];
  return [line('new-next', path), { kind: 'circle', at, radiusMm: 1.2, ink: 'symbol-new' }];
}

/** A way that is drawn: its corners as dots, arrow heads where it goes up or down, dashes for the rest and for what comes next, a ring at its end. */
export function drawnWayShapes(
  frame: SheetFrame,
  { corners, end, rest, next }: WayPicture,
): readonly Shape[] {
  const places = corners.map(({ at }) => toSheet(frame, at));
  const last = places.at(-1) ?? sheetPoint(0, 0);
  const risers = corners.flatMap((one, i) => {
    const [before, at] = [corners[i - 1], places[i]];
    if (before === undefined || at === undefined || !isPlumb(one, before)) return [];
    return [riser(at, one.levelMm > before.levelMm)];
  });
  return [
    { kind: 'circle', at: toSheet(frame, end.at), radiusMm: 2.6, ink: 'new-next' },
    ...(rest.length > 1
      ? [
          line(
            'new-next',
            rest.map((at) => toSheet(frame, at)),
          ),
        ]
      : []),
    ...(places.length > 1 ? [line('halo-line', places), line('new', places)] : []),
    ...places.map(dot),
    ...risers,
    ...(next === null ? [] : nextShapes(frame, last, next)),
  ];
}
