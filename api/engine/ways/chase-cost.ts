import type { PlanWall } from '../plan/plan.ts';
import { fitsBehindBoard } from './chase-cut.ts';
import { CHASE_DEPTH_MM } from './lay-in-wall.ts';
import type { Segment } from './run.ts';
import type { WayTariff, WorkCost } from './way-tariff.ts';

/** What a metre of cable takes that is chased into a face of a wall: by what the wall is made of, or by the board that alone is cut. */
export const chaseCost = (
  tariff: Pick<WayTariff, 'chase' | 'chaseBoard'>,
  wall: PlanWall,
  side: Segment['side'],
): WorkCost =>
  fitsBehindBoard(wall, side, CHASE_DEPTH_MM) ? tariff.chaseBoard : tariff.chase[wall.wall.core];
