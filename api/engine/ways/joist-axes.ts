import type { Floor } from '#model/building.ts';
import { type PlanPoint, planPoint } from '../plan/plane.ts';
import { remembered } from '../plan/remembered.ts';

/** A plan turned so that its first coordinate runs along joists, or whatever else is taken for them, and its second across. */
export interface JoistAxes {
  /** Unit vector along the joists. */
  readonly along: readonly [number, number];
  /** Unit vector across them, to the left of it. */
  readonly across: readonly [number, number];
}

/** So that walls square to the joists are square to the axes, to the last digit. */
const clean = (value: number): number => (Math.abs(value) < 1e-12 ? 0 : value);

/** The axes whose first runs in a direction, degrees anticlockwise from x. */
export function axesAt(runDeg: number): JoistAxes {
  const angle = ((runDeg % 180) * Math.PI) / 180;
  const along = [clean(Math.cos(angle)), clean(Math.sin(angle))] as const;
  return { along, across: [-along[1], along[0]] };
}

/** The axes of a floor's joists; null where their direction is not known. */
export const joistAxes = remembered(({ joistsRunDeg }: Floor): JoistAxes | null =>
  joistsRunDeg === undefined ? null : axesAt(joistsRunDeg),
);

/** A place on plan by its two coordinates. */
export const atOf = ({ along, across }: JoistAxes, a: number, b: number): PlanPoint =>
  planPoint(along[0] * a + across[0] * b, along[1] * a + across[1] * b);

/** The two coordinates of a place on plan. */
export const inAxes = (
  { along, across }: JoistAxes,
  [x, y]: readonly [number, number],
): readonly [number, number] => [x * along[0] + y * along[1], x * across[0] + y * across[1]];
