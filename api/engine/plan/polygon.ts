import { type PlanPoint, planPoint } from './plane.ts';

/**
 * Area inside a closed outline by a fan of triangles from its first corner, mm².
 *
 * @returns positive when the corners go round anticlockwise, negative when clockwise, 0 for less than three.
 */
export function signedAreaMm2(outline: readonly PlanPoint[]): number {
  const [first, ...rest] = outline;
  if (first === undefined) return 0;
  let doubled = 0;
  rest.forEach((corner, index) => {
    const next = rest[index + 1];
    if (next === undefined) return;
    // Differences from the first corner, so that an outline far from the origin loses no digits.
    doubled += (corner[0] - first[0]) * (next[1] - first[1]) - (next[0] - first[0]) * (corner[1] - first[1]);
  });
  return doubled / 2;
}

/** Whether a place is inside a closed outline; on its very edge it may be either. Even-odd rule. */
export function isInside(outline: readonly PlanPoint[], [x, y]: PlanPoint): boolean {
  let inside = false;
  let corner = outline.at(-1);
  if (corner === undefined) return false;
  for (const next of outline) {
    if (corner[1] > y !== next[1] > y) {
      const crossingX = corner[0] + ((y - corner[1]) / (next[1] - corner[1])) * (next[0] - corner[0]);
      if (x < crossingX) inside = !inside;
    }
    corner = next;
  }
  return inside;
}

/**
 * Where the straight lines through `a` (direction `u`) and `b` (direction `v`) meet.
 *
 * @returns null for lines within about one degree of parallel: their meeting point would be far away.
 */
export function lineMeeting(
  a: PlanPoint,
  u: readonly [number, number],
  b: PlanPoint,
  v: readonly [number, number],
): PlanPoint | null {
  const cross = u[0] * v[1] - u[1] * v[0];
  if (Math.abs(cross) < 0.0175) return null;
  const along = ((b[0] - a[0]) * v[1] - (b[1] - a[1]) * v[0]) / cross;
  return planPoint(a[0] + u[0] * along, a[1] + u[1] * along);
}
