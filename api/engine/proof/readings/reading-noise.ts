/**
 * How far readings with a plug-in link go wrong, one spread each, Ω: at the probes anew with every reading; at the
 * link anew with every point; in what was nulled, once for a loop. Where readings themselves show more or less,
 * they are believed by and by. Judgement, no source.
 */
export const PROBE_OHM = 0.007;
export const CONTACT_OHM = 0.01;
export const NULL_OHM = 0.012;

/** By how many readings of its own a session must outweigh these. */
const PRIOR_COUNT = 2;

/** Square of the spread that rounding to a last digit gives. */
export const roundingSquare = (resolutionOhm: number): number => (resolutionOhm * resolutionOhm) / 12;

/** A square of a spread from what was seen, leaning on what is usual while little was seen. */
export function leaningSquare(usualSquare: number, sumOfSquares: number, count: number): number {
  return (PRIOR_COUNT * usualSquare + sumOfSquares) / (PRIOR_COUNT + Math.max(0, count));
}

/** Two loops' places of one point on the loop, with the loops' totals. */
export interface PlacePair {
  readonly fraction: number;
  readonly otherFraction: number;
  readonly totalOhm: number;
  readonly otherTotalOhm: number;
}

/**
 * The square of the probes' spread (rounding in it) as two loops' disagreement on places shows it.
 *
 * What runs evenly along the loop, such as an error of its total, is taken out before.
 */
export function probeSquare(pairs: readonly PlacePair[], usualSquare: number): number {
  const first = pairs[0];
  if (first === undefined) return usualSquare;
  const off = pairs.map(({ fraction, otherFraction }) => fraction - otherFraction);
  const at = pairs.map(({ fraction, otherFraction }) => (fraction + otherFraction) / 2);
  const meanOff = mean(off);
  const meanAt = mean(at);
  const spanSquare = at.reduce((sum, x) => sum + (x - meanAt) ** 2, 0);
  const slope =
    spanSquare === 0
      ? 0
      : at.reduce((sum, x, i) => sum + (x - meanAt) * ((off[i] ?? 0) - meanOff), 0) / spanSquare;
  // A place by two readings varies by half a reading's square over the total's.
  const perSquare = 0.5 / first.totalOhm ** 2 + 0.5 / first.otherTotalOhm ** 2;
  const sum = off.reduce(
    (total, each, i) => total + (each - meanOff - slope * ((at[i] ?? 0) - meanAt)) ** 2,
    0,
  );
  return leaningSquare(usualSquare, sum / perSquare, pairs.length - 2);
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
