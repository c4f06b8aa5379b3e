import type { Limits } from '#model/library.ts';
import type { Worked } from '../connections/worked.ts';
import type { CableCapacity } from './cable-capacity.ts';
import type { FlowNetwork } from './flow/flow-network.ts';
import { type FlowPlan, prepareFlow } from './flow/prepare-flow.ts';
import { resistanceFromSource } from './flow/resistance-from-source.ts';
import { type CircuitOhms, circuitOhms, flowNetwork } from './leg-ohms.ts';
import type { ProofCircuit } from './proof-circuit.ts';
import { type Ring, ringOf } from './ring-walk.ts';
import { handbookLoads } from './scenarios.ts';

/** What proofs are made with. */
export interface ProofInput {
  readonly worked: Worked;
  /** By run id for new cable; for cable found by its edge. */
  readonly capacities: ReadonlyMap<string, CableCapacity>;
  readonly limits: Limits;
}

/** One circuit with what its scenarios share. */
export interface ProofCase {
  readonly input: ProofInput;
  readonly circuit: ProofCircuit;
  readonly ohms: CircuitOhms;
  /** The circuit as a current finds it: by tabulated volt drops. */
  readonly network: FlowNetwork;
  readonly plan: FlowPlan;
  /** Of that, between the origin and each node, Ω; NaN where a node is not reached. */
  readonly resistanceOhm: Float64Array;
  /** What the handbook has its nodes draw, A by node. */
  readonly handbookA: Float64Array;
  /** By leg, what it may carry as installed, A; null where that is not known, and for fuses. */
  readonly izA: readonly (number | null)[];
  /** Null where the circuit is no ring. */
  readonly ring: Ring | null;
}

/** Makes ready what the scenarios of a circuit share. */
export function proofCase(input: ProofInput, circuit: ProofCircuit): ProofCase {
  const ohms = circuitOhms(circuit);
  const network = flowNetwork(circuit, ohms.drop);
  const plan = prepareFlow(network);
  const resistanceOhm = resistanceFromSource(plan);
  const izA = circuit.legs.map(({ id, kind }) =>
    kind === 'fuse' ? null : (input.capacities.get(id)?.izA ?? null),
  );
  const handbookA = handbookLoads(circuit, resistanceOhm);
  return { input, circuit, ohms, network, plan, resistanceOhm, handbookA, izA, ring: ringOf(circuit) };
}
