import type { Wall } from '#model/building.ts';
import type { PlanWall } from '../plan/plan.ts';
import type { Position } from '../plan/plane.ts';
import type { Segment } from './run.ts';

/** Stud spacing, timber or metal, which nobody has measured. Common practice, no source. */
const STUD_SPACING_MM = 600;
/** A place this near a stud, as a share of the spacing, is at it. */
const AT_STUD = 1e-6;

/** Whether a wall is built of studs, with a cavity behind its boards. */
function hasStuds({ core }: Pick<Wall, 'core'>): boolean {
  return core === 'timber-stud' || core === 'metal-stud';
}

/**
 * How many studs cable inside a wall crosses between two places along it, both measured from the wall's `from` on its
 * centre line. Studs are taken to stand at whole multiples of their spacing from there; one exactly at an end counts
 * where it is the end further from `from`, so that the parts of a path add up to the whole, and either direction gives
 * the same. 0 in a wall without studs.
 */
export function studsCrossed(wall: Pick<Wall, 'core'>, fromAlongMm: number, toAlongMm: number): number {
  if (!hasStuds(wall)) return 0;
  return Math.abs(studsUpTo(toAlongMm) - studsUpTo(fromAlongMm));
}

/** How many studs stand up to a place along a wall of studs, one exactly there with them. */
export function studsUpTo(alongMm: number): number {
  return Math.floor(alongMm / STUD_SPACING_MM + AT_STUD);
}

/** The studs that a stretch from one place to another crosses: none unless it lies in the cavity of a wall that both are on. */
export function studsOnWay(
  wall: PlanWall | undefined,
  medium: Segment['medium'],
  [from, to]: readonly [Position, Position],
): number {
  const [a, b] = [from.onWall, to.onWall];
  if (wall === undefined || medium !== 'stud-cavity') return 0;
  if (a?.wallId !== wall.wall.id || b?.wallId !== wall.wall.id) return 0;
  return studsCrossed(wall.wall, a.alongMm, b.alongMm);
}
