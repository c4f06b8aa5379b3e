import { NodeHeap } from './heap.ts';
import { ReachedNodes, type WayStep } from './reached-nodes.ts';
import type { WayNet } from './way-net.ts';
import type { WeighedWays } from './weighed-ways.ts';

/** Settled at the first growing; each further one doubles what is settled. */
const FIRST_SETTLED = 256;

/**
 * The least weights from one end to everywhere in a house, and by which ways: Dijkstra, grown no further than it was
 * asked for. Ties go to the lower node, so that answers never differ, however far it has grown.
 */
export class Row {
  readonly house: WeighedWays;
  /** The nodes of the house and of the row's own end. */
  readonly nodeCount: number;
  readonly #own: WeighedWays;
  readonly #reached = new ReachedNodes();
  readonly #heap = new NodeHeap();
  #settled = 0;

  constructor(house: WeighedWays, net: Pick<WayNet, 'ways' | 'nodeCount'>, start: number) {
    [this.house, this.nodeCount] = [house, net.nodeCount];
    this.#own = net.ways().weighed(house.weighing);
    this.#reached.set(start, 0, start, 0);
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
    const by = this.#reached.byOf(node);
    if (by === 0) return null;
    const edge = by > 0 ? this.house.ways.edgeAt(by - 1) : this.#own.ways.edgeAt(-by - 1);
    return { from: this.#reached.fromOf(node), edge };
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
    const weight = this.#heap.nextWeight;
    const node = this.#heap.pop();
    if (weight > this.#reached.weightOf(node)) return;
    this.#settled += 1;
    this.#goThroughHouse(node, weight);
    this.#goOn(node, weight);
  }

  #goThroughHouse(node: number, weight: number): void {
    const { ways } = this.house;
    if (node >= ways.ownCount) return;
    const end = ways.first[node + 1] as number;
    for (let at = ways.first[node] as number; at < end; at += 1) {
      const reached = weight + this.house.weightAt(at);
      const to = ways.to[at] as number;
      if (reached < this.#reached.weightOf(to)) this.#reach(to, reached, node, at + 1);
    }
  }

  /** The same by the ways of the row's own end. */
  #goOn(node: number, weight: number): void {
    const { ways } = this.#own;
    const place = ways.placeOf(node);
    if (place < 0) return;
    const end = ways.first[place + 1] as number;
    for (let at = ways.first[place] as number; at < end; at += 1) {
      const reached = weight + this.#own.weightAt(at);
      const to = ways.to[at] as number;
      if (reached < this.#reached.weightOf(to)) this.#reach(to, reached, node, -at - 1);
    }
  }

  /** @param by the house's ways go by their places from one up, those of the row's own end by theirs from minus one down. */
  #reach(to: number, weight: number, from: number, by: number): void {
    this.#reached.set(to, weight, from, by);
    this.#heap.push(to, weight);
  }
}
