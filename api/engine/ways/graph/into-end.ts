import { NodeHeap } from './heap.ts';
import type { OwnWays } from './own-ways.ts';
import type { WayStep } from './reached-nodes.ts';
import type { Row } from './row.ts';

/** The least way from a row's end into another that it has nothing with but the house. */
export interface IntoEnd {
  readonly weight: number;
  /** The node of the house at which the other end's ways begin. */
  readonly entry: number;
  /** From there to the end, in order; `from` is in the other end's own numbers. */
  readonly steps: readonly WayStep[];
}

/**
 * The least way from a row's end to a node of another end, by what the row knows so far, through the house and then by that end's ways alone. It
 * is the least of all as soon as the row has grown beyond it.
 *
 * @returns null when nothing leads there yet; undefined when the other end's ways make a place of the house nearer than the row has
 * it, so that the least way may go back into the house.
 */
export function intoEnd(row: Row, own: OwnWays, target: number): IntoEnd | null | undefined {
  const search = new OwnSearch(row, own, target - own.houseNodes);
  return search.run() ? search.found() : undefined;
}

class OwnSearch {
  readonly #row: Row;
  readonly #own: OwnWays;
  readonly #edgeWeights: Float64Array;
  readonly #target: number;
  /** By the end's own nodes: the least weight so far, and by which way from where. */
  readonly #weights: Float64Array;
  readonly #by: Int32Array;
  readonly #from: Int32Array;
  readonly #heap = new NodeHeap();

  constructor(row: Row, own: OwnWays, target: number) {
    [this.#row, this.#own, this.#target] = [row, own, target];
    this.#edgeWeights = own.weights(row.house.weighing);
    this.#weights = new Float64Array(own.ownCount).fill(Number.POSITIVE_INFINITY);
    this.#by = new Int32Array(own.ownCount);
    this.#from = new Int32Array(own.ownCount);
  }

  /** False when a way leads back into the house and makes something nearer there. */
  run(): boolean {
    const { entries } = this.#own;
    for (let at = 0; at < entries.length; at += 1) {
      const node = entries[at] as number;
      const weight = this.#row.weightOf(node);
      if (weight < Number.POSITIVE_INFINITY && !this.#relax(node, weight, this.#own.outOfEntry(at)))
        return false;
    }
    for (;;) {
      const weight = this.#heap.nextWeight;
      const own = this.#heap.pop();
      if (own < 0 || own === this.#target) return true;
      if (weight > (this.#weights[own] as number)) continue;
      if (!this.#relax(own + this.#own.houseNodes, weight, this.#own.outOfOwn(own))) return false;
    }
  }

  #relax(from: number, weight: number, [first, until]: readonly [number, number]): boolean {
    const { houseNodes, to } = this.#own;
    for (let at = first; at < until; at += 1) {
      const reached = weight + (this.#edgeWeights[at] as number);
      if (reached >= (this.#weights[this.#target] as number)) continue;
      const next = to[at] as number;
      if (next < houseNodes) {
        // Beyond its frontier the row does not know yet, and what goes there is not the answer yet.
        if (reached < this.#row.weightOf(next) && reached < this.#row.frontier) return false;
        continue;
      }
      const own = next - houseNodes;
      if (reached >= (this.#weights[own] as number)) continue;
      this.#weights[own] = reached;
      this.#by[own] = at;
      this.#from[own] = from;
      this.#heap.push(own, reached);
    }
    return true;
  }

  found(): IntoEnd | null {
    const weight = this.#weights[this.#target] as number;
    if (weight === Number.POSITIVE_INFINITY) return null;
    const { houseNodes, edges } = this.#own;
    const steps: WayStep[] = [];
    let node = this.#target + houseNodes;
    while (node >= houseNodes) {
      const from = this.#from[node - houseNodes] as number;
      steps.push({ from, edge: edges[this.#by[node - houseNodes] as number] as WayStep['edge'] });
      node = from;
    }
    return { weight, entry: node, steps: steps.reverse() };
  }
}
