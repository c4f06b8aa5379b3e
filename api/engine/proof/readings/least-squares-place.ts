/** One equation: along·x + off·s = value, with the square of its spread. */
export interface PlaceEquation {
  readonly along: number;
  readonly off: number;
  readonly value: number;
  readonly square: number;
}

/** Where a point is and how far off the loop, as shares of the loop. */
export interface SolvedPlace {
  readonly fraction: number;
  readonly fractionSquare: number;
  readonly spurFraction: number;
  readonly spurSquare: number;
}

/**
 * Least squares for place and spur of one point, the place within the loop, the spur not negative.
 *
 * @param mayBeSpur false holds the spur at nought.
 * @returns null where the equations do not decide.
 */
export function leastSquaresPlace(
  equations: readonly PlaceEquation[],
  mayBeSpur: boolean,
): SolvedPlace | null {
  let [aa, as, ss, av, sv] = [0, 0, 0, 0, 0];
  for (const { along, off, value, square } of equations) {
    aa += (along * along) / square;
    as += (along * off) / square;
    ss += (off * off) / square;
    av += (along * value) / square;
    sv += (off * value) / square;
  }
  if (aa === 0) return null;
  if (mayBeSpur) {
    const size = aa * ss - as * as;
    if (size <= 1e-9 * aa * ss) return null;
    const spurFraction = (aa * sv - as * av) / size;
    if (spurFraction >= 0)
      return {
        fraction: within((ss * av - as * sv) / size),
        fractionSquare: ss / size,
        spurFraction,
        spurSquare: aa / size,
      };
  }
  return {
    fraction: within(av / aa),
    fractionSquare: 1 / aa,
    spurFraction: 0,
    spurSquare: ss > 0 ? 1 / ss : 0,
  };
}

const within = (fraction: number): number => Math.min(1, Math.max(0, fraction));
