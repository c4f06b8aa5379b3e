import type { FlowNetwork, FlowShape } from './flow-network.ts';
import { type FlowCore, prepareCore } from './prepare-core.ts';

/** The legs of a network's trees, each before those between it and the source. */
interface FlowTrees {
  readonly legs: Int32Array;
  /** The leg's end away from the source, and the one towards it. */
  readonly outer: Int32Array;
  readonly inner: Int32Array;
}

/** The one loop of a network, walked from the source. */
export interface FlowRing {
  /** The source first. */
  readonly nodes: Int32Array;
  /** Each from the node of the same place to the next; the last returns to the source. */
  readonly legs: Int32Array;
  /** What each node's load draws by the first leg, as a part of 1: the resistance behind it over that of the whole loop. */
  readonly firstShare: Float64Array;
}

/** Everything about a flow that depends on the network alone; it serves any number of loads. */
export interface FlowPlan {
  readonly network: FlowNetwork;
  readonly shape: FlowShape;
  /** Nodes that nothing reaches. */
  readonly unreached: Int32Array;
  readonly trees: FlowTrees;
  /** Where the shape is `ring`. */
  readonly ring: FlowRing | null;
  /** Where the shape is `mesh`. */
  readonly core: FlowCore | null;
  /** How current passes the core's links of no resistance; null without such links. */
  readonly links: FlowPlan | null;
}

/**
 * Makes a network ready for loads: cuts off its trees, then finds the ring, or factors what is meshed.
 *
 * @param options.openLeg a leg that is left out; it carries nothing.
 */
export function prepareFlow(network: FlowNetwork, { openLeg = -1 }: { openLeg?: number } = {}): FlowPlan {
  const ends = looseEnds(network, openLeg);
  const cut = cutTrees(network, ends);
  const isTree = ends.count[network.source] === 0;
  const ring = isTree ? null : walkRing(network, ends);
  const core = isTree || ring !== null ? null : prepareCore(network, coreLegs(network, ends));
  const { trees, unreached } = reachedTrees(network, cut, core?.nodes ?? ring?.nodes);
  const links = core?.linkNetwork ?? null;
  return {
    network,
    shape: isTree ? 'tree' : ring === null ? 'mesh' : 'ring',
    unreached,
    trees,
    ring,
    core,
    links: links === null ? null : prepareFlow(links),
  };
}

/**
 * The same network with other resistances of its legs, nothing else open: what hangs together how is not looked for again.
 * A core is factored anew.
 *
 * @param ohm Ω by leg, as in the network.
 */
export function withOhm(plan: FlowPlan, ohm: Float64Array): FlowPlan {
  const network = { ...plan.network, ohm };
  if (plan.core !== null) return prepareFlow(network);
  const { ring } = plan;
  return {
    ...plan,
    network,
    ring: ring === null ? null : { ...ring, firstShare: firstShares(ring.legs, ohm) },
  };
}

/** By node: how many legs end there, and those legs' numbers in one: where a single one is left, it is that number. */
interface LooseEnds {
  readonly count: Int32Array;
  readonly legs: Int32Array;
  readonly openLeg: number;
}

function looseEnds({ nodeCount, from, to }: FlowNetwork, openLeg: number): LooseEnds {
  const count = new Int32Array(nodeCount);
  const legs = new Int32Array(nodeCount);
  for (let leg = 0; leg < from.length; leg += 1) {
    const [a, b] = [from[leg] ?? 0, to[leg] ?? 0];
    if (leg === openLeg || a === b) continue;
    count[a] = (count[a] ?? 0) + 1;
    count[b] = (count[b] ?? 0) + 1;
    legs[a] = (legs[a] ?? 0) ^ leg;
    legs[b] = (legs[b] ?? 0) ^ leg;
  }
  return { count, legs, openLeg };
}

/** Takes legs off at nodes where nothing else ends, until none is left; the source stays. */
function cutTrees({ nodeCount, source, from, to }: FlowNetwork, { count, legs }: LooseEnds): FlowTrees {
  const cut = {
    legs: new Int32Array(nodeCount),
    outer: new Int32Array(nodeCount),
    inner: new Int32Array(nodeCount),
  };
  let cuts = 0;
  for (let start = 0; start < nodeCount; start += 1) {
    let node = start;
    while (node !== source && count[node] === 1) {
      const leg = legs[node] ?? 0;
      const inner = from[leg] === node ? (to[leg] ?? 0) : (from[leg] ?? 0);
      cut.legs[cuts] = leg;
      cut.outer[cuts] = node;
      cut.inner[cuts] = inner;
      cuts += 1;
      count[node] = 0;
      count[inner] = (count[inner] ?? 0) - 1;
      legs[inner] = (legs[inner] ?? 0) ^ leg;
      node = inner;
    }
  }
  return firstOf(cut, cuts);
}

