import type { Position } from '../plan/plane.ts';
import type { Mount, Route } from './route.ts';
import type { RunEnd } from './run.ts';

/** A place that a way can lead to: its position, and how the box there sits in the wall. */
export interface WayPlace {
  readonly position: Position;
  readonly mount: Mount;
}

/** A place that a new cable can end at, and what it is. */
export interface WayEnd extends WayPlace {
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

/** What ways in one house cost. Same ends, same answers, in either direction. */
export interface WaysOfHouse {
  /** From one end to each of others, in their order; null where nothing that is drawn leads there. */
  costs(from: WayEnd, to: readonly WayEnd[], aim: WayAim): readonly (WayCost | null)[];
  /** The way itself; always answers, at worst with an assumed one. */
  route(from: WayEnd, to: WayEnd, aim: WayAim): Route;
}
