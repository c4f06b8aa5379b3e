import type { Limits } from '#model/library.ts';
import type { Worked } from '../connections/worked.ts';
import type { CableCapacity } from './cable-capacity.ts';
import { type FlowPlan, prepareFlow } from './flow/prepare-flow.ts';
import { resistanceFromSource } from './flow/resistance-from-source.ts';
import { type CircuitOhms, circuitOhms, flowNetwork } from './leg-ohms.ts';
import type { ProofCircuit } from './proof-circuit.ts';
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
  readonly plan: FlowPlan;
  /** Of that, between the origin and each node, Ω; NaN where a node is not reached. */
  readonly resistanceOhm: Float64Array;
  /** What the handbook has its nodes draw, A by node. */
  readonly handbookA: Float64Array;
}

/** Makes ready what the scenarios of a circuit share. */
export function proofCase(input: ProofInput, circuit: ProofCircuit): ProofCase {
  const ohms = circuitOhms(circuit);
  const plan = prepareFlow(flowNetwork(circuit, ohms.drop));
  const resistanceOhm = resistanceFromSource(plan);
  return { input, circuit, ohms, plan, resistanceOhm, handbookA: handbookLoads(circuit, resistanceOhm) };
}
