import type { LoopName } from '#engine/proof/readings/inferred-circuit.ts';
import type { Reading } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { jobOfReadings, simulatedPoint } from './simulated-readings.ts';

type LoopReading = Extract<Reading, { kind: 'loop' }>;

/** What a test says of a point: cables counted, and Ω by loop from end A, from end B, crossed; null where not read. */
export interface SaidPoint {
  readonly id: string;
  readonly cables?: number;
  readonly read?: Partial<Record<LoopName, readonly [a: number | null, b: number | null, crossed?: number]>>;
}

let count = 0;

/** One loop reading taken before the work. */
export function loopReading(
  partial: Pick<LoopReading, 'loop' | 'from' | 'ohm'> & Partial<LoopReading>,
): Reading {
  count += 1;
  return { id: `told-${count}`, circuit: 'ring-one', kind: 'loop', phase: 'before', ...partial };
}

/** A job with what a test says of its readings; `ends` are r1, rn, r2. */
export function jobSaying(
  ends: Partial<Record<'L' | 'N' | 'cpc', number>>,
  points: readonly SaidPoint[],
): Job {
  const readings: Reading[] = [];
  for (const loop of ['L', 'N', 'cpc'] as const) {
    const ohm = ends[loop];
    if (ohm !== undefined) readings.push(loopReading({ loop, from: 'end-to-end', ohm }));
  }
  for (const { id, read } of points)
    for (const loop of ['L-N', 'L-cpc', 'L', 'N', 'cpc'] as const) {
      const [a, b, crossed] = read?.[loop] ?? [null, null];
      if (a !== null) readings.push(loopReading({ loop, from: 'A', linkedAt: id, ohm: a }));
      if (b !== null) readings.push(loopReading({ loop, from: 'B', linkedAt: id, ohm: b }));
      if (crossed !== undefined) readings.push(loopReading({ loop, from: 'crossed', at: id, ohm: crossed }));
    }
  return jobOfReadings(
    points.map(({ id, cables }) => simulatedPoint(id, cables)),
    readings,
  );
}

/** Exact linked readings of 2.5/1.5 mm² at a place on a ring, m, and along a spur. */
export const linkedAt = (
  loopM: number,
  alongM: number,
  spurM = 0,
): Required<Pick<Record<LoopName, readonly [number, number]>, 'L-N' | 'L-cpc'>> => ({
  'L-N': [0.01482 * (alongM + spurM), 0.01482 * (loopM - alongM + spurM)],
  'L-cpc': [0.01951 * (alongM + spurM), 0.01951 * (loopM - alongM + spurM)],
});

/** Exact readings end to end of a loop of 2.5/1.5 mm². */
export const endsOf = (loopM: number): Record<'L' | 'N' | 'cpc', number> => ({
  L: 0.00741 * loopM,
  N: 0.00741 * loopM,
  cpc: 0.0121 * loopM,
});
