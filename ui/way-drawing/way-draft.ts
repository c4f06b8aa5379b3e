import type { Worked } from '#engine/connections/worked.ts';
import { distanceMm, type Position, planPointOf } from '#engine/plan/plane.ts';
import { facePosition, freePosition } from '#engine/plan/position-of-place.ts';
import { plainRoute } from '#engine/ways/find-run.ts';
import { pathBetween } from '#engine/ways/lay-runs.ts';
import type { Run, Segment } from '#engine/ways/run.ts';
import type { Waypoint } from '#model/cable.ts';
import { levelOf, type MoveKey, movesFrom, waypointAt } from './levels.ts';

/** The cable whose way is drawn: one that is there, or a new one of a scheme. */
export type WayTarget =
  | { readonly what: 'leg'; readonly legId: string }
  | { readonly what: 'run'; readonly schemeId: string; readonly runId: string };

/** A way being drawn by hand, before it is kept or dropped. */
export interface WayDraft {
  readonly target: WayTarget;
  /** What was put down, a step of the hand each: one step may go round several corners. */
  readonly steps: readonly (readonly Waypoint[])[];
  /** Whether the plan waits for the next corner. */
  readonly isDrawing: boolean;
  /** What was dropped last, so that it can be brought back; empty for nothing. */
  readonly dropped: WayDraft['steps'];
}

/** What can be done to a way that is drawn. */
export type DrawAsk =
  | { readonly do: 'begin'; readonly target: WayTarget }
  | { readonly do: 'corner'; readonly waypoints: readonly Waypoint[] }
  /** Up, down or through the wall, where the last corner is. */
  | { readonly do: 'move'; readonly by: MoveKey }
  /** To another height on the wall, mm above the floor. */
  | { readonly do: 'height'; readonly heightMm: number }
  | { readonly do: 'take-back' }
  | { readonly do: 'drop' }
  | { readonly do: 'bring-back' }
  /** Have the plan wait for corners, or choose things again. */
  | { readonly do: 'draw'; readonly on: boolean }
  /** Put the whole drawing away. */
  | { readonly do: 'end' };

/** A way that is drawn, with all that is said and shown of it. */
export interface DrawnWay extends WayDraft {
  /** The cable as it is taken to run now. */
  readonly run: Run;
  readonly from: Position;
  readonly to: Position;
  /** Its last corner, or where it begins. */
  readonly here: Position;
  readonly via: readonly Waypoint[];
  /** The corners in order, the beginning first. */
  readonly corners: readonly Position[];
  /** The whole way: what is drawn, then the rest as any way is found. */
  readonly segments: readonly Segment[];
  readonly drawnMm: number;
  /** From the last corner to the end, as found. */
  readonly restMm: number;
}

/** A drawing that goes on from the corners that are there. */
export const begun = (target: WayTarget, via: readonly Waypoint[]): WayDraft => ({
  target,
  steps: via.map((one) => [one]),
  isDrawing: true,
  dropped: [],
});

/** The cable that is drawn; null where it is not there any more. */
export const runOf = (worked: Worked, target: WayTarget): Run | null =>
  (target.what === 'leg'
    ? worked.foundRuns.get(target.legId)
    : worked.scheme?.id === target.schemeId
      ? worked.runs.find(({ id }) => id === target.runId)
      : undefined) ?? null;

/** Why the way of a cable cannot be drawn; null where it can. */
export function whyNotDrawn(run: Run | null): string | null {
  if (run === null) return 'the cable is not there';
  return run.from.position === null || run.to.position === null
    ? 'one of its ends has no place on the plan'
    : null;
}

/** Where a waypoint is; null on a storey that is not drawn. */
export function positionOfWaypoint(
  plan: Worked['plan'],
  { storey, at, heightMm, wall, side }: Waypoint,
): Position | null {
  const free = freePosition(plan, storey, planPointOf(at), heightMm);
  const own = wall === undefined ? undefined : plan.wallById.get(wall);
  if (free === null || own === undefined || side === undefined || heightMm < 0) return free;
  const [x, y] = [free.at[0] - own.wall.from[0], free.at[1] - own.wall.from[1]];
  const alongMm = x * own.direction[0] + y * own.direction[1];
  return { ...free, onWall: { wallId: own.wall.id, side, alongMm } };
}

const apartMm = (a: Position, b: Position): number =>
  Math.hypot(distanceMm(a.at, b.at), a.levelMm - b.levelMm);

/** A drawing with all that is shown of it; null where its cable is gone or has lost an end. */
export function drawnWay(worked: Worked, draft: WayDraft): DrawnWay | null {
  const run = runOf(worked, draft.target);
  const [from, to] = [run?.from.position ?? null, run?.to.position ?? null];
  if (run === null || from === null || to === null) return null;
  const via = draft.steps.flat();
  const { plan, tariff } = worked;
  const corners = [from, ...via.map((one) => positionOfWaypoint(plan, one)).filter((one) => one !== null)];
  const path = { plan, tariff, findRun: plainRoute };
  const segments = pathBetween(path, [run.from, run.to], { via });
  const wholeMm = segments.reduce((sum, { lengthMm }) => sum + lengthMm, 0);
  const drawnMm = corners.reduce((sum, one, i) => sum + apartMm(corners[i - 1] ?? one, one), 0);
  const here = corners.at(-1) ?? from;
  return {
    ...draft,
    run,
    from,
    to,
    here,
    via,
    corners,
    segments,
    drawnMm,
    restMm: Math.max(0, wholeMm - drawnMm),
  };
}

/** The waypoint that a step up, down or through the wall puts down; null where it cannot be done. */
function moved({ here, to }: DrawnWay, plan: Worked['plan'], by: MoveKey): Waypoint | null {
  return movesFrom(plan, here, to)[by].waypoint;
}

/** Plumb to another height of the same wall; null in a void, off the wall, or beyond floor and ceiling. */
function atHeight({ here }: DrawnWay, plan: Worked['plan'], heightMm: number): Waypoint | null {
  const roomMm = plan.storeyById.get(here.storeyId)?.storey.heightMm ?? 0;
  if (levelOf(plan, here).kind !== 'room' || here.onWall === undefined) return null;
  if (heightMm < 0 || heightMm > roomMm || Math.abs(heightMm - here.heightMm) < 1) return null;
  const there = facePosition(plan, here.onWall, heightMm);
  return there === null ? null : waypointAt({ ...there, at: here.at });
}

/** A drawing after one of the things that can be done to it; the same where that cannot be done. */
export function drawnOn(
  drawn: DrawnWay,
  plan: Worked['plan'],
  ask: Exclude<DrawAsk, { do: 'begin' | 'end' }>,
): WayDraft {
  const { target, steps, isDrawing, dropped } = drawn;
  const draft = { target, steps, isDrawing, dropped };
  const step = (waypoints: readonly Waypoint[]): WayDraft =>
    waypoints.length === 0 ? draft : { ...draft, steps: [...steps, waypoints], dropped: [] };
  switch (ask.do) {
    case 'corner':
      return step(ask.waypoints);
    case 'move':
    case 'height': {
      const waypoint = ask.do === 'move' ? moved(drawn, plan, ask.by) : atHeight(drawn, plan, ask.heightMm);
      return waypoint === null ? draft : step([waypoint]);
    }
    case 'take-back':
      return { ...draft, steps: steps.slice(0, -1) };
    case 'drop':
      return { ...draft, steps: [], dropped: steps };
    case 'bring-back':
      return { ...draft, steps: dropped, dropped: [] };
    case 'draw':
      return { ...draft, isDrawing: ask.on };
  }
}