const firstOf = ({ legs, outer, inner }: FlowTrees, count: number): FlowTrees => ({
  legs: legs.subarray(0, count),
  outer: outer.subarray(0, count),
  inner: inner.subarray(0, count),
});

/** Whether a leg is on a loop, or between loops, once trees are cut off. */
const isInCore = ({ from, to }: FlowNetwork, { count, openLeg }: LooseEnds, leg: number): boolean =>
  leg !== openLeg && from[leg] !== to[leg] && count[from[leg] ?? 0] !== 0 && count[to[leg] ?? 0] !== 0;

function coreLegs(network: FlowNetwork, ends: LooseEnds): readonly number[] {
  const legs: number[] = [];
  for (let leg = 0; leg < network.from.length; leg += 1) if (isInCore(network, ends, leg)) legs.push(leg);
  return legs;
}

/** The loop through the source where it is all that is reached beside trees; null where there is more. */
function walkRing(network: FlowNetwork, ends: LooseEnds): FlowRing | null {
  const { nodeCount, source, from, to, ohm } = network;
  if (ends.count[source] !== 2) return null;
  const nodes = new Int32Array(nodeCount);
  const legs = new Int32Array(nodeCount);
  let leg = 0;
  while ((from[leg] !== source && to[leg] !== source) || !isInCore(network, ends, leg)) leg += 1;
  let node = source;
  let length = 0;
  do {
    if (ends.count[node] !== 2) return null;
    nodes[length] = node;
    legs[length] = leg;
    length += 1;
    node = from[leg] === node ? (to[leg] ?? 0) : (from[leg] ?? 0);
    leg = (ends.legs[node] ?? 0) ^ leg;
  } while (node !== source);
  const walked = legs.slice(0, length);
  return { nodes: nodes.slice(0, length), legs: walked, firstShare: firstShares(walked, ohm) };
}

function firstShares(legs: Int32Array, ohm: Float64Array): Float64Array {
  let wholeOhm = 0;
  for (let i = 0; i < legs.length; i += 1) wholeOhm += ohm[legs[i] ?? 0] ?? 0;
  const share = new Float64Array(legs.length).fill(1);
  let before = 0;
  for (let i = 1; i < legs.length; i += 1) {
    // A loop of links alone has nothing to share by but their number.
    before += wholeOhm > 0 ? (ohm[legs[i - 1] ?? 0] ?? 0) / wholeOhm : 1 / legs.length;
    share[i] = 1 - before;
  }
  return share;
}

/** Leaves out what no current reaches, and names it. */
function reachedTrees(
  { nodeCount, source }: FlowNetwork,
  trees: FlowTrees,
  looped: Int32Array | undefined,
): { readonly trees: FlowTrees; readonly unreached: Int32Array } {
  const isReached = new Uint8Array(nodeCount);
  isReached[source] = 1;
  let reached = 1;
  if (looped !== undefined) {
    for (let i = 0; i < looped.length; i += 1) isReached[looped[i] ?? 0] = 1;
    reached = looped.length;
  }
  let kept = 0;
  for (let i = trees.legs.length - 1; i >= 0; i -= 1) {
    if (isReached[trees.inner[i] ?? 0] === 0) continue;
    isReached[trees.outer[i] ?? 0] = 1;
    kept += 1;
  }
  const unreached = new Int32Array(nodeCount - reached - kept);
  let found = 0;
  for (let node = 0; node < nodeCount; node += 1) if (isReached[node] === 0) unreached[found++] = node;
  if (kept === trees.legs.length) return { trees, unreached };
  const isKept = (_: number, i: number): boolean => isReached[trees.outer[i] ?? 0] === 1;
  return {
    trees: {
      legs: trees.legs.filter(isKept),
      outer: trees.outer.filter(isKept),
      inner: trees.inner.filter(isKept),
    },
    unreached,
  };
}
