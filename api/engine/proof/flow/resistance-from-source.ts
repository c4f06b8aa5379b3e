import { solveForward } from './envelope-cholesky.ts';
import type { FlowCore } from './prepare-core.ts';
import type { FlowPlan } from './prepare-flow.ts';

/**
 * The resistance between the source, all ends joined there, and each node: what 1 A drawn at that node alone drops.
 *
 * @returns Ω by node; NaN where a node is not reached.
 */
export function resistanceFromSource(plan: FlowPlan): Float64Array {
  const { network, ring, core, trees, unreached } = plan;
  const ohm = new Float64Array(network.nodeCount);
  if (ring !== null) {
    const { nodes, legs, firstShare } = ring;
    let alongOhm = 0;
    for (let i = 1; i < nodes.length; i += 1) {
      alongOhm += network.ohm[legs[i - 1] ?? 0] ?? 0;
      // Ra · Rb / (Ra + Rb): the share by the first leg is Rb over the whole.
      ohm[nodes[i] ?? 0] = alongOhm * (firstShare[i] ?? 0);
    }
  }
  if (core !== null) writeCoreOhms(core, ohm);
  for (let i = trees.legs.length - 1; i >= 0; i -= 1)
    ohm[trees.outer[i] ?? 0] = (ohm[trees.inner[i] ?? 0] ?? 0) + (network.ohm[trees.legs[i] ?? 0] ?? 0);
  for (let i = 0; i < unreached.length; i += 1) ohm[unreached[i] ?? 0] = Number.NaN;
  return ohm;
}

/** The diagonal of the inverse of the conductances: with factor L, the square of the length of L⁻¹ e. */
function writeCoreOhms({ nodes, rowOf, factor }: FlowCore, ohm: Float64Array): void {
  const rowOhm = new Float64Array(factor.size);
  const unit = new Float64Array(factor.size);
  for (let row = 0; row < factor.size; row += 1) {
    unit.fill(0);
    unit[row] = 1;
    solveForward(factor, unit, row);
    let sum = 0;
    for (let i = row; i < factor.size; i += 1) sum += (unit[i] ?? 0) ** 2;
    rowOhm[row] = sum;
  }
  for (const node of nodes) {
    const row = rowOf[node] ?? -1;
    ohm[node] = row < 0 ? 0 : (rowOhm[row] ?? 0);
  }
}
