import type { Worked } from '#engine/connections/worked.ts';
import { type PlanPoint, planPoint } from '#engine/plan/plane.ts';
import { demoEstimate } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { type MeantCorner, meantCorner } from '../../../ui/way-drawing/meant-corner.ts';
import {
  begun,
  type DrawAsk,
  type DrawnWay,
  drawnOn,
  drawnWay,
  type WayTarget,
} from '../../../ui/way-drawing/way-draft.ts';

export const found: Worked = demoEstimate('saltglass-row').asFound.worked;
export const leg = (legId: string): WayTarget => ({ what: 'leg', legId });

/** A drawing that is there. */
export function drawn(worked: Worked, draft: Parameters<typeof drawnWay>[1]): DrawnWay {
  const way = drawnWay(worked, draft);
  if (way === null) throw new Error('There is no such cable.');
  return way;
}

export const begin = (target: WayTarget, worked: Worked = found): DrawnWay =>
  drawn(worked, begun(target, []));

type Ask = Exclude<DrawAsk, { do: 'begin' | 'end' }>;

/** A drawing after one thing after the other was done to it. */
export const ledOn = (way: DrawnWay, asks: readonly Ask[], worked: Worked = found): DrawnWay =>
  asks.reduce((now, ask) => drawn(worked, drawnOn(now, worked.plan, ask)), way);

/** The corner that a place means, on the plan of the storey where the way has got to unless told otherwise. */
export const meant = (
  way: DrawnWay,
  at: PlanPoint | readonly [number, number],
  { reachMm = 100, storeyId = way.here.storeyId, worked = found } = {},
): MeantCorner =>
  meantCorner({ plan: worked.plan, here: way.here, end: way.to, storeyId }, planPoint(at[0], at[1]), reachMm);

/** A drawing with the corner put down that a place means. */
export function cornerAt(way: DrawnWay, at: readonly [number, number], worked: Worked = found): DrawnWay {
  const { waypoints, whyNot } = meant(way, at, { worked });
  if (whyNot !== null) throw new Error(whyNot);
  return ledOn(way, [{ do: 'corner', waypoints }], worked);
}
