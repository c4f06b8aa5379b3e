import { solveBackward, solveForward } from './envelope-cholesky.ts';
import type { FlowCore } from './prepare-core.ts';
import type { FlowPlan } from './prepare-flow.ts';

/** How current flows; written again by every solving. */
export interface FlowResult {
  /** A by leg, above 0 where it flows from `from` to `to`. */
  readonly legA: Float64Array;
  /** V below the source by node; NaN where a node is not reached. */
  readonly dropV: Float64Array;
  /** What a mesh is worked out in: by row of its matrix; empty otherwise. */
  readonly rowV: Float64Array;
  /** What passes its links of no resistance, and what they are asked for by node; null without such links. */
  readonly links: { readonly loadA: Float64Array; readonly result: FlowResult } | null;
}

/** Room for the result of a plan's flows. */
export function newFlowResult({ network, core, links }: FlowPlan): FlowResult {
  return {
    legA: new Float64Array(network.from.length),
    dropV: new Float64Array(network.nodeCount).fill(Number.NaN),
    rowV: new Float64Array(core?.factor.size ?? 0),
    links:
      links === null ? null : { loadA: new Float64Array(network.nodeCount), result: newFlowResult(links) },
  };
}

/**
 * Lets loads flow: trees folded to their inner ends, the loop or mesh solved, trees unfolded. Nothing is allocated;
 * the effort grows with the number of legs, and in a mesh with its size times the square of its width.
 *
 * @param loadA A drawn, by node; loads at the source and at nodes that nothing reaches are ignored.
 * @param result made for this plan.
 */
export function solveFlow(plan: FlowPlan, loadA: Float64Array, result: FlowResult): void {
  const { network, unreached, ring, core } = plan;
  const { legA, dropV } = result;
  legA.fill(0);
  // Until its potential is known, a node's place holds what the node and all behind it draw.
  for (let node = 0; node < network.nodeCount; node += 1) dropV[node] = loadA[node] ?? 0;
  foldTrees(plan, result);
  if (ring !== null) solveRing(plan, result);
  if (core !== null) solveCore(plan, core, result);
  dropV[network.source] = 0;
  unfoldTrees(plan, result);
  for (let i = 0; i < unreached.length; i += 1) dropV[unreached[i] ?? 0] = Number.NaN;
}

function foldTrees({ network, trees }: FlowPlan, { legA, dropV }: FlowResult): void {
  const { legs, outer, inner } = trees;
  for (let i = 0; i < legs.length; i += 1) {
    const [leg, from, to] = [legs[i] ?? 0, inner[i] ?? 0, outer[i] ?? 0];
    const currentA = dropV[to] ?? 0;
    legA[leg] = network.from[leg] === from ? currentA : -currentA;
    dropV[from] = (dropV[from] ?? 0) + currentA;
  }
}

function unfoldTrees({ network, trees }: FlowPlan, { dropV }: FlowResult): void {
  const { legs, outer, inner } = trees;
  for (let i = legs.length - 1; i >= 0; i -= 1) {
    const to = outer[i] ?? 0;
    dropV[to] = (dropV[inner[i] ?? 0] ?? 0) + (network.ohm[legs[i] ?? 0] ?? 0) * (dropV[to] ?? 0);
  }
}

/** The current by the first leg is each load's share by way of it; every node then takes its load off. */
function solveRing({ network, ring }: FlowPlan, { legA, dropV }: FlowResult): void {
  if (ring === null) return;
  const { nodes, legs, firstShare } = ring;
  let currentA = 0;
  for (let i = 1; i < nodes.length; i += 1) currentA += (dropV[nodes[i] ?? 0] ?? 0) * (firstShare[i] ?? 0);
  let sumV = 0;
  for (let i = 0; i < nodes.length; i += 1) {
    const leg = legs[i] ?? 0;
    legA[leg] = network.from[leg] === nodes[i] ? currentA : -currentA;
    const next = nodes[i + 1];
    if (next === undefined) return;
    const drawnA = dropV[next] ?? 0;
    sumV += currentA * (network.ohm[leg] ?? 0);
    dropV[next] = sumV;
    currentA -= drawnA;
  }
}

/** Potentials by the factored conductances, currents from them; what links carry is what their ends are left short of. */
function solveCore({ network, links }: FlowPlan, core: FlowCore, result: FlowResult): void {
  const { nodes, rowOf, legs, factor } = core;
  const { legA, dropV, rowV } = result;
  rowV.fill(0);
  for (let i = 0; i < nodes.length; i += 1) {
    const node = nodes[i] ?? 0;
    const row = rowOf[node] ?? -1;
    if (row >= 0) rowV[row] = (rowV[row] ?? 0) + (dropV[node] ?? 0);
    if (result.links !== null) result.links.loadA[node] = dropV[node] ?? 0;
  }
  solveForward(factor, rowV);
  solveBackward(factor, rowV);
  for (let i = 0; i < legs.length; i += 1) {
    const leg = legs[i] ?? 0;
    const [from, to] = [network.from[leg] ?? 0, network.to[leg] ?? 0];
    const [fromRow, toRow] = [rowOf[from] ?? -1, rowOf[to] ?? -1];
    const acrossV = (toRow < 0 ? 0 : (rowV[toRow] ?? 0)) - (fromRow < 0 ? 0 : (rowV[fromRow] ?? 0));
    const currentA = acrossV / (network.ohm[leg] ?? 1);
    legA[leg] = currentA;
    if (result.links === null) continue;
    const { loadA } = result.links;
    loadA[from] = (loadA[from] ?? 0) + currentA;
    loadA[to] = (loadA[to] ?? 0) - currentA;
  }
  if (links !== null && result.links !== null) {
    solveFlow(links, result.links.loadA, result.links.result);
    for (let i = 0; i < core.links.length; i += 1)
      legA[core.links[i] ?? 0] = result.links.result.legA[i] ?? 0;
  }
  for (let i = 0; i < nodes.length; i += 1) {
    const row = rowOf[nodes[i] ?? 0] ?? -1;
    dropV[nodes[i] ?? 0] = row < 0 ? 0 : (rowV[row] ?? 0);
  }
}
