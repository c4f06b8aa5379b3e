import type { Plan } from './plan.ts';

/** A storey's room height between its finished floor and its ceiling, above the job's zero level. */
export interface RoomLevels {
  readonly storeyId: string;
  readonly floorMm: number;
  readonly ceilingMm: number;
}

/** The levels of floors and ceilings, from the lowest storey up. */
export function roomLevels(plan: Plan): readonly RoomLevels[] {
  return plan.storeys.map(({ storey }) => ({
    storeyId: storey.id,
    floorMm: storey.floorLevelMm,
    ceilingMm: storey.floorLevelMm + storey.heightMm,
  }));
}
