import type { NetEdge, WayNet } from './way-net.ts';
import type { Weighing } from './weigh.ts';

/**
 * The ways that an end of a cable brings to the net of its house, laid out in arrays and weighed once for each weighing. First come
 * those out of the entries, the nodes of the house from which a way of the end's goes on, in the order in which the end came
 * upon them; then those out of the end's own nodes, which are numbered after those of the house.
 */
export class OwnWays {
  readonly houseNodes: number;
  readonly entries: Int32Array;
  /** Where each way leads. */
  readonly to: Int32Array;
  readonly edges: readonly NetEdge[];
  readonly #first: Int32Array;
  readonly #weighed = new WeakMap<Weighing, Float64Array>();

  constructor(net: WayNet, houseNodes: number) {
    this.houseNodes = houseNodes;
    this.entries = Int32Array.from([...net.nodesWithEdges()].filter((node) => node < houseNodes));
    const own = Array.from({ length: net.nodeCount - houseNodes }, (_, at) => houseNodes + at);
    const byNode = [...this.entries, ...own].map((node) => net.edgesOf(node));
    this.#first = new Int32Array(byNode.length + 1);
    for (const [at, edges] of byNode.entries())
      this.#first[at + 1] = (this.#first[at] as number) + edges.length;
    this.edges = byNode.flat();
    this.to = Int32Array.from(this.edges, ({ to }) => to);
  }

  /** How many nodes are the end's own. */
  get ownCount(): number {
    return this.#first.length - 1 - this.entries.length;
  }

  /** Of the ways out of one of the entries, by its place among them, the first, and the first that is not. */
  outOfEntry(at: number): readonly [from: number, until: number] {
    return [this.#first[at] as number, this.#first[at + 1] as number];
  }

  /** The same of one of the end's own nodes, by its number less that of the house's. */
  outOfOwn(own: number): readonly [from: number, until: number] {
    return this.outOfEntry(this.entries.length + own);
  }

  /** What the ways weigh, in their order. */
  weights(weighing: Weighing): Float64Array {
    const known = this.#weighed.get(weighing);
    if (known !== undefined) return known;
    const weights = Float64Array.from(this.edges, (edge) => edge.weigh(weighing));
    this.#weighed.set(weighing, weights);
    return weights;
  }
}
