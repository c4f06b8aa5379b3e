import { cableLengthM } from '../takeoff/run-length.ts';
import type { Run } from '../ways/run.ts';

/** The new cable of a scheme, added up. */
export interface SchemeCable {
  /** As the bill takes it, mm, ends and slack included: runs of unknown length count with the typical length. */
  readonly cableMm: number;
  /** How many runs have no length of their own, since an end has no place yet. */
  readonly typicalRuns: number;
}

/** Adds up the runs of a scheme, each with the length that its cable is billed by. */
export function schemeCable(runs: readonly Run[]): SchemeCable {
  return {
    cableMm: runs.reduce((sum, run) => sum + (run.lengthMm ?? cableLengthM(run).measuredM * 1e3), 0),
    typicalRuns: runs.filter(({ lengthMm }) => lengthMm === null).length,
  };
}
