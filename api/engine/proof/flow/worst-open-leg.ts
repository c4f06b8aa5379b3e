import type { FlowNetwork } from './flow-network.ts';
import { type FlowPlan, type FlowRing, prepareFlow } from './prepare-flow.ts';
import { newFlowResult, solveFlow } from './solve-flow.ts';

/** What happens with one leg open. */
export interface OpenLegCase {
  readonly leg: number;
  /** The largest current in any of the legs looked at, A. */
  readonly worstA: number;
  /** The largest volt drop at any node that is still reached, V. */
  readonly worstDropV: number;
}

/** Currents and volt drops this close are counted as equal: rounding must not choose the leg. */
const EQUAL_RATIO = 1e-9;

/**
 * Opens each of some legs by itself, and tells the worst case: by the largest current, of equal ones by the largest
 * volt drop, of equal ones the first.
 *
 * @param loadA A by node.
 * @param legs what may be open, and is looked at for the largest current: as a rule the legs of the ring.
 * @returns leg −1, 0 A and 0 V where there is no leg to open.
 */
export function worstOpenLeg(
  network: FlowNetwork,
  loadA: Float64Array,
  legs: readonly number[],
): OpenLegCase {
  const cases = openLegCases(network, loadA, legs);
  const mostA = Math.max(...cases.map(({ worstA }) => worstA));
  const heaviest = cases.filter(({ worstA }) => worstA >= mostA * (1 - EQUAL_RATIO));
  const mostV = Math.max(...heaviest.map(({ worstDropV }) => worstDropV));
  const worst = heaviest.find(({ worstDropV }) => worstDropV >= mostV * (1 - EQUAL_RATIO));
  return worst ?? { leg: -1, worstA: 0, worstDropV: 0 };
}

function openLegCases(
  network: FlowNetwork,
  loadA: Float64Array,
  legs: readonly number[],
): readonly OpenLegCase[] {
  const plan = prepareFlow(network);
  const placeOf = new Int32Array(network.from.length).fill(-1);
  for (let place = 0; place < (plan.ring?.legs.length ?? 0); place += 1)
    placeOf[plan.ring?.legs[place] ?? 0] = place;
  if (plan.ring === null || legs.some((leg) => placeOf[leg] === -1))
    return legs.map((leg) => solvedCase(network, loadA, leg, legs));
  const ring = foldedRing(plan, plan.ring, loadA);
  for (const leg of legs) ring.isLookedAt[placeOf[leg] ?? 0] = 1;
  return legs.map((leg) => walkedCase(ring, leg, placeOf[leg] ?? 0));
}

/** The network solved without the leg. */
function solvedCase(
  network: FlowNetwork,
  loadA: Float64Array,
  openLeg: number,
  legs: readonly number[],
): OpenLegCase {
  const plan = prepareFlow(network, { openLeg });
  const result = newFlowResult(plan);
  solveFlow(plan, loadA, result);
  const reachedV = result.dropV.filter((dropV) => !Number.isNaN(dropV));
  return {
    leg: openLeg,
    worstA: legs.reduce((most, leg) => Math.max(most, Math.abs(result.legA[leg] ?? 0)), 0),
    worstDropV: reachedV.reduce((most, dropV) => Math.max(most, dropV), 0),
  };
}

/** A ring with its trees folded, by place along it; the source is place 0. */
interface FoldedRing {
  readonly size: number;
  /** Of the leg from a place to the next. */
  readonly ohm: Float64Array;
  readonly isLookedAt: Uint8Array;
  /** What the node and its trees draw. */
  readonly loadA: Float64Array;
  /** The largest volt drop from the node into its trees. */
  readonly behindV: Float64Array;
}

function foldedRing(
  { network, trees }: FlowPlan,
  { nodes, legs }: FlowRing,
  loadA: Float64Array,
): FoldedRing {
  const drawnA = new Float64Array(network.nodeCount);
  const behindV = new Float64Array(network.nodeCount);
  for (let node = 0; node < network.nodeCount; node += 1) drawnA[node] = loadA[node] ?? 0;
  for (let i = 0; i < trees.legs.length; i += 1) {
    const from = trees.inner[i] ?? 0;
    const to = trees.outer[i] ?? 0;
    const currentA = drawnA[to] ?? 0;
    const dropV = currentA * (network.ohm[trees.legs[i] ?? 0] ?? 0) + (behindV[to] ?? 0);
    drawnA[from] = (drawnA[from] ?? 0) + currentA;
    behindV[from] = Math.max(behindV[from] ?? 0, dropV);
  }
  const size = nodes.length;
  const ring = {
    size,
    ohm: new Float64Array(size),
    isLookedAt: new Uint8Array(size),
    loadA: new Float64Array(size),
    behindV: new Float64Array(size),
  };
  for (let place = 0; place < size; place += 1) {
    ring.ohm[place] = network.ohm[legs[place] ?? 0] ?? 0;
    ring.loadA[place] = drawnA[nodes[place] ?? 0] ?? 0;
    ring.behindV[place] = behindV[nodes[place] ?? 0] ?? 0;
  }
  return ring;
}

/** The two branches that are left of the ring, each walked from the source to the opening. */
function walkedCase(
  { size, ohm, isLookedAt, loadA, behindV }: FoldedRing,
  leg: number,
  open: number,
): OpenLegCase {
  let worstA = 0;
  let worstDropV = behindV[0] ?? 0;
  let frontA = 0;
  for (let place = 1; place <= open; place += 1) frontA += loadA[place] ?? 0;
  let sumV = 0;
  for (let place = 1; place <= open; place += 1) {
    if (isLookedAt[place - 1] === 1 && Math.abs(frontA) > worstA) worstA = Math.abs(frontA);
    sumV += frontA * (ohm[place - 1] ?? 0);
    const dropV = sumV + (behindV[place] ?? 0);
    if (dropV > worstDropV) worstDropV = dropV;
    frontA -= loadA[place] ?? 0;
  }
  let backA = 0;
  for (let place = open + 1; place < size; place += 1) backA += loadA[place] ?? 0;
  sumV = 0;
  for (let place = size - 1; place > open; place -= 1) {
    if (isLookedAt[place] === 1 && Math.abs(backA) > worstA) worstA = Math.abs(backA);
    sumV += backA * (ohm[place] ?? 0);
    const dropV = sumV + (behindV[place] ?? 0);
    if (dropV > worstDropV) worstDropV = dropV;
    backA -= loadA[place] ?? 0;
  }
  return { leg, worstA, worstDropV };
}
