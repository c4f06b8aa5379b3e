/** A place or a way on plan, mm: x to the right, y up. */
export type Vector = readonly [xMm: number, yMm: number];

export const plus = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1]];
export const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1]];
export const times = (a: Vector, factor: number): Vector => [a[0] * factor, a[1] * factor];
export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1];
/** More than nought where b points to the left of a. */
export const cross = (a: Vector, b: Vector): number => a[0] * b[1] - a[1] * b[0];
export const lengthOf = (a: Vector): number => Math.hypot(a[0], a[1]);
/** A quarter turn anticlockwise. */
export const leftOf = (a: Vector): Vector => [-a[1], a[0]];
/** Of length one; along x where there is no length. */
export const unit = (a: Vector): Vector => {
  const length = lengthOf(a);
  return length === 0 ? [1, 0] : [a[0] / length, a[1] / length];
};

/** To the tenth of a millimetre, so that what is drawn twice is the same. */
export const tidy = (a: Vector): [number, number] => [tenth(a[0]), tenth(a[1])];
const tenth = (mm: number): number => Math.round(mm * 10) / 10 || 0;
