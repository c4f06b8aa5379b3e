import type { NetEdge, WayNet } from './way-net.ts';
import type { Weighing } from './weigh.ts';

/**
 * The ways that one layer of a net brings, laid out in arrays and weighed once for each weighing. First come those out of the
 * entries, the nodes beneath from which a way of the layer's goes on, in the order in which the layer came upon them; then
 * those out of the layer's own nodes, which are numbered after those beneath. Of the ways out of the one at a place in that order
 * `first` holds the first, and at the next place the first that is not.
 */
export class OwnWays {
  /** How many nodes are beneath. */
  readonly nodesBelow: number;
  readonly entries: Int32Array;
  readonly first: Int32Array;
  /** Where each way leads. */
  readonly to: Int32Array;
  readonly edges: readonly NetEdge[];
  readonly #weighed = new WeakMap<Weighing, Float64Array>();

  constructor(net: WayNet, nodesBelow: number) {
    this.nodesBelow = nodesBelow;
    const edges: NetEdge[] = [];
    const entries: number[] = [];
    const first: number[] = [0];
    const lay = (node: number): void => {
      for (const edge of net.edgesOf(node)) edges.push(edge);
      first.push(edges.length);
    };
    for (const node of net.nodesWithEdges()) {
      if (node >= nodesBelow) continue;
      entries.push(node);
      lay(node);
    }
    for (let node = nodesBelow; node < net.nodeCount; node += 1) lay(node);
    [this.edges, this.entries, this.first] = [edges, Int32Array.from(entries), Int32Array.from(first)];
    this.to = new Int32Array(edges.length);
    for (let at = 0; at < edges.length; at += 1) this.to[at] = (edges[at] as NetEdge).to;
  }

  /** How many nodes are the layer's own. */
  get ownCount(): number {
    return this.first.length - 1 - this.entries.length;
  }

  /** What the ways weigh, in their order. */
  weights(weighing: Weighing): Float64Array {
    const known = this.#weighed.get(weighing);
    if (known !== undefined) return known;
    const weights = new Float64Array(this.edges.length);
    for (let at = 0; at < weights.length; at += 1) weights[at] = (this.edges[at] as NetEdge).weigh(weighing);
    this.#weighed.set(weighing, weights);
    return weights;
  }
}
