import type { Plan } from '#engine/plan/plan.ts';
import { planPointOf } from '#engine/plan/plane.ts';
import { lineMeeting } from '#engine/plan/polygon.ts';
import type { Storey } from '#model/building.ts';
import { GRID_MM } from './grid.ts';
import { cornersOf, wallsAt } from './house-parts.ts';
import { cross, dot, leftOf, minus, plus, times, type Vector } from './vector.ts';
import { moveForDepth, wallDepths } from './wall-depths.ts';
import type { Stretch } from './wall-line.ts';
import { directionOf, isParallel, isSamePlace, offMm, runOf } from './wall-line.ts';
import { wallMap } from './wall-map.ts';

const onGrid = (mm: number): number => Math.round(mm / GRID_MM) * GRID_MM;

/** How far a wall is moved, with the line that it was brought into. */
export interface SnappedMove {
  readonly byMm: number;
  /** From the other wall to this one; null where it lines up with none. */
  readonly guide: Stretch | null;
}

/**
 * Where a wall that is dragged across its line comes to rest: in line with another wall that runs the same way (middle to
 * middle or face to face) where one is within reach, else so that the room beside it is a multiple of 50 mm deep.
 */
export function snappedMove(
  storey: Pick<Storey, 'walls' | 'rooms'>,
  { wallId, byMm }: { readonly wallId: string; readonly byMm: number },
  reachMm: number,
  map: Plan['wallById'] = wallMap(storey),
): SnappedMove {
  const wall = storey.walls.find(({ id }) => id === wallId);
  if (wall === undefined) return { byMm, guide: null };
  const run = new Set(runOf(storey, wall));
  let best: SnappedMove | null = null;
  for (const other of storey.walls) {
    if (run.has(other) || !isParallel(directionOf(wall), directionOf(other))) continue;
    const middleMm = offMm(wall, other.from);
    const faceMm = (other.thicknessMm - wall.thicknessMm) / 2;
    for (const inLineMm of [middleMm, middleMm + faceMm, middleMm - faceMm])
      if (
        Math.abs(inLineMm - byMm) <= reachMm &&
        (best === null || Math.abs(inLineMm - byMm) < Math.abs(best.byMm - byMm))
      ) {
        const shift = times(leftOf(directionOf(wall)), inLineMm);
        best = {
          byMm: inLineMm,
          guide: { from: nearerEnd(other, wall), to: plus(nearerEnd(wall, other), shift) },
        };
      }
  }
  if (best !== null) return best;
  const [depth] = wallDepths(storey, wallId, map);
  if (depth === undefined) return { byMm: onGrid(byMm), guide: null };
  return { byMm: moveForDepth(depth, onGrid(depth.lengthMm + byMm * depth.sign)), guide: null };
}

/** The end of a wall that is nearer to another wall. */
function nearerEnd({ from, to }: Stretch, other: Stretch): Vector {
  const off = (at: Vector): number =>
    Math.min(...[other.from, other.to].map((end) => Math.hypot(...minus(end, at))));
  return off(from) <= off(to) ? from : to;
}

/** Where a corner that is dragged comes to rest, and the lines that it was brought on to. */
export interface SnappedCorner {
  readonly to: Vector;
  /** From the corners that it lines up with; two at most. */
  readonly guides: readonly Stretch[];
}

/** A line that a corner may be brought on to. */
interface GuideLine {
  readonly through: Vector;
  readonly way: Vector;
}

/**
 * Where a corner that is dragged comes to rest. A wall that meets it is brought square to what is at its other end, or into one
 * line with that; else the corner into line with another corner, across or up the plan. What is free still goes by steps
 * of 50 mm from where the line begins; where no line is within reach, by steps of 50 mm across and up the plan.
 *
 * @param at the corner before; its own walls and the place itself hold nothing.
 */
export function snappedCorner(
  storey: Pick<Storey, 'walls'>,
  { at, to }: { readonly at: Vector; readonly to: Vector },
  reachMm: number,
): SnappedCorner {
  const near = guideLines(storey, at)
    .map((line) => ({ line, offMm: Math.abs(cross(line.way, minus(to, line.through))) }))
    .filter(({ offMm: off }) => off <= reachMm)
    .toSorted((a, b) => a.offMm - b.offMm);
  const [first] = near;
  if (first === undefined) return { to: [onGrid(to[0]), onGrid(to[1])], guides: [] };
  for (const { line } of near.slice(1)) {
    if (isParallel(line.way, first.line.way)) continue;
    const met = meeting(first.line, line);
    if (met !== null && Math.hypot(...minus(met, to)) <= reachMm * 1.5)
      return { to: met, guides: [first.line, line].map(({ through }) => ({ from: through, to: met })) };
  }
  const { through, way } = first.line;
  const resting = plus(through, times(way, onGrid(dot(minus(to, through), way))));
  return { to: resting, guides: [{ from: through, to: resting }] };
}

const meeting = (a: GuideLine, b: GuideLine): Vector | null =>
  lineMeeting(planPointOf([...a.through]), [a.way[0], a.way[1]], planPointOf([...b.through]), [
    b.way[0],
    b.way[1],
  ]);

/** Lines square to and along what stands at the other ends of a corner's walls first, then those through other corners. */
function guideLines(storey: Pick<Storey, 'walls'>, at: Vector): readonly GuideLine[] {
  const own = wallsAt(storey, at);
  const square = own.flatMap((wall) => {
    const far = isSamePlace(wall.from, at) ? wall.to : wall.from;
    return wallsAt(storey, far)
      .filter((one) => one !== wall)
      .flatMap((one) => [directionOf(one), leftOf(directionOf(one))])
      .map((way) => ({ through: far, way }));
  });
  const inLine = cornersOf(storey)
    .filter((corner) => !isSamePlace(corner, at))
    .flatMap((through): GuideLine[] => [
      { through, way: [1, 0] },
      { through, way: [0, 1] },
    ]);
  return [...square, ...inLine];
}
