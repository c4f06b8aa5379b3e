import { NodeHeap } from './heap.ts';
import { ReachedNodes, type WayStep } from './reached-nodes.ts';
import type { NetEdge, WayNet } from './way-net.ts';
import type { Weighing } from './weigh.ts';

/** A house's own ways in arrays: from `first[node]` to before `first[node + 1]`. */
export interface FlatNet {
  readonly nodeCount: number;
  readonly first: Int32Array;
  readonly to: Int32Array;
  readonly edges: readonly NetEdge[];
}

/** Lays a house's own layer out in arrays. */
export function flatNet(net: WayNet): FlatNet {
  const { nodeCount } = net;
  const first = new Int32Array(nodeCount + 1);
  const edges: NetEdge[] = [];
  for (let node = 0; node < nodeCount; node += 1) {
    for (const edge of net.edgesOf(node)) edges.push(edge);
    first[node + 1] = edges.length;
  }
  const to = new Int32Array(edges.length);
  for (let at = 0; at < to.length; at += 1) to[at] = (edges[at] as NetEdge).to;
  return { nodeCount, first, to, edges };
}

/** The same ways weighed for one kind of cable, each when it is first met. */
export class WeighedNet {
  readonly flat: FlatNet;
  readonly weighing: Weighing;
  /** NaN where it has not been weighed yet. */
  readonly #weights: Float64Array;

  constructor(flat: FlatNet, weighing: Weighing) {
    [this.flat, this.weighing] = [flat, weighing];
    this.#weights = new Float64Array(flat.edges.length).fill(Number.NaN);
  }

  /** By the edge's place in the arrays. */
  weightAt(at: number): number {
    const known = this.#weights[at] as number;
    if (!Number.isNaN(known)) return known;
    const weight = (this.flat.edges[at] as NetEdge).weigh(this.weighing);
    this.#weights[at] = weight;
    return weight;
  }
}

/** Settled at the first growing; each further one doubles what is settled. */
const FIRST_SETTLED = 256;

/**
 * The least weights from one end to everywhere in a house, and by which ways: Dijkstra, grown no further than it was
 * asked for. Ties go to the lower node, so that answers never differ, however far it has grown.
 */
export class Row {
  readonly house: WeighedNet;
  /** The nodes of the house and of the row's own end. */
  readonly nodeCount: number;
  readonly #net: WayNet;
  readonly #reached = new ReachedNodes();
  readonly #heap = new NodeHeap();
  #settled = 0;

  constructor(house: WeighedNet, net: WayNet, start: number) {
    [this.house, this.#net, this.nodeCount] = [house, net, net.nodeCount];
    this.#reached.set(start, 0, start, null);
    this.#heap.push(start, 0);
  }

  /** Every node that weighs less has its least weight; Infinity once all have. */
  get frontier(): number {
    return this.#heap.nextWeight;
  }

  /** The least weight of a node as far as the row has grown; Infinity where it is not reached. */
  weightOf(node: number): number {
    return this.#reached.weightOf(node);
  }

  /** The step by which a node is reached; null at the row's own end and where nothing leads. */
  stepTo(node: number): WayStep | null {
    return this.#reached.stepTo(node);
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

  #settleNext(): void {
    const { flat, weighing } = this.house;
    const weight = this.#heap.nextWeight;
    const node = this.#heap.pop();
    if (weight > this.#reached.weightOf(node)) return;
    this.#settled += 1;
    if (node < flat.nodeCount) {
      const end = flat.first[node + 1] as number;
      for (let at = flat.first[node] as number; at < end; at += 1)
        this.#relax(flat.to[at] as number, weight + this.house.weightAt(at), node, flat.edges[at] as NetEdge);
    }
    for (const edge of this.#net.edgesOf(node))
      this.#relax(edge.to, weight + edge.weightBy(weighing), node, edge);
  }

  #relax(to: number, weight: number, from: number, edge: NetEdge): void {
    if (weight >= this.#reached.weightOf(to)) return;
    this.#reached.set(to, weight, from, edge);
    this.#heap.push(to, weight);
  }
}
