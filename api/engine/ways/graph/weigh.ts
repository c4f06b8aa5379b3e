import type { WayAim } from '../way-cost.ts';
import type { NetEdge } from './net-edge.ts';

/** How ways are weighed for one cable: what is sought, and whether an end of it is on the surface already. */
export interface Weighing {
  readonly aim: WayAim;
  readonly surface: boolean;
  /** A kind of way that is avoided, or all voids. */
  readonly avoid?: string;
  /** For cable that is there already: nobody knows what its fitter thought of joists, insulation, party walls and nails. */
  readonly asFound?: boolean;
}

/** A millimetre of a way that is avoided weighs like so many thousandths of a penny (£1,000 a metre). */
const POOR_MILLIPENCE_PER_MM = 100_000;
/** What is only not liked is avoided a hundredth as much (£10 a metre). Common practice, no source. */
const UNLIKED_SHARE = 0.01;
/** A joist crossed where it may not be cut weighs like so much of a way that is avoided, mm. */
const UNFIT_MM = 1000;
/** Shortest among the cheapest: lengths come after money. */
const LENGTHS = 4096;
/** Money comes after disturbance. */
const MONEY = 1e5;

/**
 * A weight to be added up along a way; whole numbers, so that sums are the same in any order. By pence: money first,
 * then length. By mess: disturbance first, then money to the penny. A way that is avoided costs so much more that it is
 * only taken where there is no other.
 */
export function weightOf(
  { measure, way, join }: Pick<NetEdge, 'measure' | 'way' | 'join'>,
  { aim, surface, avoid, asFound }: Weighing,
): number {
  const isAvoided = avoid !== undefined && way?.startsWith(avoid) === true;
  const laidMm =
    asFound === true ? 0 : measure.warmMm + measure.unlikedMm * UNLIKED_SHARE + measure.unfit * UNFIT_MM;
  const unaskedMm = (surface ? 0 : measure.surfaceMm) + (isAvoided ? measure.lengthMm : 0);
  const poorMm = measure.poorMm + unaskedMm + laidMm;
  const avoided = Math.round(poorMm * POOR_MILLIPENCE_PER_MM);
  // Of two ways that are alike the one with fewer turns.
  const turn = join === null ? 0 : 1;
  if (aim === 'pence')
    return (Math.round(measure.millipence) + avoided) * LENGTHS + Math.round(measure.lengthMm) + turn;
  const mess = Math.round(measure.mess * 1000) + Math.round(avoided / 1000);
  return mess * MONEY + Math.round(measure.millipence / 1000);
}
