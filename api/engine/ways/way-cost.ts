import type { Position } from '../plan/plane.ts';
import type { Mount } from './route.ts';

/** A place that a new cable can end at: its position and how its box sits in the wall. */
export interface WayEnd {
  readonly position: Position;
  readonly mount: Mount;
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
