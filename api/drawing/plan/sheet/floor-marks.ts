import type { Worked } from '#engine/connections/worked.ts';
import type { Plan } from '#engine/plan/plan.ts';
import type { Position } from '#engine/plan/plane.ts';
import { isInside } from '#engine/plan/polygon.ts';
import {
  fromSheet,
  type SheetFrame,
  type SheetPoint,
  sheetPoint,
  toSheet,
} from '#engine/plan/sheet-frame.ts';
import { roomsOfStorey } from '#engine/plan/surroundings.ts';
import type { JoistCut } from '#engine/ways/joist-window.ts';
import { openedFloors } from '#engine/ways/opened-floors.ts';
import { floorPlaces } from '#engine/work/floors/floor-places.ts';
import { boxRound, type LabelPlacer } from '../../label-placer.ts';
import { line, type Shape } from '../../scene.ts';
import type { DrawnCable } from '../cable-layer.ts';
import { labelShapes, type SheetLabels } from './sheet-labels.ts';

/** Half of a board's mark, and how far it is moved at most, and by how much at a time, mm. */
const BOARD_MM = { wide: 2.5, high: 1.4 } as const;
const [MOVED_MM, MOVED_BY_MM] = [4, 0.4];

/** How a cut joist is marked, by what is cut into it: told apart by shape. */
export function cutMark(cut: JoistCut, [x, y]: SheetPoint): readonly Shape[] {
  const at = sheetPoint(x, y);
  switch (cut) {
    case 'hole':
      return [{ kind: 'circle', at, radiusMm: 0.9, ink: 'hole' }];
    case 'notch':
      return [
        line('notch', [sheetPoint(x - 1, y - 0.8), sheetPoint(x + 1, y - 0.8), sheetPoint(x, y + 0.9)], true),
      ];
    case 'unknown':
      return [{ kind: 'circle', at, radiusMm: 0.9, ink: 'hole-unknown' }];
    case 'neither':
      return [
        line('hole-barred', [sheetPoint(x - 1.1, y - 1.1), sheetPoint(x + 1.1, y + 1.1)]),
        line('hole-barred', [sheetPoint(x - 1.1, y + 1.1), sheetPoint(x + 1.1, y - 1.1)]),
      ];
  }
}

/** A place where a floor is opened: a board's end, broken lines. */
export const boardMark = ([x, y]: SheetPoint): Shape =>
  line(
    'board-up',
    [
      sheetPoint(x - BOARD_MM.wide, y - BOARD_MM.high),
      sheetPoint(x + BOARD_MM.wide, y - BOARD_MM.high),
      sheetPoint(x + BOARD_MM.wide, y + BOARD_MM.high),
      sheetPoint(x - BOARD_MM.wide, y + BOARD_MM.high),
    ],
    true,
  );

/**
 * Where the mark of an opened floor stands: on the place itself, or as close to it as it lies wholly on the floor of the room, off the face of
 * a wall that the cable comes up in.
 */
export function boardSpot(
  plan: Plan,
  { storeyId, at }: Pick<Position, 'storeyId' | 'at'>,
  frame: SheetFrame,
): SheetPoint {
  const here = toSheet(frame, at);
  // A place on a wall's face is on the edge of its room: the floor that is nearest is its own.
  const rooms = roomsOfStorey(plan, storeyId).filter(({ outline }) => outline.length > 0);
  const isOnFloor = ([x, y]: SheetPoint): boolean => {
    const corners = [-1, 1].flatMap((left) =>
      [-1, 1].map((up) => fromSheet(frame, sheetPoint(x + left * BOARD_MM.wide, y + up * BOARD_MM.high))),
    );
    return rooms.some(({ outline }) => corners.every((corner) => isInside(outline, corner)));
  };
  for (let byMm = 0; byMm <= MOVED_MM; byMm += MOVED_BY_MM)
    for (let turn = 0; turn < 8; turn++) {
      const angle = (turn * Math.PI) / 4;
      const spot = sheetPoint(here[0] + Math.cos(angle) * byMm, here[1] + Math.sin(angle) * byMm);
      if (isOnFloor(spot)) return spot;
    }
  return here;
}

/** The place on a drawn path that is nearest to another: cables that share a way are drawn side by side. */
function onPath(path: readonly SheetPoint[], at: SheetPoint): SheetPoint {
  let best = { place: at, far: Number.POSITIVE_INFINITY };
  path.forEach((b, i) => {
    const a = path[i - 1];
    if (a === undefined) return;
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const square = dx * dx + dy * dy;
    const share =
      square === 0 ? 0 : Math.min(1, Math.max(0, ((at[0] - a[0]) * dx + (at[1] - a[1]) * dy) / square));
    const place = sheetPoint(a[0] + dx * share, a[1] + dy * share);
    const far = Math.hypot(place[0] - at[0], place[1] - at[1]);
    if (far < best.far) best = { place, far };
  });
  return best.place;
}

/** Holes and notches of a storey's new cables, on the cables as drawn; their room is then taken. */
export const holeMarks = (
  cables: readonly DrawnCable[],
  storeyId: string,
  { frame, free }: { readonly frame: SheetFrame; readonly free: LabelPlacer },
): readonly Shape[] =>
  cables
    .filter(({ isFound }) => !isFound)
    .flatMap(({ run, path }) =>
      run.cuts
        .flatMap(({ holes }) => holes)
        .filter((hole) => hole.storeyId === storeyId)
        .flatMap((hole) => {
          const at = onPath(path, toSheet(frame, hole.at));
          free.take(boxRound([sheetPoint(at[0] - 1, at[1] - 1), sheetPoint(at[0] + 1, at[1] + 1)]));
          return cutMark(hole.judged, at);
        }),
    );

/** Where a storey's floor is opened, once for all cables that share the place; their room is then taken. */
export const boardMarks = (
  worked: Worked,
  storeyId: string,
  frame: SheetFrame,
  free: LabelPlacer,
): readonly Shape[] =>
  openedFloors(worked.runs, worked.plan)
    .filter(({ board }) => board.storeyId === storeyId)
    .map(({ board }) => {
      const mark = boardMark(boardSpot(worked.plan, board.at, frame));
      if (mark.kind === 'line') free.take(boxRound(mark.points), 'cable');
      return mark;
    });

/** Half of the room that the marks take, mm. */
const BOARD_HALF_MM = 1.5;
const JOIST_HALF_MM = 1;

/** The numbers of a storey's joists and boards beside their marks, by which the lists name them. What finds no room is told by the labels. */
export function floorNumbers(
  worked: Worked,
  storeyId: string,
  frame: SheetFrame,
  labels: SheetLabels,
): readonly Shape[] {
  const { joists, boards } = floorPlaces(worked);
  const marked = [
    ...boards.map(({ mark, storeyId: storey, at }) => ({
      ...{ mark, storey },
      at: boardSpot(worked.plan, at, frame),
      halfMm: BOARD_HALF_MM,
    })),
    ...joists.map(({ mark, storeyId: storey, hole }) => ({
      ...{ mark, storey },
      at: toSheet(frame, hole.at),
      halfMm: JOIST_HALF_MM,
    })),
  ];
  return marked
    .filter(({ storey }) => storey === storeyId)
    .flatMap(({ mark, at, halfMm }) => {
      const place = labels.place(mark, { at, halfMm });
      return place === null ? [] : labelShapes(place, mark, 'text-soft');
    });
}
