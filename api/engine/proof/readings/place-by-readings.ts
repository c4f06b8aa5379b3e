/** A linked reading from each end of the opened ring. */
export interface EndReadings {
  /** Ω from end A and from end B to the link, without the leads. */
  readonly aOhm: number;
  readonly bOhm: number;
  /** Ω of the whole loop from end A to end B. */
  readonly totalOhm: number;
}

/** Where a point is by its readings from both ends. */
export interface PlaceByReadings {
  /** Along the loop from end A, 0 to 1 but for errors of reading; of a spur, where it leaves the loop. */
  readonly fraction: number;
  /** Cable off the loop as a share of the loop; a poor contact at the link adds to it, leads that were nulled too far take away. */
  readonly spurFraction: number;
}

/**
 * Where a point is on the loop and how far off it: A = r·(x + s), B = r·(L − x + s), total = r·L, so that
 * x ÷ L = (A − B + total) ÷ 2·total and s ÷ L = (A + B − total) ÷ 2·total.
 *
 * @returns null without a total above nought.
 * Source: circuit theory, derived here: the readings of two series resistances.
 */
export function placeByReadings({ aOhm, bOhm, totalOhm }: EndReadings): PlaceByReadings | null {
  if (!(totalOhm > 0)) return null;
  return {
    fraction: (aOhm - bOhm + totalOhm) / (2 * totalOhm),
    spurFraction: (aOhm + bOhm - totalOhm) / (2 * totalOhm),
  };
}
