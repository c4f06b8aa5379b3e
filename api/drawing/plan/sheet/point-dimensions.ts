import type { Worked } from '#engine/connections/worked.ts';
import { cornerDistances } from '#engine/plan/corners.ts';
import type { PlanWall } from '#engine/plan/plan.ts';
import type { WallSpot } from '#engine/plan/plane.ts';
import { faceNormal, pointOnFace } from '#engine/plan/position-of-place.ts';
import {
  directionOnSheet,
  type SheetFrame,
  type SheetPoint,
  sheetPoint,
  toSheet,
} from '#engine/plan/sheet-frame.ts';
import {
  boxCorners,
  boxRound,
  type LabelPlacer,
  overlapMm2,
  type Rectangle,
  textWidthMm,
} from '../../label-placer.ts';
import { movedOnSheet } from '../../moved-on-sheet.ts';
import { line, type Shape, words } from '../../scene.ts';
import { LETTERS_MM } from './lettering.ts';
import type { SheetLabels } from './sheet-labels.ts';

/** From a wall's face to its dimension lines, nearest first, mm on paper: beyond symbols and their labels. */
const OFFSETS_MM = [9.5, 12.5, 15.5, 18.5, 21.5, 24.5] as const;
/** Extension lines begin clear of the symbol, and end beyond the dimension line. */
const CLEAR_MM = 6.2;
const BEYOND_MM = 0.8;
/** Shorter on paper than this, a dimension is told in the list alone. */
const SHORTEST_MM = 3;

/** One dimension: from a point to a corner of its wall's face. */
interface Dimension {
  readonly from: SheetPoint;
  readonly to: SheetPoint;
  readonly into: readonly [number, number];
  readonly lengthMm: number;
}

/** The dimensions of a point to both its corners, the shorter first: one measures from the nearer. */
function dimensionsOf(worked: Worked, frame: SheetFrame, spot: WallSpot): readonly Dimension[] {
  const wall: PlanWall | undefined = worked.plan.wallById.get(spot.wallId);
  if (wall === undefined) return [];
  const on = (mm: number): SheetPoint => toSheet(frame, pointOnFace(wall, spot.side, mm));
  const into = directionOnSheet(faceNormal(wall, spot.side));
  const { leftMm, rightMm } = cornerDistances(worked.plan, spot);
  // Someone who looks at a wall's left face has its `to` end on the left hand.
  const toLeft = spot.side === 'left' ? 1 : -1;
  return [
    { lengthMm: leftMm, way: toLeft },
    { lengthMm: rightMm, way: -toLeft },
  ]
    .flatMap(({ lengthMm, way }) =>
      lengthMm === null || lengthMm / frame.scale < SHORTEST_MM
        ? []
        : [{ from: on(spot.alongMm), to: on(spot.alongMm + way * lengthMm), into, lengthMm }],
    )
    .toSorted((a, b) => a.lengthMm - b.lengthMm);
}

/** A dimension at an offset, with the room that its line and its figure take. */
interface Laid {
  readonly lines: readonly Shape[];
  /** On a ground of its own: lines that cross it are interrupted there. */
  readonly figureShapes: readonly Shape[];
  readonly line: Rectangle;
  readonly figure: Rectangle;
}

function laid({ from, to, into, lengthMm }: Dimension, offsetMm: number): Laid {
  const [a, b] = [movedOnSheet(from, into, offsetMm), movedOnSheet(to, into, offsetMm)];
  const text = String(Math.round(lengthMm));
  const isUpright = Math.abs(b[0] - a[0]) < Math.abs(b[1] - a[1]);
  const middle = sheetPoint((a[0] + b[0]) / 2, (a[1] + b[1]) / 2);
  const [half, rise] = [textWidthMm(text, LETTERS_MM.notes) / 2 + 0.4, LETTERS_MM.notes * 0.55];
  const [across, up] = isUpright ? [rise, half] : [half, rise];
  const figure = {
    leftMm: middle[0] - across,
    rightMm: middle[0] + across,
    topMm: middle[1] - up,
    bottomMm: middle[1] + up,
  };
  const drop = LETTERS_MM.notes * 0.35;
  const tick = ([x, y]: SheetPoint): Shape =>
    line('dimension', [sheetPoint(x - 0.7, y + 0.7), sheetPoint(x + 0.7, y - 0.7)]);
  const along = boxRound([a, b]);
  return {
    line: {
      leftMm: along.leftMm - (isUpright ? 0.3 : -0.6),
      rightMm: along.rightMm + (isUpright ? 0.3 : -0.6),
      topMm: along.topMm - (isUpright ? -0.6 : 0.3),
      bottomMm: along.bottomMm + (isUpright ? -0.6 : 0.3),
    },
    figure,
    lines: [
      line('dimension', [a, b]),
      line('dimension', [movedOnSheet(from, into, CLEAR_MM), movedOnSheet(a, into, BEYOND_MM)]),
      line('dimension', [movedOnSheet(to, into, 0.6), movedOnSheet(b, into, BEYOND_MM)]),
      tick(a),
      tick(b),
    ],
    figureShapes: [
      line('halo', boxCorners(figure), true),
      words(
        'text',
        sheetPoint(middle[0] + (isUpright ? drop : 0), middle[1] + (isUpright ? 0 : drop)),
        text,
        { sizeMm: LETTERS_MM.notes, anchor: 'middle', angleDeg: isUpright ? -90 : 0 },
      ),
    ],
  };
}

/**
 * Dimensions from a storey's new points to the corners on both hands of their wall's face, where there is room for them; the list of
 * points has all of them, and the labels tell which are not drawn. Their room is then taken.
 */
export function pointDimensions(
  worked: Worked,
  storeyId: string,
  frame: SheetFrame,
  { free, labels }: { readonly free: LabelPlacer; readonly labels: SheetLabels },
): readonly Shape[] {
  const lines: Rectangle[] = [];
  const wanted = worked.job.points.filter(({ status }) => status === 'wanted');
  const all = wanted.flatMap(({ id, label }) => {
    const position = worked.plan.positionOfPoint.get(id);
    if (position?.onWall === undefined || position.storeyId !== storeyId || worked.scheme === null) return [];
    return dimensionsOf(worked, frame, position.onWall).map((dimension) => ({ ...dimension, label }));
  });
  const drawn = all.flatMap((dimension) => {
    const place = OFFSETS_MM.map((offsetMm) => laid(dimension, offsetMm)).find(
      (one) =>
        free.isFreeOver('cables', one.line) &&
        free.isFreeOver('cables', one.figure) &&
        lines.every((other) => overlapMm2(one.line, other) < 0.5),
    );
    if (place === undefined) {
      labels.leaveOut(`${dimension.label}: ${Math.round(dimension.lengthMm)} to a corner`);
      return [];
    }
    lines.push(place.line);
    free.take(place.line, 'line');
    free.take(place.figure);
    return [place];
  });
  return [...drawn.flatMap((one) => one.lines), ...drawn.flatMap(({ figureShapes }) => figureShapes)];
}
