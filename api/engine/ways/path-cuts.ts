import type { PlanWall } from '../plan/plan.ts';
import type { PlanPoint } from '../plan/plane.ts';

/** A straight line on plan: a place on it, and its unit vector. */
export interface PlanLine {
  readonly from: readonly [number, number];
  readonly direction: readonly [number, number];
}

/** A stretch of a line, the lower end first, mm. */
export type Stretch = readonly [lowMm: number, highMm: number];

/** A band by a wall: so far along it, and so far off its centre line to the left. */
export interface WallBand {
  readonly along: Stretch;
  readonly off: Stretch;
}

/** Distances along a line at which it passes the sides of a closed outline. */
export function outlineCutsMm(
  outline: readonly PlanPoint[],
  from: PlanPoint,
  direction: readonly [number, number],
): readonly number[] {
  return outline.flatMap((corner, index) => {
    const next = outline[(index + 1) % outline.length] ?? corner;
    const [x, y] = [next[0] - corner[0], next[1] - corner[1]];
    const cross = direction[0] * y - direction[1] * x;
    if (Math.abs(cross) < 1e-9) return [];
    return [((corner[0] - from[0]) * y - (corner[1] - from[1]) * x) / cross];
  });
}

/** Whether a direction leads through a wall rather than along it: more than about ten degrees off. */
export function isAcross(wall: PlanWall, direction: readonly [number, number]): boolean {
  return Math.abs(direction[0] * wall.leftNormal[0] + direction[1] * wall.leftNormal[1]) > 0.17;
}

/** The stretch of a line within a band by a wall, measured from the line's own place; null where it is in none of it. */
export function stretchInBand(
  { wall, direction, leftNormal }: PlanWall,
  line: PlanLine,
  { along, off }: WallBand,
): Stretch | null {
  const [x, y] = [line.from[0] - wall.from[0], line.from[1] - wall.from[1]];
  let [low, high] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (const [axis, [fromMm, toMm]] of [
    [direction, along],
    [leftNormal, off],
  ] as const) {
    const start = x * axis[0] + y * axis[1];
    const step = line.direction[0] * axis[0] + line.direction[1] * axis[1];
    if (Math.abs(step) < 1e-9) {
      if (start <= fromMm || start >= toMm) return null;
      continue;
    }
    const [a, b] = [(fromMm - start) / step, (toMm - start) / step];
    low = Math.max(low, Math.min(a, b));
    high = Math.min(high, Math.max(a, b));
  }
  return low < high ? [low, high] : null;
}

/** Stretches of a line inside a closed outline; even-odd. The line has one coordinate fixed, the other runs along it. */
export function insideOutline(
  outline: readonly (readonly [number, number])[],
  axis: 0 | 1,
  fixedMm: number,
): readonly Stretch[] {
  const other = axis === 0 ? 1 : 0;
  const cuts: number[] = [];
  let last = outline.at(-1);
  for (const next of outline) {
    if (last !== undefined && last[other] > fixedMm !== next[other] > fixedMm)
      cuts.push(
        last[axis] + ((fixedMm - last[other]) / (next[other] - last[other])) * (next[axis] - last[axis]),
      );
    last = next;
  }
  cuts.sort((a, b) => a - b);
  const stretches: Stretch[] = [];
  for (let index = 0; index + 1 < cuts.length; index += 2)
    stretches.push([cuts[index] ?? 0, cuts[index + 1] ?? 0]);
  return stretches;
}
