import { UNTOLD_LENGTH_MM } from '../ways/length-allowances.ts';
import type { Run } from '../ways/run.ts';

/** A length that is assumed, m, with its low and high ends. */
export interface LengthRange {
  readonly measuredM: number;
  readonly lowM: number;
  readonly highM: number;
}

/**
 * What is allowed for a cable with an end nobody has placed yet, m: a socket in the same room as its source,
 * at best beside it, at worst at the far corner and up a wall. Common practice, no source.
 */
const UNPLACED: LengthRange = { measuredM: UNTOLD_LENGTH_MM / 1e3, lowM: 2, highM: 15 };

/** The length of cable that a run takes, m, ends and slack included. */
export function cableLengthM(run: Run): LengthRange {
  if (run.lengthMm === null) return UNPLACED;
  const measuredM = run.lengthMm / 1e3;
  return { measuredM, lowM: (run.lowMm ?? run.lengthMm) / 1e3, highM: (run.highMm ?? run.lengthMm) / 1e3 };
}

/** How much shorter and longer than drawn a run may turn out, as ratios around 1. */
export function lengthRatios(run: Run): { readonly lowRatio: number; readonly highRatio: number } {
  const { measuredM, lowM, highM } = cableLengthM(run);
  if (measuredM === 0) return { lowRatio: 1, highRatio: 1 };
  return { lowRatio: Math.min(1, lowM / measuredM), highRatio: Math.max(1, highM / measuredM) };
}
