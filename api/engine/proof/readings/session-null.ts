/** One point's reading beyond what its place on the ring accounts for. */
export interface Excess {
  /** The point, as its index among the circuit's. */
  readonly point: number;
  readonly ohm: number;
  /** Square of its spread without the contact's, Ω². */
  readonly square: number;
}

/** By what a null is found. */
export interface NullBy {
  /** How likely each point is a spur, 0 to 1: it then says nothing of the null. */
  readonly spur: readonly number[];
  /** Square of a contact's spread, Ω². */
  readonly contactSquare: number;
  /** Square of how far a null is usually off, Ω². */
  readonly usualSquare: number;
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
 */
export function sessionNull(
  excesses: readonly Excess[],
  { spur, contactSquare, usualSquare }: NullBy,
): SessionNull {
  let weight = 1 / usualSquare;
  let sum = 0;
  for (const { point, ohm, square } of excesses) {
    const each = (1 - (spur[point] ?? 0)) / (square + contactSquare);
    weight += each;
    sum += each * ohm;
  }
  return { ohm: sum / weight, square: 1 / weight };
}

/** Where to start: the middle of what was read, since most points are on the ring. Nought for none. */
export function middleOf(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const half = (sorted.length - 1) / 2;
  return ((sorted[Math.floor(half)] ?? 0) + (sorted[Math.ceil(half)] ?? 0)) / 2;
}
