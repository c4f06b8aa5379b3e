import type { PlanWall } from './plan.ts';
import { type PlanPoint, planPoint } from './plane.ts';

/** How far along a wall's centre line a place is, from its `from`, mm; less than nought before it. */
export function alongWallMm({ wall, direction }: PlanWall, at: readonly [number, number]): number {
  return (at[0] - wall.from[0]) * direction[0] + (at[1] - wall.from[1]) * direction[1];
}

/** How far a place is off a wall's centre line, mm: to the left of it more than nought, to the right less. */
export function offWallMm({ wall, leftNormal }: PlanWall, at: readonly [number, number]): number {
  return (at[0] - wall.from[0]) * leftNormal[0] + (at[1] - wall.from[1]) * leftNormal[1];
}

/** The place that is so far along a wall and so far to the left of its centre line, mm. */
export function placeByWall(
  { wall, direction, leftNormal }: PlanWall,
  alongMm: number,
  offMm: number,
): PlanPoint {
  return planPoint(
    wall.from[0] + direction[0] * alongMm + leftNormal[0] * offMm,
    wall.from[1] + direction[1] * alongMm + leftNormal[1] * offMm,
  );
}
