import type { Plan, PlanRoom } from '../plan/plan.ts';
import { type PlanPoint, planPoint } from '../plan/plane.ts';
import { roomAt } from '../plan/surroundings.ts';

/** A step to either side that is surely off a wall's face. */
const BESIDE_MM = 5;

/** The room that a stretch is in; along a wall's face, which is on the room's edge, the room that it looks into. */
export function roomBeside(
  plan: Plan,
  storeyId: string,
  [x, y]: PlanPoint,
  direction: readonly [number, number],
): PlanRoom | null {
  for (const mm of [0, BESIDE_MM, -BESIDE_MM]) {
    const room = roomAt(plan, storeyId, planPoint(x - direction[1] * mm, y + direction[0] * mm));
    if (room !== null) return room;
  }
  return null;
}
