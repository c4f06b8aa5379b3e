import { cornerDistances } from '#engine/plan/corners.ts';
import type { Plan, PlanWall } from '#engine/plan/plan.ts';
import { planPoint } from '#engine/plan/plane.ts';
import { faceNormal, pointOnFace, positionOfPlace } from '#engine/plan/position-of-place.ts';
import {
  directionOnSheet,
  type SheetFrame,
  type SheetPoint,
  sheetPoint,
  toSheet,
} from '#engine/plan/sheet-frame.ts';
import type { Place } from '#model/installation.ts';
import { overlapMm2, type Rectangle, textWidthMm } from '../label-placer.ts';
import { letteringBox } from '../lettering-box.ts';
import { movedOnSheet } from '../moved-on-sheet.ts';
import { scaledAbout } from '../scaled-about.ts';
import { line, type Shape, words } from '../scene.ts';
import { drawSymbol, type SymbolName, type SymbolPlace, type SymbolState } from '../symbols.ts';
import { symbolSizeAt } from './screen-plan.ts';
import type { FiguredSide } from './side-figures.ts';

/** From the wall's face to a dimension line, clear of symbols, units of the scene. */
const OFF_WALL = 7;
/** Lettering of figures, units of the scene, where nothing else is asked for. */
const LETTERING = 2.5;

type WallPlace = Extract<Place, { readonly wall: string }>;

function intoRoom(wall: PlanWall, side: WallPlace['side']): readonly [number, number] {
  return directionOnSheet(faceNormal(wall, side));
}

/** A thing's symbol where it would stand; empty where the place is not on the plan. */
export function ghostShapes(
  frame: SheetFrame,
  plan: Plan,
  place: Place,
  { symbol: name, state }: { readonly symbol: SymbolName; readonly state: SymbolState },
): readonly Shape[] {
  const position = positionOfPlace(plan, place);
  if (position === null) return [];
  const wall = 'wall' in place ? plan.wallById.get(place.wall) : undefined;
  const at = toSheet(frame, position.at);
  const into = wall !== undefined && 'wall' in place ? intoRoom(wall, place.side) : ([0, -1] as const);
  const symbol: SymbolPlace = { at, into };
  return scaledAbout(drawSymbol(name, symbol, state), at, symbolSizeAt(frame.scale));
}

/** One dimension beside a wall: lines up from the wall, a line between them with slanting ends, and the figure. */
function dimension(
  [a, b]: readonly [SheetPoint, SheetPoint],
  into: readonly [number, number],
  { lengthMm, sizeMm }: { readonly lengthMm: number; readonly sizeMm: number },
): readonly Shape[] {
  const [from, to] = [movedOnSheet(a, into, OFF_WALL), movedOnSheet(b, into, OFF_WALL)];
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const ends = [a, b].map((at) =>
    line('scale-bar', [movedOnSheet(at, into, 1), movedOnSheet(at, into, OFF_WALL + 1)]),
  );
  const ticks = [from, to].map((at) =>
    line('scale-bar', [sheetPoint(at[0] - 0.6, at[1] + 0.6), sheetPoint(at[0] + 0.6, at[1] - 0.6)]),
  );
  const text = String(Math.round(lengthMm));
  // A figure wider than its line stands beyond it, further into the room.
  const beyond = textWidthMm(text, sizeMm) > length ? sizeMm + 0.1 : 0;
  const middle = movedOnSheet(sheetPoint((from[0] + to[0]) / 2, (from[1] + to[1]) / 2), into, beyond);
  const upright = Math.abs(to[0] - from[0]) < Math.abs(to[1] - from[1]);
  const figure = words(
    'text-new',
    sheetPoint(middle[0] + (upright ? 0.9 : 0), middle[1] + (upright ? 0 : 0.9)),
    text,
    {
      sizeMm,
      anchor: 'middle',
      strong: true,
      angleDeg: upright ? -90 : 0,
    },
  );
  return [line('scale-bar', [from, to]), ...ends, ...ticks, figure];
}

/** The rectangles that lettering among some shapes takes. */
export const letteringRoom = (shapes: readonly Shape[]): readonly Rectangle[] =>
  shapes.flatMap((shape) => (shape.kind === 'text' ? [letteringBox(shape)] : []));

