import type { NetEdge } from './net-edge.ts';

/** A step of a way: over what, and from where. The edge may be told from its other end: `to` is then where the step begins. */
export interface WayStep {
  readonly from: number;
  readonly edge: NetEdge;
}

/** What knows by which step a node is reached; null where it all begins. */
export interface StepsKnown {
  stepTo(node: number): WayStep | null;
}

/** The steps by which a node is reached, in order from where it all begins. */
export function stepsTo(known: StepsKnown, node: number): WayStep[] {
  const steps: WayStep[] = [];
  for (let by = known.stepTo(node); by !== null; by = known.stepTo(by.from)) steps.push(by);
  return steps.reverse();
}

/** Nodes come by pages: a row that grows into a corner of a house needs little of it. */
const PAGE_BITS = 9;
const PAGE = 2 ** PAGE_BITS;

interface Page {
  readonly weights: Float64Array;
  readonly from: Int32Array;
  readonly by: Int32Array;
}

const newPage = (): Page => ({
  weights: new Float64Array(PAGE).fill(Number.POSITIVE_INFINITY),
  from: new Int32Array(PAGE),
  by: new Int32Array(PAGE),
});

/** The nodes that a row has reached: their weights, and the steps by which. */
export class ReachedNodes {
  readonly #pages: (Page | undefined)[] = [];

  /** Infinity where the node is not reached. */
  weightOf(node: number): number {
    const page = this.#pages[node >> PAGE_BITS];
    return page === undefined ? Number.POSITIVE_INFINITY : (page.weights[node & (PAGE - 1)] as number);
  }

  /** From where a node is reached; of nodes that are. */
  fromOf(node: number): number {
    return this.#pages[node >> PAGE_BITS]?.from[node & (PAGE - 1)] ?? 0;
  }

  /** By which way a node is reached, as it was told; nought where it is not. */
  byOf(node: number): number {
    return this.#pages[node >> PAGE_BITS]?.by[node & (PAGE - 1)] ?? 0;
  }

  /** @param by the way in a number of the caller's own, nought where the row begins. */
  set(node: number, weight: number, from: number, by: number): void {
    const page = this.#pages[node >> PAGE_BITS] ?? newPage();
    this.#pages[node >> PAGE_BITS] = page;
    page.weights[node & (PAGE - 1)] = weight;
    page.from[node & (PAGE - 1)] = from;
    page.by[node & (PAGE - 1)] = by;
  }
}
