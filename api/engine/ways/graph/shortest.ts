import { NodeHeap } from './heap.ts';
import { ReachedNodes, type WayStep } from './reached-nodes.ts';
import type { TwoEnds } from './two-ends.ts';
import type { NetEdge, WayNet } from './way-net.ts';
import { type Weighing, weightOf } from './weigh.ts';

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
    const weight = weightOf(this.flat.edges[at] as NetEdge, this.weighing);
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
  const { flat, weighing } = row.house;
  const known = new Map<number, { readonly weight: number; readonly by: WayStep }>();
  const heap = new NodeHeap();
  let least = Number.POSITIVE_INFINITY;
  const weightAt = (node: number): number =>
    known.get(node)?.weight ?? (node < row.nodeCount ? row.weightOf(node) : Number.POSITIVE_INFINITY);
  const relax = (from: number, to: number, edge: NetEdge, weight: number): void => {
    if (weight >= least || weight >= weightAt(to)) return;
    known.set(to, { weight, by: { from, edge } });
    if (to === target) least = weight;
    heap.push(to, weight);
  };
  for (const node of ends.entries()) {
    const weight = row.weightOf(node);
    if (weight < Number.POSITIVE_INFINITY)
      ends.eachNewEdge(node, (to, edge) => relax(node, to, edge, weight + edge.weightBy(weighing)));
  }
  for (;;) {
    const weight = heap.nextWeight;
    const node = heap.pop();
    if (node < 0 || node === target) break;
    if (weight > weightAt(node)) continue;
    if (node < flat.nodeCount)
      for (let at = flat.first[node] as number; at < (flat.first[node + 1] as number); at += 1)
        relax(node, flat.to[at] as number, flat.edges[at] as NetEdge, weight + row.house.weightAt(at));
    ends.eachEdge(node, (to, edge) => relax(node, to, edge, weight + edge.weightBy(weighing)));
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
