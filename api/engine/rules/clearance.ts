import type { Fixture } from '#model/building.ts';
import type { PointKind } from '#model/installation.ts';
import type { Plan } from '../plan/plan.ts';
import { distanceMm, type PlanPoint, type Position, planPoint, planPointOf } from '../plan/plane.ts';
import { isInside } from '../plan/polygon.ts';

/** A straight line on plan; both ends alike for a spot. */
export interface PlanLine {
  readonly from: PlanPoint;
  readonly to: PlanPoint;
}

/** Half the height of every plate, mm. Source: BS 4662 plates of 86 mm, from memory. */
export const HALF_PLATE_HEIGHT_MM = 43;

const HALF_TWIN_WIDTH_MM = 73;

/** Half the width of an accessory's plate, mm: 86 for one gang, 146 for two. Source: BS 4662, from memory. */
export function halfPlateWidthMm(kind: string): number {
  const twoGang: readonly PointKind[] = ['socket-twin', 'cooker-control', 'grid'];
  return twoGang.some((twin) => twin === kind) ? HALF_TWIN_WIDTH_MM : HALF_PLATE_HEIGHT_MM;
}

/** An accessory's plate seen on plan: a line along its wall, or a spot where it is on none. */
export function plateOnPlan(plan: Plan, position: Position, kind: string): PlanLine {
  const wall = position.onWall ? plan.wallById.get(position.onWall.wallId) : undefined;
  if (!wall) return { from: position.at, to: position.at };
  const half = halfPlateWidthMm(kind);
  const [dx, dy] = wall.direction;
  const [x, y] = position.at;
  return { from: planPoint(x - dx * half, y - dy * half), to: planPoint(x + dx * half, y + dy * half) };
}

/** Shortest distance on plan from a line to a fixture's outline, mm; nought where they touch or overlap. */
export function distanceToFixtureMm(line: PlanLine, fixture: Fixture): number {
  const corners = fixture.outline.map(planPointOf);
  const first = corners[0];
  if (!first) return Number.POSITIVE_INFINITY;
  if (corners.length >= 3 && isInside(corners, line.from)) return 0;
  const edges = corners.map((from, i) => ({ from, to: corners[(i + 1) % corners.length] ?? first }));
  return Math.min(...edges.map((edge) => lineDistanceMm(line, edge)));
}

/** Shortest distance between two straight lines on plan, mm; nought where they cross. */
export function lineDistanceMm(a: PlanLine, b: PlanLine): number {
  if (cross(a, b)) return 0;
  return Math.min(
    spotDistanceMm(a.from, b),
    spotDistanceMm(a.to, b),
    spotDistanceMm(b.from, a),
    spotDistanceMm(b.to, a),
  );
}

/** Gap between two ranges of height, mm; nought where they overlap. */
export function rangeGapMm(aLowMm: number, aHighMm: number, bLowMm: number, bHighMm: number): number {
  return Math.max(0, bLowMm - aHighMm, aLowMm - bHighMm);
}

function spotDistanceMm(spot: PlanPoint, line: PlanLine): number {
  const [dx, dy] = [line.to[0] - line.from[0], line.to[1] - line.from[1]];
  const squared = dx * dx + dy * dy;
  if (squared === 0) return distanceMm(spot, line.from);
  const along = ((spot[0] - line.from[0]) * dx + (spot[1] - line.from[1]) * dy) / squared;
  const share = Math.min(1, Math.max(0, along));
  return distanceMm(spot, planPoint(line.from[0] + share * dx, line.from[1] + share * dy));
}

function turn(a: PlanPoint, b: PlanPoint, c: PlanPoint): number {
  return Math.sign((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]));
}

/** Whether two lines cross at a spot inside both; touching ends are found by the distances. */
function cross(a: PlanLine, b: PlanLine): boolean {
  return (
    turn(a.from, a.to, b.from) * turn(a.from, a.to, b.to) < 0 &&
    turn(b.from, b.to, a.from) * turn(b.from, b.to, a.to) < 0
  );
}
