import { NodeHeap } from './heap.ts';
import type { NetEdge } from './net-edge.ts';
import type { WayStep } from './reached-nodes.ts';

/** The nodes reached in one search, in arrays that are used again for the next. */
export class ReachedFrom {
  #weights = new Float64Array(0);
  #lengthsMm = new Float64Array(0);
  #from = new Int32Array(0);
  readonly #by: (NetEdge | null)[] = [];
  /** What was written in an earlier turn counts for nothing. */
  #reachedIn = new Int32Array(0);
  #settledIn = new Int32Array(0);
  #turn = 0;
  readonly #heap = new NodeHeap();

  /** Forgets all. */
  begin(nodeCount: number): void {
    if (nodeCount > this.#weights.length) this.#widen(nodeCount);
    this.#turn += 1;
    this.#heap.clear();
  }

  /** To twice the room at least, with nothing in it. */
  #widen(nodeCount: number): void {
    const room = Math.max(nodeCount, 2 * this.#weights.length);
    this.#weights = new Float64Array(room);
    this.#lengthsMm = new Float64Array(room);
    this.#from = new Int32Array(room);
    this.#reachedIn = new Int32Array(room);
    this.#settledIn = new Int32Array(room);
    for (let node = this.#by.length; node < room; node += 1) this.#by.push(null);
  }

  /** No node that is still to be settled weighs less; Infinity when there is none. */
  get frontier(): number {
    return this.#heap.nextWeight;
  }

  /** The next node whose least weight is known now; −1 when there is none that weighs less than given. */
  settleNext(below = Number.POSITIVE_INFINITY): number {
    while (this.#heap.nextWeight < below) {
      const node = this.#heap.pop();
      if (this.#settledIn[node] === this.#turn) continue;
      this.#settledIn[node] = this.#turn;
      return node;
    }
    return -1;
  }

  /** Infinity where the node is not reached. */
  weightOf(node: number): number {
    return this.#reachedIn[node] === this.#turn ? (this.#weights[node] as number) : Number.POSITIVE_INFINITY;
  }

  /** How long the way to a node is that was reached, mm, as the search has set it. */
  lengthMm(node: number): number {
    return this.#lengthsMm[node] as number;
  }

  setLengthMm(node: number, lengthMm: number): void {
    this.#lengthsMm[node] = lengthMm;
  }

  /** @param edge null where the search begins. */
  reach(node: number, weight: number, from: number, edge: NetEdge | null): void {
    this.#reachedIn[node] = this.#turn;
    this.#weights[node] = weight;
    this.#from[node] = from;
    this.#by[node] = edge;
    this.#heap.push(node, weight);
  }

  /** Another step to a node that it is reached by at the same weight. */
  reachBy(node: number, from: number, edge: NetEdge): void {
    this.#from[node] = from;
    this.#by[node] = edge;
  }

  /** From where a node that is reached was. */
  fromOf(node: number): number {
    return this.#from[node] as number;
  }

  /** The step by which a node was reached; null where the search began, and where the node is not reached. */
  stepTo(node: number): WayStep | null {
    if (this.#reachedIn[node] !== this.#turn) return null;
    const edge = this.#by[node];
    return edge ? { from: this.#from[node] as number, edge } : null;
  }
}
