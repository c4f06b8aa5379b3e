import type { Worked } from '#engine/connections/worked.ts';
import { type SheetFrame, type SheetPoint, sheetPoint, toSheet } from '#engine/plan/sheet-frame.ts';
import type { JoistCut } from '#engine/ways/joist-window.ts';
import { openedFloors } from '#engine/ways/opened-floors.ts';
import type { FloorPlaces } from '#engine/work/floors/floor-places.ts';
import { boxCorners, boxRound, type LabelPlacer, placesAround, textBox } from '../../label-placer.ts';
import { line, type Shape, words } from '../../scene.ts';
import type { DrawnCable } from '../cable-layer.ts';
import { LETTERS_MM } from './lettering.ts';

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
      sheetPoint(x - 2.5, y - 1.4),
      sheetPoint(x + 2.5, y - 1.4),
      sheetPoint(x + 2.5, y + 1.4),
      sheetPoint(x - 2.5, y + 1.4),
    ],
    true,
  );

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
      const mark = boardMark(toSheet(frame, board.at.at));
      if (mark.kind === 'line') free.take(boxRound(mark.points), 'cable');
      return mark;
    });

/** From a mark to the middle of its number, at its closest, mm. */
const NUMBER_NEAR_MM = 2.6;

/**
 * The numbers of a storey's joists and boards beside their marks, by which the lists name them. One that finds no free room is left to the
 * list, which says where it is.
 */
export function floorNumbers(
  { joists, boards }: FloorPlaces,
  storeyId: string,
  frame: SheetFrame,
  free: LabelPlacer,
): readonly Shape[] {
  const marked = [
    ...boards.map(({ mark, storeyId: storey, at }) => ({
      mark,
      storey,
      at: toSheet(frame, at.at),
      nearMm: 3.4,
    })),
    ...joists.map(({ mark, storeyId: storey, hole }) => ({
      mark,
      storey,
      at: toSheet(frame, hole.at),
      nearMm: NUMBER_NEAR_MM,
    })),
  ];
  return marked
    .filter(({ storey }) => storey === storeyId)
    .flatMap(({ mark, at, nearMm }) => {
      const place = placesAround(at, [0, -1], nearMm)
        .slice(0, 32)
        .find((middle) => free.isFreeOver('cables-and-walls', textBox(middle, mark, LETTERS_MM.notes)));
      if (place === undefined) return [];
      const box = textBox(place, mark, LETTERS_MM.notes);
      free.take(box);
      return [
        line('halo', boxCorners(box), true),
        words('text-soft', sheetPoint(place[0], place[1] + LETTERS_MM.notes * 0.35), mark, {
          sizeMm: LETTERS_MM.notes,
          anchor: 'middle',
        }),
      ];
    });
}