const overlap = (a: readonly Rectangle[], b: readonly Rectangle[]): boolean =>
  a.some((one) => b.some((other) => overlapMm2(one, other) > 0));

/**
 * Dimensions from a place on a wall to the corners on both its hands; none to a side that has no corner. Where there is
 * no room for both, the shorter is drawn: one measures from the nearer corner.
 *
 * @param sizeMm of the figures, units of the scene.
 */
export function placeDimensions(
  frame: SheetFrame,
  plan: Plan,
  place: Place,
  sizeMm = LETTERING,
): readonly Shape[] {
  const wall = 'wall' in place ? plan.wallById.get(place.wall) : undefined;
  if (wall === undefined || !('wall' in place)) return [];
  const { side, alongMm } = place;
  const on = (mm: number): SheetPoint => toSheet(frame, pointOnFace(wall, side, mm));
  const { leftMm, rightMm } = cornerDistances(plan, { wallId: place.wall, side, alongMm });
  // Someone who looks at a wall's left face has its `to` end on the left hand.
  const toLeft = side === 'left' ? 1 : -1;
  const into = intoRoom(wall, side);
  const hands = [
    { lengthMm: leftMm, way: toLeft },
    { lengthMm: rightMm, way: -toLeft },
  ];
  const drawn = hands.flatMap(({ lengthMm, way }) =>
    lengthMm === null
      ? []
      : [
          {
            lengthMm,
            shapes: dimension([on(alongMm), on(alongMm + way * lengthMm)], into, { lengthMm, sizeMm }),
          },
        ],
  );
  const [one, other] = drawn;
  if (one === undefined || other === undefined) return one?.shapes ?? [];
  if (overlap(letteringRoom(one.shapes), letteringRoom(other.shapes)))
    return (one.lengthMm <= other.lengthMm ? one : other).shapes;
  return [...one.shapes, ...other.shapes];
}

/**
 * Dimensions from a box along a side of a room to the corners on both its hands; none to a corner that it stands in.
 *
 * @param side the room on its left hand; the box is told from its end, which is on the left of who looks at it.
 */
export function boxDimensions(
  frame: SheetFrame,
  side: FiguredSide,
  box: { readonly leftMm: number; readonly widthMm: number },
  sizeMm: number,
): readonly Shape[] {
  const [from, to] = [side.from, side.to].map(([x, y]) => toSheet(frame, planPoint(x, y))) as [
    SheetPoint,
    SheetPoint,
  ];
  const long = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (long === 0 || side.lengthMm <= 0) return [];
  const way = [(from[0] - to[0]) / long, (from[1] - to[1]) / long] as const;
  // The room is to the left of its side on plan, which on the sheet, where y goes down, is this way.
  const into = [-way[1], way[0]] as const;
  const on = (mm: number): SheetPoint => movedOnSheet(to, way, mm / frame.scale);
  const rightMm = box.leftMm + box.widthMm;
  return [[0, box.leftMm] as const, [rightMm, side.lengthMm] as const].flatMap(([aMm, bMm]) =>
    bMm - aMm < 1 ? [] : dimension([on(aMm), on(bMm)], into, { lengthMm: bMm - aMm, sizeMm }),
  );
}

/** From the wall's face to the label of a point that moves: beyond its dimensions and their figures. */
const LABEL_OFF_WALL = 14;
const LABEL_SIZE = 3.4;

/** The label of a point that is being moved, large, in the room before its place; empty where that is not on the plan. */
export function movingLabel(frame: SheetFrame, plan: Plan, place: Place, label: string): readonly Shape[] {
  const position = positionOfPlace(plan, place);
  if (position === null) return [];
  const wall = 'wall' in place ? plan.wallById.get(place.wall) : undefined;
  const into = wall !== undefined && 'wall' in place ? intoRoom(wall, place.side) : ([0, -1] as const);
  const [x, y] = movedOnSheet(toSheet(frame, position.at), into, LABEL_OFF_WALL);
  const look = { sizeMm: LABEL_SIZE, anchor: 'middle', strong: true } as const;
  return [words('text-new', sheetPoint(x, y + LABEL_SIZE * 0.35), label, look)];
}
