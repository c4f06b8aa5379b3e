import { disconnectionTimes } from '#data/standards/disconnection-times.ts';
import type { Supply } from '#model/installation.ts';

/** What decides how fast a circuit has to be disconnected. */
export interface FaultedCircuit {
  readonly earthing: NonNullable<Supply['earthing']>;
  /** Rating of the circuit's device. */
  readonly ratingA: number;
  readonly hasSocketOutlets: boolean;
}

/** Ratings up to which a circuit counts as a final one. Source: BS 7671 411.3.2.2, from memory. */
const FINAL_UP_TO_A = { sockets: 63, fixed: 32 } as const;

/**
 * Longest time to disconnect a fault to earth at 230 V, s: 0.4 in TN and 0.2 in TT for final circuits, 5 and 1
 * for what is larger.
 * Source: BS 7671 411.3.2.2 to 411.3.2.4, Table 41.1.
 */
export function disconnectionTimeS({ earthing, ratingA, hasSocketOutlets }: FaultedCircuit): number {
  const system = earthing === 'TT' ? 'TT' : 'TN';
  const isFinal = ratingA <= (hasSocketOutlets ? FINAL_UP_TO_A.sockets : FINAL_UP_TO_A.fixed);
  const circuit = isFinal ? 'final' : 'other';
  const row = disconnectionTimes.rows.find((each) => each.system === system && each.circuit === circuit);
  return (row ?? disconnectionTimes.rows[0]).timeS;
}
