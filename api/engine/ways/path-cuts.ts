import { alongWallMm, offWallMm } from '../plan/along-wall.ts';
import type { PlanWall } from '../plan/plan.ts';
import type { PlanPoint } from '../plan/plane.ts';

/** A line that closes with another by less than this is level with it. */
const LEVEL_SINE = 0.01;

/** Distances along a line at which it passes a wall's two faces, its centre line and its ends. */
export function wallCutsMm(
  wall: PlanWall,
  from: PlanPoint,
  direction: readonly [number, number],
): readonly number[] {
  const [x, y] = [wall.wall.from[0] - from[0], wall.wall.from[1] - from[1]];
  const cutsMm: number[] = [];
  const { leftNormal, lengthMm } = wall;
  // Written out, for this is asked of every wall by every way.
  const facing = direction[0] * leftNormal[0] + direction[1] * leftNormal[1];
  if (Math.abs(facing) >= LEVEL_SINE) {
    const offMm = x * leftNormal[0] + y * leftNormal[1];
    const halfMm = wall.wall.thicknessMm / 2;
    cutsMm.push((offMm - halfMm) / facing, offMm / facing, (offMm + halfMm) / facing);
  }
  const along = direction[0] * wall.direction[0] + direction[1] * wall.direction[1];
  if (Math.abs(along) >= LEVEL_SINE) {
    const alongMm = x * wall.direction[0] + y * wall.direction[1];
    cutsMm.push(alongMm / along, (alongMm + lengthMm) / along);
  }
  return cutsMm;
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

/** Whether a place is in the thickness of a wall. */
export function isWithin(wall: PlanWall, at: PlanPoint): boolean {
  const [alongMm, offMm] = [alongWallMm(wall, at), offWallMm(wall, at)];
  // A millimetre inside, so that a cable along the face is not in the wall.
  return alongMm > 0 && alongMm < wall.lengthMm && Math.abs(offMm) < wall.wall.thicknessMm / 2 - 1;
}

/** Whether a direction leads through a wall rather than along it: more than about ten degrees off. */
export function isAcross(wall: PlanWall, direction: readonly [number, number]): boolean {
  return Math.abs(direction[0] * wall.leftNormal[0] + direction[1] * wall.leftNormal[1]) > 0.17;
}
