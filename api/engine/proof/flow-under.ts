import type { LegProof } from './circuit-proof.ts';
import type { FlowPlan } from './flow/prepare-flow.ts';
import { newFlowResult, solveFlow } from './flow/solve-flow.ts';
import type { ProofCase } from './proof-case.ts';

/** The currents and volt drops under some loads. */
export interface Flow {
  readonly legs: readonly LegProof[];
  /** By node, not corrected; NaN where a node is not reached. */
  readonly dropV: Float64Array;
}

/**
 * Lets loads flow through a circuit.
 *
 * @param loadA A by node.
 * @param by the same circuit with something else open; absent: as it is.
 */
export function flowUnder(
  { circuit, input, plan }: ProofCase,
  loadA: Float64Array,
  by: FlowPlan = plan,
): Flow {
  const result = newFlowResult(by);
  solveFlow(by, loadA, result);
  const idAt = (node: number): string => circuit.nodes[node]?.id ?? circuit.circuitId;
  const legs = circuit.legs.map((leg, i): LegProof => {
    const signedA = result.legA[i] ?? 0;
    const [from, to] = signedA < 0 ? [leg.to, leg.from] : [leg.from, leg.to];
    const izA = leg.kind === 'fuse' ? null : (input.capacities.get(leg.id)?.izA ?? null);
    const currentA = Math.abs(signedA);
    return {
      leg: leg.id,
      from: idAt(from),
      to: idAt(to),
      currentA,
      izA,
      share: izA === null ? null : currentA / izA,
    };
  });
  return { legs, dropV: result.dropV };
}
