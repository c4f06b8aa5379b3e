import { NodeHeap } from './heap.ts';
import type { TwoEnds } from './two-ends.ts';
import type { NetEdge, WayNet } from './way-net.ts';
import { type Weighing, weightOf } from './weigh.ts';

/** The house's ways with their weights, in arrays: from `first[node]` to before `first[node + 1]`. */
export interface FlatNet {
  readonly net: WayNet;
  readonly first: Int32Array;
  readonly to: Int32Array;
  readonly weight: Float64Array;
  readonly edges: readonly NetEdge[];
}

/** Lays a house's own layer out in arrays for one weighing. */
export function flatNet(net: WayNet, weighing: Weighing): FlatNet {
  const first = new Int32Array(net.nodeCount + 1);
  const edges: NetEdge[] = [];
  for (let node = 0; node < net.nodeCount; node += 1) {
    for (const edge of net.edgesOf(node)) edges.push(edge);
    first[node + 1] = edges.length;
  }
  return {
    net,
    first,
    to: Int32Array.from(edges, ({ to }) => to),
    weight: Float64Array.from(edges, (edge) => weightOf(edge, weighing)),
    edges,
  };
}

/** A step of a way: over what, and from where. */
export interface WayStep {
  readonly from: number;
  readonly edge: NetEdge;
}

/** Settled at the first growing; each further one doubles what is settled. */
const FIRST_SETTLED = 256;

/**
 * The least weights from one end to everywhere in a house, and by which ways: Dijkstra, grown no further than it was
 * asked for. Ties go to the lower node, so that answers never differ, however far it has grown.
 */
export class Row {
  readonly flat: FlatNet;
  readonly weighing: Weighing;
  readonly weights: Float64Array;
  readonly #net: WayNet;
  readonly #from: Int32Array;
  readonly #by: (NetEdge | undefined)[];
  readonly #heap = new NodeHeap();
  #settled = 0;

  constructor(flat: FlatNet, net: WayNet, start: number, weighing: Weighing) {
    [this.flat, this.weighing, this.#net] = [flat, weighing, net];
    this.weights = new Float64Array(net.nodeCount).fill(Number.POSITIVE_INFINITY);
    this.#from = new Int32Array(net.nodeCount);
    this.#by = new Array(net.nodeCount);
    this.weights[start] = 0;
    this.#heap.push(start, 0);
  }

  /** Every node that weighs less has its least weight; Infinity once all have. */
  get frontier(): number {
    return this.#heap.nextWeight;
  }

  /** Grows until every node up to this weight has its least. */
  growBeyond(weight: number): void {
    while (this.#heap.nextWeight <= weight && this.#heap.size > 0) this.#settleNext();
  }

  /** Grows to twice the nodes. */
  growOn(): void {
    const count = Math.max(FIRST_SETTLED, this.#settled);
    for (let i = 0; i < count && this.#heap.size > 0; i += 1) this.#settleNext();
  }

  /** The step by which a node is reached; null at the row's own end and where nothing leads. */
  stepTo(node: number): WayStep | null {
    const edge = this.#by[node];
    return edge === undefined ? null : { from: this.#from[node] as number, edge };
  }

  #settleNext(): void {
    const { flat, weights } = this;
    const weight = this.#heap.nextWeight;
    const node = this.#heap.pop();
    if (weight > (weights[node] as number)) return;
    this.#settled += 1;
    if (node < flat.net.nodeCount) {
      const end = flat.first[node + 1] as number;
      for (let at = flat.first[node] as number; at < end; at += 1) {
        const to = flat.to[at] as number;
        const total = weight + (flat.weight[at] as number);
        if (total < (weights[to] as number)) this.#reach(to, total, node, flat.edges[at] as NetEdge);
      }
    }
    for (const edge of this.#net.edgesOf(node)) {
      const total = weight + weightOf(edge, this.weighing);
      if (total < (weights[edge.to] as number)) this.#reach(edge.to, total, node, edge);
    }
  }

  #reach(to: number, weight: number, from: number, edge: NetEdge): void {
    this.weights[to] = weight;
    this.#from[to] = from;
    this.#by[to] = edge;
    this.#heap.push(to, weight);
  }
}

/** A way, in order from the row's end. */
export interface FoundWay {
  readonly weight: number;
  readonly steps: readonly WayStep[];
}

/**
 * The least way from a row's end to the other end on the house: the row goes on into what that end brings, and back into
 * the house wherever that makes something nearer, so that the answer is that of the whole net.
 *
 * @returns null when nothing leads there.
 */
export function wayInto(row: Row, ends: TwoEnds): FoundWay | null {
  if (ends.target === null) return null;
  for (;;) {
    const way = wayAsGrown(row, ends, ends.target);
    if (way !== null && row.frontier > way.weight) return way;
    if (row.frontier === Number.POSITIVE_INFINITY) return way;
    if (way === null) row.growOn();
    else row.growBeyond(way.weight);
  }
}

/** The least way by what a row knows so far: none is less where the row has grown beyond it. */
function wayAsGrown(row: Row, ends: TwoEnds, target: number): FoundWay | null {
  const { flat, weighing, weights } = row;
  const known = new Map<number, { readonly weight: number; readonly by: WayStep }>();
  const heap = new NodeHeap();
  let least = Number.POSITIVE_INFINITY;
  const weightAt = (node: number): number =>
    known.get(node)?.weight ?? (node < weights.length ? (weights[node] as number) : Number.POSITIVE_INFINITY);
  const relax = (from: number, to: number, edge: NetEdge, weight: number): void => {
    if (weight >= least || weight >= weightAt(to)) return;
    known.set(to, { weight, by: { from, edge } });
    if (to === target) least = weight;
    heap.push(to, weight);
  };
  for (const node of ends.entries()) {
    const weight = weights[node] as number;
    if (weight < Number.POSITIVE_INFINITY)
      ends.eachNewEdge(node, (to, edge) => relax(node, to, edge, weight + weightOf(edge, weighing)));
  }
  const houseNodes = flat.net.nodeCount;
  for (;;) {
    const weight = heap.nextWeight;
    const node = heap.pop();
    if (node < 0 || node === target) break;
    if (weight > weightAt(node)) continue;
    if (node < houseNodes)
      for (let at = flat.first[node] as number; at < (flat.first[node + 1] as number); at += 1)
        relax(node, flat.to[at] as number, flat.edges[at] as NetEdge, weight + (flat.weight[at] as number));
    ends.eachEdge(node, (to, edge) => relax(node, to, edge, weight + weightOf(edge, weighing)));
  }
  if (least === Number.POSITIVE_INFINITY) return null;
  const steps: WayStep[] = [];
  for (let node = target; ; ) {
    const by = known.get(node)?.by ?? row.stepTo(node);
    if (by === null) break;
    steps.push(by);
    node = by.from;
  }
  return { weight: least, steps: steps.reverse() };
}
