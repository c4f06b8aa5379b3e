import type { Position } from '../plan/plane.ts';
import type { Mount, Route } from './route.ts';
import type { RunEnd } from './run.ts';

/** A place that a new cable can end at: its position, how its box sits in the wall, and what it is. */
export interface WayEnd {
  readonly position: Position;
  readonly mount: Mount;
  readonly kind: RunEnd['kind'];
}

/** What a way is chosen by: the least money, or the least disturbance of the house (money breaks ties). */
export type WayAim = 'pence' | 'mess';

/** What running one cable between two places takes, apart from what is done at its ends. */
export interface WayCost {
  /** Work, materials of the way and the usual cable along it, at list price and rate; whole thousandths of a penny. */
  readonly millipence: number;
  readonly minutes: number;
  /** Disturbance, in the norms' points. */
  readonly mess: number;
  /** Along the way, without ends and slack. */
  readonly routeMm: number;
  /** Only found by a way that an electrician would avoid: on the surface unasked, a floor that cannot be lifted, out of every zone. */
  readonly poor: boolean;
}

/** Where cable may go in one house, and what it costs there. Same ends, same answers, in either direction. */
export interface WaysOfHouse {
  /** From one end to each of others, in their order; null where nothing that is drawn leads there. */
  costs(from: WayEnd, to: readonly WayEnd[], aim: WayAim): readonly (WayCost | null)[];
  /** The way itself; always answers, at worst with an assumed one. */
  route(from: WayEnd, to: WayEnd, aim: WayAim): Route;
}
