import { NodeHeap } from './heap.ts';
import type { NetEdge, WayNet } from './way-net.ts';
import { type Weighing, weightOf } from './weigh.ts';

/** How a node was reached. */
interface Reached {
  readonly from: number;
  readonly edge: NetEdge;
}

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
    edges.push(...net.edgesOf(node));
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

/** The least weights from one end to everywhere in a house, and by which ways. */
export interface Row {
  readonly flat: FlatNet;
  readonly weighing: Weighing;
  /** The house with that end on it. */
  readonly net: WayNet;
  readonly weights: Float64Array;
  readonly reached: readonly (Reached | undefined)[];
}

/** Dijkstra from a node of a net of one end over a house. Ties go to the lower node, so that answers never differ. */
export function rowFrom(flat: FlatNet, net: WayNet, start: number, weighing: Weighing): Row {
  const weights = new Float64Array(net.nodeCount).fill(Number.POSITIVE_INFINITY);
  const reached: (Reached | undefined)[] = new Array(net.nodeCount);
  const heap = new NodeHeap();
  weights[start] = 0;
  heap.push(start, 0);
  const relax = (from: number, edge: NetEdge, weight: number): void => {
    if (weight >= (weights[edge.to] as number)) return;
    weights[edge.to] = weight;
    reached[edge.to] = { from, edge };
    heap.push(edge.to, weight);
  };
  const houseNodes = flat.net.nodeCount;
  for (;;) {
    const weight = heap.nextWeight;
    const node = heap.pop();
    if (node < 0) return { flat, weighing, net, weights, reached };
    if (weight > (weights[node] as number)) continue;
    if (node < houseNodes) {
      const end = flat.first[node + 1] as number;
      for (let at = flat.first[node] as number; at < end; at += 1) {
        const total = weight + (flat.weight[at] as number);
        if (total < (weights[flat.to[at] as number] as number)) relax(node, flat.edges[at] as NetEdge, total);
      }
    }
    for (const edge of net.edgesOf(node)) relax(node, edge, weight + weightOf(edge, weighing));
  }
}

/** A way, in order from the row's end; each step with the node it leads from. */
export interface FoundWay {
  readonly weight: number;
  readonly steps: readonly Reached[];
}

/**
 * The least way from a row's end to a node of one more layer: the row goes on into the layer, and back into the house
 * wherever the new lines make something nearer, so that the answer is that of the whole net.
 *
 * @returns null when nothing leads there.
 */
export function wayInto(row: Row, net: WayNet, target: number): FoundWay | null {
  const known = new Map<number, { readonly weight: number; readonly by: Reached }>();
  const heap = new NodeHeap();
  const weightAt = (node: number): number =>
    known.get(node)?.weight ??
    (node < row.weights.length ? (row.weights[node] as number) : Number.POSITIVE_INFINITY);
  const relax = (from: number, edge: NetEdge, weight: number): void => {
    if (weight >= weightAt(edge.to)) return;
    known.set(edge.to, { weight, by: { from, edge } });
    heap.push(edge.to, weight);
  };
  for (const node of net.nodesWithEdges())
    if (node < row.weights.length)
      for (const edge of net.edgesOf(node))
        relax(node, edge, (row.weights[node] as number) + weightOf(edge, row.weighing));
  const houseNodes = row.flat.net.nodeCount;
  for (;;) {
    const weight = heap.nextWeight;
    const node = heap.pop();
    if (node < 0 || node === target) break;
    if (weight > weightAt(node)) continue;
    if (node < houseNodes)
      for (let at = row.flat.first[node] as number; at < (row.flat.first[node + 1] as number); at += 1)
        relax(node, row.flat.edges[at] as NetEdge, weight + (row.flat.weight[at] as number));
    for (const edge of row.net.edgesOf(node)) relax(node, edge, weight + weightOf(edge, row.weighing));
    for (const edge of net.edgesOf(node)) relax(node, edge, weight + weightOf(edge, row.weighing));
  }
  const total = weightAt(target);
  if (!Number.isFinite(total)) return null;
  const steps: Reached[] = [];
  for (let node = target; ; ) {
    const by = known.get(node)?.by ?? row.reached[node];
    if (by === undefined) break;
    steps.unshift(by);
    node = by.from;
  }
  return { weight: total, steps };
}
