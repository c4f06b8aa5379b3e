import type { LegProof } from './circuit-proof.ts';
import type { FlowPlan } from './flow/prepare-flow.ts';
import { type FlowResult, newFlowResult, solveFlow } from './flow/solve-flow.ts';
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
export const flowUnder = (one: ProofCase, loadA: Float64Array, by: FlowPlan = one.plan): Flow =>
  flowOf(one, solved(by, loadA));

/** Of several loadings the one under which a cable carries the greatest share of what it may; of equal ones the first. */
export function worstFlow(one: ProofCase, loadings: readonly Float64Array[]): Flow {
  const results = loadings.map((loadA) => solved(one.plan, loadA));
  const shares = results.map((result) => heaviestShare(one, result));
  const worst = results[shares.indexOf(Math.max(...shares))] ?? newFlowResult(one.plan);
  return flowOf(one, worst);
}

function solved(plan: FlowPlan, loadA: Float64Array): FlowResult {
  const result = newFlowResult(plan);
  solveFlow(plan, loadA, result);
  return result;
}

/** How much of its capacity the most loaded cable carries; by current alone where no capacity is known. */
function heaviestShare({ izA }: ProofCase, { legA }: FlowResult): number {
  let most = 0;
  legA.forEach((signedA, leg) => {
    most = Math.max(most, Math.abs(signedA) / (izA[leg] ?? UNKNOWN_IZ_A));
  });
  return most;
}

/** So large that a cable of unknown capacity only decides among its like. */
const UNKNOWN_IZ_A = 1000;

function flowOf({ circuit, izA: capacities }: ProofCase, { legA, dropV }: FlowResult): Flow {
  const idAt = (node: number): string => circuit.nodes[node]?.id ?? circuit.circuitId;
  const legs = circuit.legs.map((leg, i): LegProof => {
    const signedA = legA[i] ?? 0;
    const [from, to] = signedA < 0 ? [leg.to, leg.from] : [leg.from, leg.to];
    const izA = capacities[i] ?? null;
    // Cable that no origin reaches carries something, but nobody knows what.
    const isReached = !Number.isNaN(dropV[leg.from]);
    const currentA = isReached ? Math.abs(signedA) : null;
    const share = izA === null || currentA === null ? null : currentA / izA;
    return { leg: leg.id, from: idAt(from), to: idAt(to), currentA, izA, share };
  });
  return { legs, dropV };
}
