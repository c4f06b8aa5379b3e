import type { Job } from '#model/job.ts';
import { type FittedCircuit, type FittedPoint, fitCircuit } from './fit-circuit.ts';
import type { InferredLoop } from './inferred-circuit.ts';
import { type LoopReadings, loopReadings } from './loop-readings.ts';
import { loopOhmPerM, loopTotals, type MetreScale, metreScale } from './loop-totals.ts';
import { readChannels } from './read-channels.ts';

/** Everything that is worked out of a circuit's readings before it is put in words. */
export interface CircuitFit {
  readonly readings: LoopReadings;
  readonly loop: InferredLoop;
  readonly scale: MetreScale;
  readonly fitted: FittedCircuit;
  /** The ring's points that are placed, from end A, ties by id. */
  readonly ring: readonly PlacedPoint[];
}

/** A fitted point whose place is known. */
export type PlacedPoint = FittedPoint & { readonly placed: NonNullable<FittedPoint['placed']> };

export const isPlaced = (point: FittedPoint): point is PlacedPoint => point.placed !== null;

/** Fits a circuit to its readings. */
export function circuitFit(job: Job, circuitId: string): CircuitFit {
  const readings = loopReadings(job, circuitId);
  const scale = metreScale(job, circuitId);
  const loop = loopTotals(readings, scale);
  const first = readChannels(readings, loop)[0];
  const byChannel = first === undefined ? null : first.totalOhm / loopOhmPerM(scale, first.loop);
  const loopM = loop.lengthMm === null || loop.lengthMm === 0 ? (byChannel ?? 1) : loop.lengthMm / 1e3;
  const fitted = fitCircuit(readings, loop, loopM);
  return {
    readings,
    loop,
    scale,
    fitted,
    // Points come by id, and sorting is stable: ties stay in order of ids.
    ring: fitted.points
      .filter(isPlaced)
      .filter(({ spurConfidence }) => spurConfidence !== null && spurConfidence <= 0.5)
      .toSorted((a, b) => a.placed.fraction - b.placed.fraction),
  };
}
