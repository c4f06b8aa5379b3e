import type { Wall } from '#model/building.ts';
import type { Containment } from '#model/cable.ts';
import type { FloorOpening } from './floor-opening.ts';

/** What some work takes: whole or fractional thousandths of a penny at list price and rate, minutes, and points of disturbance. */
export interface WorkCost {
  readonly millipence: number;
  readonly minutes: number;
  readonly mess: number;
}

/** What a cable chased into masonry may lie in. */
export type Chased = Extract<Containment, 'capping' | 'oval' | 'none'>;

/** What chases and the holes round boxes are filled with. */
export type Filling = 'one-coat' | 'bonding-and-finish';

/** What a chase with several cables takes beside one with one. */
export interface SeveralInChase {
  /** The slot is so much deeper, mm. */
  readonly deeperMm: number;
  /** By the metre, with two and with three of the usual cable in it: what goes over them, and what it is filled with. */
  readonly more: readonly [two: WorkCost, three: WorkCost];
}

/** What ways cost, made from the library at the front door: `ways` knows no prices. Materials are in it, cable apart. */
export interface WayTariff {
  /** By the metre. */
  readonly thread: WorkCost;
  readonly clip: WorkCost;
  readonly channel: WorkCost;
  /** Each: the fitting where channel turns on a face, into a corner of the room, or round an edge that stands out. */
  readonly channelTurn: Readonly<Record<'flat' | 'internal' | 'external', WorkCost>>;
  readonly trench: WorkCost;
  /** What a cable chased into masonry lies in: it changes the installation method, and so the capacity. */
  readonly chased: Chased;
  readonly filling: Filling;
  /** By the metre and what the wall is made of; what protects the cable and the filling are in it. */
  readonly chase: Readonly<Record<Wall['core'], WorkCost>>;
  /** The same where cable lies in the gap behind a board, which alone is cut. */
  readonly chaseBoard: WorkCost;
  /** A chase with several cables in it. */
  readonly severalInChase: SeveralInChase;
  /** What air the cables lie in, °C; absent: 30, as in the tables of what they carry. */
  readonly ambientC?: number;
  /** Each. */
  readonly board: Readonly<Record<FloorOpening, WorkCost>>;
  readonly joist: WorkCost;
  /** A joist notched, with the plate over it. */
  readonly joistNotch: WorkCost;
  readonly stud: WorkCost;
  readonly wallHole: WorkCost;
  /** A drop in a stud wall. */
  readonly fish: WorkCost;
  /** The usual cable, by the metre of way. */
  readonly cableMillipencePerM: number;
}

export const noWork: WorkCost = { millipence: 0, minutes: 0, mess: 0 };

/** Some work, so many times or metres of it. */
export function times(cost: WorkCost, factor: number): WorkCost {
  return {
    millipence: cost.millipence * factor,
    minutes: cost.minutes * factor,
    mess: cost.mess * factor,
  };
}

/** Two pieces of work together. */
export function together(a: WorkCost, b: WorkCost): WorkCost {
  return {
    millipence: a.millipence + b.millipence,
    minutes: a.minutes + b.minutes,
    mess: a.mess + b.mess,
  };
}
