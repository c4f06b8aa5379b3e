import { NodeHeap } from './heap.ts';
import type { WayStep } from './reached-nodes.ts';
import type { NetEdge } from './way-net.ts';

/** How a node was reached: over what, from where, and what that adds up to. */
export interface Reached extends WayStep {
  readonly weight: number;
  readonly lengthMm: number;
}

/** The nodes reached from one end, in arrays that are used again for the next. */
export class ReachedFrom {
  readonly #weights: number[] = [];
  readonly #lengthsMm: number[] = [];
  readonly #from: number[] = [];
  readonly #by: (NetEdge | null)[] = [];
  /** What was written in an earlier turn counts for nothing. */
  readonly #reachedIn: number[] = [];
  readonly #settledIn: number[] = [];
  #turn = 0;
  #heap = new NodeHeap();

  /** Forgets all, and begins at a node. */
  begin(start: number, nodeCount: number): void {
    for (let node = this.#reachedIn.length; node < nodeCount; node += 1) {
      this.#weights.push(0);
      this.#lengthsMm.push(0);
      this.#from.push(0);
      this.#by.push(null);
      this.#reachedIn.push(0);
      this.#settledIn.push(0);
    }
    this.#turn += 1;
    this.#heap = new NodeHeap();
    this.#reachedIn[start] = this.#turn;
    this.#weights[start] = 0;
    this.#lengthsMm[start] = 0;
    this.#by[start] = null;
    this.#heap.push(start, 0);
  }

  /** No node that is still to be settled weighs less; Infinity when there is none. */
  get frontier(): number {
    return this.#heap.nextWeight;
  }

  /** The next node whose least weight is known now; −1 when there is none. */
  settleNext(): number {
    for (;;) {
      const node = this.#heap.pop();
      if (node < 0) return node;
      if (this.#settledIn[node] === this.#turn) continue;
      this.#settledIn[node] = this.#turn;
      return node;
    }
  }

  /** Infinity where the node is not reached. */
  weightOf(node: number): number {
    return this.#reachedIn[node] === this.#turn ? (this.#weights[node] as number) : Number.POSITIVE_INFINITY;
  }

  /** How long the way to a node is that was reached, mm. */
  lengthMm(node: number): number {
    return this.#lengthsMm[node] as number;
  }

  reach(node: number, { weight, lengthMm, from, edge }: Reached): void {
    this.#reachedIn[node] = this.#turn;
    this.#weights[node] = weight;
    this.#lengthsMm[node] = lengthMm;
    this.#from[node] = from;
    this.#by[node] = edge;
    this.#heap.push(node, weight);
  }

  /** The step by which a node was reached; null where it all begins. */
  stepTo(node: number): WayStep | null {
    const edge = this.#by[node];
    return edge ? { from: this.#from[node] as number, edge } : null;
  }
}
