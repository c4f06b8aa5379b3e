import { planPointOf } from '#engine/plan/plane.ts';
import { lineMeeting } from '#engine/plan/polygon.ts';
import type { Storey, Wall } from '#model/building.ts';
import { type Drawing, type Outcome, refused } from './drawing.ts';
import { partAtCorners } from './part-walls.ts';
import { soundly } from './soundly.ts';
import { leftOf, plus, tidy, times, type Vector } from './vector.ts';
import { directionOf, isParallel, isSamePlace, runOf } from './wall-line.ts';
import { withPlacesKept } from './wall-places.ts';

/**
 * Moves a wall, with all that go on from it in one line, across its line: to its left more than nought, mm. Walls that meet
 * it get longer or shorter; what stands on it goes with it.
 */
export function moveWall(
  drawing: Drawing,
  { wallId, byMm }: { readonly wallId: string; readonly byMm: number },
): Outcome {
  const { job, storey } = drawing;
  const wall = storey.walls.find(({ id }) => id === wallId);
  if (wall === undefined) return refused('That wall is not there any more.');
  const by = times(leftOf(directionOf(wall)), byMm);
  return soundly(storey, () => {
    withPlacesKept(job, storey, () => moveEnds(storey, runOf(storey, wall), by));
    return partAtCorners(drawing);
  });
}

/** Moves a corner with every wall that meets there. */
export function moveCorner(
  drawing: Drawing,
  { at, to }: { readonly at: Vector; readonly to: Vector },
): Outcome {
  const { job, storey } = drawing;
  return soundly(storey, () => {
    withPlacesKept(job, storey, () => {
      for (const { wall, end } of endsAt(storey, at)) wall[end] = tidy(to);
    });
    return partAtCorners(drawing);
  });
}

/**
 * Moves the ends of walls of a run, and with them every wall that ends there: along its own line where all that meet the
 * run at that corner lie in one, else as the run does.
 */
export function moveEnds(storey: Storey, run: readonly Wall[], by: Vector): void {
  const direction = directionOf(run[0] ?? { from: [0, 0], to: [1, 0] });
  const corners: Vector[] = [];
  for (const { from, to } of run)
    for (const [x, y] of [from, to])
      if (!corners.some((one) => isSamePlace(one, [x, y]))) corners.push([x, y]);
  const moved = corners.map((corner) => ({
    ends: endsAt(storey, corner),
    to: cornerAfter(storey, { corner, by, direction }),
  }));
  for (const { ends, to } of moved) for (const { wall, end } of ends) wall[end] = [...to];
}

/** Where a corner comes to lie when walls of a direction that end there move: along what meets them, where all of that lies in one line. */
export function cornerAfter(storey: Pick<Storey, 'walls'>, slide: Slide): [number, number] {
  const meeting = endsAt(storey, slide.corner).filter(
    ({ wall }) => !isParallel(slide.direction, directionOf(wall)),
  );
  return tidy(
    slid(
      slide,
      meeting.map(({ wall }) => directionOf(wall)),
    ),
  );
}

/** A corner, how its walls move, and which way they run. */
interface Slide {
  readonly corner: Vector;
  readonly by: Vector;
  readonly direction: Vector;
}

/** Where a corner of a moved run comes to lie. */
function slid({ corner, by, direction }: Slide, meeting: readonly Vector[]): Vector {
  const straight = plus(corner, by);
  const [first] = meeting;
  if (first === undefined || meeting.some((one) => !isParallel(first, one))) return straight;
  const [x, y] = direction;
  return lineMeeting(planPointOf([...corner]), [...first], planPointOf([...straight]), [x, y]) ?? straight;
}

/** The ends of walls at a corner. */
export const endsAt = (
  { walls }: Pick<Storey, 'walls'>,
  corner: Vector,
): readonly { readonly wall: Wall; readonly end: 'from' | 'to' }[] =>
  walls.flatMap((wall) =>
    (['from', 'to'] as const).filter((end) => isSamePlace(wall[end], corner)).map((end) => ({ wall, end })),
  );
