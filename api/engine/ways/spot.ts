import type { Position } from '../plan/plane.ts';

/** A place in the house, mm: x and y on plan, z above the job's zero level. */
export type Spot = readonly [xMm: number, yMm: number, zMm: number];

/** From one spot to another, mm along each axis; also a direction, then of length 1. */
export type Vector = readonly [x: number, y: number, z: number];

/** Where a position is, apart from its storey and wall. */
export const spotOf = ({ at, levelMm }: Position): Spot => [at[0], at[1], levelMm];

/** The way from one spot to another. */
export const between = (a: Spot, b: Spot): Vector => [b[0] - a[0], b[1] - a[1], b[2] - a[2]];

/** Scalar product. */
export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** Length of a way, mm. */
export const lengthOf = (vector: Vector): number => Math.hypot(...vector);

/** A direction; null where both spots are one. */
export function directionOf(a: Spot, b: Spot): Vector | null {
  const vector = between(a, b);
  const lengthMm = lengthOf(vector);
  return lengthMm < 1e-6 ? null : [vector[0] / lengthMm, vector[1] / lengthMm, vector[2] / lengthMm];
}

/** Two ways that part by less than 2.6° are drawn as one. Common practice, no source. */
const STRAIGHT_COSINE = 0.999;

/** Whether a way goes on as it came. */
export const goesOn = (a: Vector, b: Vector): boolean => dot(a, b) >= STRAIGHT_COSINE;

/** Whether two ways lie alike, one way round or the other. */
export const isParallel = (a: Vector, b: Vector): boolean => Math.abs(dot(a, b)) >= STRAIGHT_COSINE;

/** The spot so far along a way of this direction. */
export const along = (from: Spot, direction: Vector, alongMm: number): Spot => [
  from[0] + direction[0] * alongMm,
  from[1] + direction[1] * alongMm,
  from[2] + direction[2] * alongMm,
];

/** How far a spot is off the line through another, mm. */
export function offLineMm(from: Spot, direction: Vector, spot: Spot): number {
  const vector = between(from, spot);
  return Math.sqrt(Math.max(0, dot(vector, vector) - dot(vector, direction) ** 2));
}
