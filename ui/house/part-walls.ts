import type { Wall } from '#model/building.ts';
import { type Drawing, done, type Outcome, refused } from './drawing.ts';
import { openingAcross, splitWall } from './split-wall.ts';
import type { Vector } from './vector.ts';
import { alongMm, isWithin } from './wall-line.ts';

/** Parts a wall where another meets it, on the very corner; nothing where that is at its end, or off it. Words where an opening is in the way. */
export function partAt({ job, storey, newId }: Drawing, wall: Wall, at: Vector): string | null {
  if (!isWithin(wall, at)) return null;
  const atMm = alongMm(wall, at);
  const across = openingAcross(wall, atMm);
  if (across !== null) return `A wall would meet another where ${across}.`;
  const rest = splitWall(job, storey, wall, { atMm, id: newId() });
  wall.to = [at[0], at[1]];
  rest.from = [at[0], at[1]];
  return null;
}

/** Parts every wall that another wall's end stands on, so that walls are parted at every junction. */
export function partAtCorners(drawing: Drawing): Outcome {
  const { walls } = drawing.storey;
  for (const at of walls.flatMap(({ from, to }) => [from, to]).map(([x, y]): Vector => [x, y]))
    for (const wall of [...walls]) {
      const blocked = partAt(drawing, wall, at);
      if (blocked !== null) return refused(blocked);
    }
  return done;
}
