import type { NetEdge } from './net-edge.ts';
import type { Weighing } from './weigh.ts';
import { WeighedWays } from './weighed-ways.ts';

/** Nodes and the ways between them, each in both directions: way number n leads from `ends[2n]` to `ends[2n + 1]` and back. */
export interface WayList {
  readonly ends: readonly number[];
  readonly edges: readonly NetEdge[];
}

/** Which nodes are whose: those from `nodesBelow` on are the layer's own. */
interface Nodes {
  readonly nodesBelow: number;
  readonly nodeCount: number;
}

/**
 * The ways that one layer of a net brings, laid out in arrays by the nodes that they lead out of. First come the entries, the nodes
 * beneath from which a way of the layer's goes on, in the order in which the layer came upon them; then the layer's own
 * nodes, which are numbered after those beneath. A node's ways stand from `first` at its place to before `first` at the next, in
 * the order in which they were added.
 */
export class OwnWays {
  /** How many nodes are beneath. */
  readonly nodesBelow: number;
  readonly entries: Int32Array;
  readonly first: Int32Array;
  /** Where each way leads. */
  readonly to: Int32Array;
  /** Which way it is: either direction of one is the same. */
  readonly way: Int32Array;
  readonly #edges: readonly NetEdge[];
  readonly #entryAt = new Map<number, number>();
  readonly #weighed = new WeakMap<Weighing, WeighedWays>();

  constructor({ ends, edges }: WayList, { nodesBelow, nodeCount }: Nodes) {
    [this.nodesBelow, this.#edges] = [nodesBelow, edges];
    for (let end = 0; end < ends.length; end += 1) {
      const node = ends[end] as number;
      if (node < nodesBelow && !this.#entryAt.has(node)) this.#entryAt.set(node, this.#entryAt.size);
    }
    this.entries = Int32Array.from(this.#entryAt.keys());
    this.first = new Int32Array(this.entries.length + nodeCount - nodesBelow + 1);
    this.to = new Int32Array(ends.length);
    this.way = new Int32Array(ends.length);
    this.#layOut(ends);
  }

  /** Ways are counted by their nodes, then each is put where its node's begin. */
  #layOut(ends: readonly number[]): void {
    const { first, to, way } = this;
    const places = new Int32Array(ends.length);
    for (let end = 0; end < ends.length; end += 1) {
      const place = this.placeOf(ends[end] as number);
      places[end] = place;
      first[place + 1] = (first[place + 1] as number) + 1;
    }
    for (let place = 1; place < first.length; place += 1)
      first[place] = (first[place] as number) + (first[place - 1] as number);
    const next = first.slice();
    for (let end = 0; end < places.length; end += 1) {
      const place = places[end] as number;
      const at = next[place] as number;
      next[place] = at + 1;
      to[at] = ends[end ^ 1] as number;
      way[at] = end >> 1;
    }
  }

  /** How many nodes are the layer's own. */
  get ownCount(): number {
    return this.first.length - 1 - this.entries.length;
  }

  /** How many ways there are, either direction counting once. */
  get wayCount(): number {
    return this.#edges.length;
  }

  /** The place of a node among those whose ways are laid out; −1 where the layer has no way out of it. */
  placeOf(node: number): number {
    if (node < this.nodesBelow) return this.#entryAt.get(node) ?? -1;
    return this.entries.length + node - this.nodesBelow;
  }

  edgeAt(at: number): NetEdge {
    return this.#edges[this.way[at] as number] as NetEdge;
  }

  /** The ways out of a node, in the order in which they were added; none out of a node beneath that is no entry. */
  eachFrom(node: number, visit: (to: number, edge: NetEdge) => void): void {
    const place = this.placeOf(node);
    if (place < 0) return;
    const end = this.first[place + 1] as number;
    for (let at = this.first[place] as number; at < end; at += 1)
      visit(this.to[at] as number, this.edgeAt(at));
  }

  /** The ways with what they weigh, the same for the same weighing. */
  weighed(weighing: Weighing): WeighedWays {
    const known = this.#weighed.get(weighing);
    if (known !== undefined) return known;
    const weighed = new WeighedWays(this, weighing);
    this.#weighed.set(weighing, weighed);
    return weighed;
  }
}
