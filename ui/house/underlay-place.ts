import type { Underlay } from '#model/building.ts';
import { lengthOf, minus, plus, tidy, times, type Vector } from './vector.ts';

/** How a picture lies under the plan. */
export type Lying = Pick<Underlay, 'at' | 'scaleMmPerPx' | 'angleDeg'>;

const turned = ([x, y]: Vector, deg: number): Vector => {
  const rad = (deg * Math.PI) / 180;
  return [x * Math.cos(rad) - y * Math.sin(rad), x * Math.sin(rad) + y * Math.cos(rad)];
};

/** Where a place of a picture, px from its upper left corner, lies on the plan. */
export function onPlan({ at, scaleMmPerPx, angleDeg, widthPx, heightPx }: Underlay, [x, y]: Vector): Vector {
  const fromMiddle: Vector = [(x - widthPx / 2) * scaleMmPerPx, (heightPx / 2 - y) * scaleMmPerPx];
  return plus(at, turned(fromMiddle, angleDeg));
}

/** Two places closer than this are one, mm: nothing can be told from them. */
const APART_MM = 1;

const areApart = (a: Vector, b: Vector): boolean => lengthOf(minus(b, a)) >= APART_MM;

/** The half turn nearest nought: -180 to 180. */
const plainDeg = (deg: number): number => {
  const rest = ((((deg + 180) % 360) + 360) % 360) - 180;
  return Math.round(rest * 1000) / 1000 || 0;
};

/** A picture made larger or smaller about a place of the plan. */
function scaledAbout(lying: Lying, about: Vector, factor: number): Lying {
  const at = tidy(plus(about, times(minus(lying.at, about), factor)));
  return { ...lying, at, scaleMmPerPx: lying.scaleMmPerPx * factor };
}

/** A picture turned about a place of the plan, anticlockwise. */
function turnedAbout(lying: Lying, about: Vector, deg: number): Lying {
  const at = tidy(plus(about, turned(minus(lying.at, about), deg)));
  return { ...lying, at, angleDeg: plainDeg(lying.angleDeg + deg) };
}

/** So that two places on it are a length apart; the first stays where it is. Null where they are one place. */
export const toLength = (lying: Lying, a: Vector, b: Vector, lengthMm: number): Lying | null =>
  areApart(a, b) && lengthMm > 0 ? scaledAbout(lying, a, lengthMm / lengthOf(minus(b, a))) : null;

/** So that the line through two places on it runs along the plan or up it, whichever is nearer; the first stays. Null where they are one. */
export function levelled(lying: Lying, a: Vector, b: Vector): Lying | null {
  if (!areApart(a, b)) return null;
  const [x, y] = minus(b, a);
  const deg = (Math.atan2(y, x) * 180) / Math.PI;
  return turnedAbout(lying, a, Math.round(deg / 90) * 90 - deg);
}

/** So that what lay at one place lies at another. */
export const shifted = (lying: Lying, from: Vector, to: Vector): Lying => ({
  ...lying,
  at: tidy(plus(lying.at, minus(to, from))),
});

/** Turned about its middle to an angle, anticlockwise. */
export const turnedTo = (lying: Lying, deg: number): Lying => ({ ...lying, angleDeg: plainDeg(deg) });

/** As wide as said, about its middle. */
export const asWide = (lying: Lying & Pick<Underlay, 'widthPx'>, widthMm: number): Lying => ({
  at: lying.at,
  angleDeg: lying.angleDeg,
  scaleMmPerPx: widthMm / lying.widthPx,
});
