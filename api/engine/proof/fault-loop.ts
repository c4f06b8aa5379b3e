import { withOhm } from './flow/prepare-flow.ts';
import { resistanceFromSource } from './flow/resistance-from-source.ts';
import type { ProofCase } from './proof-case.ts';

/**
 * R1 + R2 between the origin and each node with the circuit in service, Ω at 20 °C by node: a ring's both ways in
 * parallel, its line and its protective conductor each by itself. NaN where a node is not reached, and everywhere where
 * some cable has no protective conductor.
 */
export function loopToNodes({ circuit, plan, ohms }: ProofCase): Float64Array {
  const along = (ohm: Float64Array): Float64Array => resistanceFromSource(withOhm(plan, ohm));
  if (ohms.cpc === null) return new Float64Array(circuit.nodes.length).fill(Number.NaN);
  const cpc = along(ohms.cpc);
  return along(ohms.line).map((lineOhm, node) => lineOhm + (cpc[node] ?? Number.NaN));
}
