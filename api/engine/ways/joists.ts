import type { Floor } from '#model/building.ts';
import { passesBeneath } from '../plan/passes-beneath.ts';
import type { PlanPoint } from '../plan/plane.ts';
import { joistAxes } from './joist-axes.ts';

/** Joist spacing where nobody measured it. Common practice, no source. */
export const JOIST_SPACING_MM = 400;
/** A path within about five degrees of the joists lies between them. */
const ALONG_SINE = 0.087;
/** A number this near a whole one is it. */
const WHOLE = 1e-6;

/** Unit vector across the joists, or null where their direction is unknown. */
const acrossJoists = (floor: Floor): readonly [number, number] | null => joistAxes(floor)?.across ?? null;

/** Whether a straight path lies between joists; false where their direction is unknown, the dearer case. */
export function liesAlongJoists(floor: Floor, from: PlanPoint, to: PlanPoint): boolean {
  const across = acrossJoists(floor);
  if (across === null) return false;
  const [x, y] = [to[0] - from[0], to[1] - from[1]];
  return Math.abs(x * across[0] + y * across[1]) <= ALONG_SINE * Math.hypot(x, y);
}

/**
 * How many joists a straight path crosses. Joists are taken to stand at whole multiples of their spacing from
 * the plan's origin; one exactly at `from` is not crossed, nor one at `to` unless `goesOn`, so that the parts
 * of a path add up to the whole. Unknown direction: as if they lay square across it.
 */
export function joistsCrossed(floor: Floor, from: PlanPoint, to: PlanPoint, goesOn = false): number {
  if (floor.build !== 'suspended-timber' || liesAlongJoists(floor, from, to)) return 0;
  const spacingMm = floor.joistSpacingMm ?? JOIST_SPACING_MM;
  const across = acrossJoists(floor);
  if (across === null) {
    const lengthMm = Math.hypot(to[0] - from[0], to[1] - from[1]);
    return Math.max(0, Math.ceil(lengthMm / spacingMm - 1e-9) - 1);
  }
  const a = (from[0] * across[0] + from[1] * across[1]) / spacingMm;
  const b = (to[0] * across[0] + to[1] * across[1]) / spacingMm;
  return wholeBetween(a, b) + (goesOn && isWhole(b) ? 1 : 0);
}

/** How many joists a straight path is cut through: none where cable passes beneath them, else all that it crosses. */
export const joistsCut = (floor: Floor, from: PlanPoint, to: PlanPoint): number =>
  passesBeneath(floor) ? 0 : joistsCrossed(floor, from, to);

/** A joist that a straight path meets. */
export interface JoistMet {
  /** Square to the joists, from the plan's origin, mm. */
  readonly joistMm: number;
  /** How far along the path, 0 to 1. */
  readonly share: number;
  /** Whether the path only touches it with an end. */
  readonly atEnd: boolean;
}

/** The joists that a straight path meets, in its order, those at its ends too; none where their direction is unknown. */
export function joistsMet(floor: Floor, from: PlanPoint, to: PlanPoint): readonly JoistMet[] {
  const across = acrossJoists(floor);
  if (across === null || floor.build !== 'suspended-timber' || liesAlongJoists(floor, from, to)) return [];
  const spacingMm = floor.joistSpacingMm ?? JOIST_SPACING_MM;
  const a = (from[0] * across[0] + from[1] * across[1]) / spacingMm;
  const b = (to[0] * across[0] + to[1] * across[1]) / spacingMm;
  const first = isWhole(a) ? Math.round(a) : a < b ? Math.ceil(a) : Math.floor(a);
  const step = a < b ? 1 : -1;
  const met: JoistMet[] = [];
  for (let joist = first; (b - joist) * step > -WHOLE; joist += step) {
    const atEnd = Math.abs(joist - a) < WHOLE || Math.abs(joist - b) < WHOLE;
    const share = Math.min(1, Math.max(0, (joist - a) / (b - a)));
    met.push({ joistMm: joist * spacingMm, share, atEnd });
  }
  return met;
}

/** Whole numbers strictly between two numbers; a number a hair off a whole one counts as it. */
function wholeBetween(a: number, b: number): number {
  const low = Math.min(a, b);
  const high = Math.max(a, b);
  const first = (isWhole(low) ? Math.round(low) : Math.floor(low)) + 1;
  const last = (isWhole(high) ? Math.round(high) : Math.ceil(high)) - 1;
  return Math.max(0, last - first + 1);
}

function isWhole(value: number): boolean {
  return Math.abs(value - Math.round(value)) < WHOLE;
}
