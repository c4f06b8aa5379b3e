import type { WayAim } from '../way-cost.ts';
import type { NetEdge } from './way-net.ts';

/** How ways are weighed for one cable: what is sought, and whether an end of it is on the surface already. */
export interface Weighing {
  readonly aim: WayAim;
  readonly surface: boolean;
  /** A kind of way that is avoided, or all voids. */
  readonly avoid?: string;
}

/** A millimetre of a way that is avoided weighs like so many thousandths of a penny (£100 a metre). */
const POOR_MILLIPENCE_PER_MM = 10_000;
/** Shortest among the cheapest: lengths come after money. */
const LENGTHS = 4096;
/** Money comes after disturbance. */
const MONEY = 1e5;

/**
 * A weight to be added up along a way; whole numbers, so that sums are the same in any order. By pence: money first,
 * then length. By mess: disturbance first, then money to the penny. A way that is avoided costs so much more that it is
 * only taken where there is no other.
 */
export function weightOf({ measure, way }: NetEdge, { aim, surface, avoid }: Weighing): number {
  const isAvoided = avoid !== undefined && way !== null && way.startsWith(avoid);
  const poorMm = measure.poorMm + (surface ? 0 : measure.surfaceMm) + (isAvoided ? measure.lengthMm : 0);
  const avoided = Math.round(poorMm * POOR_MILLIPENCE_PER_MM);
  if (aim === 'pence')
    return (Math.round(measure.millipence) + avoided) * LENGTHS + Math.round(measure.lengthMm);
  const mess = Math.round(measure.mess * 1000) + Math.round(avoided / 1000);
  return mess * MONEY + Math.round(measure.millipence / 1000);
}
