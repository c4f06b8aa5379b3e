/** One point's reading beyond what its place on the ring accounts for. */
export interface Excess {
  readonly ohm: number;
  /** Square of its spread, Ω². */
  readonly square: number;
  /** How likely the point is on the ring, 0 to 1. */
  readonly ringWeight: number;
}

/** What a session's leads were nulled wrong by, on one loop. */
export interface SessionNull {
  readonly ohm: number;
  /** Square of its spread, Ω². */
  readonly square: number;
}

/**
 * What all readings of a loop share beyond their places: leads nulled too far or too little, the link's own
 * resistance, half the error of the total. It is what the ring's majority reads too much, drawn towards nought.
 *
 * @param usualSquare square of how far a null is usually off, Ω².
 */
export function sessionNull(excesses: readonly Excess[], usualSquare: number): SessionNull {
  let weight = 1 / usualSquare;
  let sum = 0;
  for (const { ohm, square, ringWeight } of excesses) {
    weight += ringWeight / square;
    sum += (ringWeight * ohm) / square;
  }
  return { ohm: sum / weight, square: 1 / weight };
}

/** Where to start: the middle of what was read, since most points are on the ring. Nought for none. */
export function middleOf(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const half = (sorted.length - 1) / 2;
  return ((sorted[Math.floor(half)] ?? 0) + (sorted[Math.ceil(half)] ?? 0)) / 2;
}
