import type { Waypoint } from '#model/cable.ts';
import type { Point } from '#model/installation.ts';
import type { Plan } from '../plan/plan.ts';
import type { Position } from '../plan/plane.ts';
import type { Segment } from './run.ts';
import type { WayTariff } from './way-tariff.ts';

/** How an accessory is mounted; null when nobody said, which counts as flush. */
export type Mount = NonNullable<Point['mount']> | null;

/** A question for a path: from where to where, by which waypoints, at what tariff. */
export interface RouteRequest {
  readonly plan: Plan;
  readonly from: Position;
  readonly to: Position;
  /** Corners pinned by hand, in order from `from`; empty to have a path found. */
  readonly via: readonly Waypoint[];
  /** For cable that is there already: how long its path is known to be (a measured leg without its tails), or null. */
  readonly asFound?: { readonly knownMm: number | null };
  readonly fromMount: Mount;
  readonly toMount: Mount;
  readonly tariff: WayTariff;
}

/** A path, its stretches in order and joined end to end, and the same in words. */
export interface Route {
  readonly segments: readonly Segment[];
  readonly steps: readonly string[];
}

/** The interface behind which paths are found; always answers, at worst with an assumed path. */
export type FindRun = (request: RouteRequest) => Route;
