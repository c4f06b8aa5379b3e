import type { Plan, PlanWall } from './plan.ts';
import { type PlanPoint, planPointOf } from './plane.ts';
import { JOIN_MM } from './room-outline.ts';

/** Gives the walls of a storey that may join at a place, in the plan's order: all that do, and perhaps some that end near it. */
export type WallsMeeting = (storeyId: string, at: PlanPoint) => readonly PlanWall[];

const cellOf = (mm: number): number => Math.floor(mm / JOIN_MM);
const STEPS = [-1, 0, 1];

/** The walls of a plan by where they end, so that nobody has to look through all of them; places without a wall are left out. */
export function wallsMeeting(wallById: Plan['wallById']): WallsMeeting {
  const byCell = new Map<string, Set<PlanWall>>();
  for (const wall of wallById.values())
    for (const at of wall.wall.core === 'open' ? [] : [wall.wall.from, wall.wall.to])
      for (const key of keysAround(wall.storeyId, planPointOf(at)))
        byCell.set(key, (byCell.get(key) ?? new Set()).add(wall));
  return (storeyId, at) => [...(byCell.get(`${storeyId} ${cellOf(at[0])} ${cellOf(at[1])}`) ?? [])];
}

/** The squares of the joining distance that a place is in or next to: whatever joins there is in one of them. */
const keysAround = (storeyId: string, [x, y]: PlanPoint): readonly string[] =>
  STEPS.flatMap((dx) => STEPS.map((dy) => `${storeyId} ${cellOf(x) + dx} ${cellOf(y) + dy}`));
