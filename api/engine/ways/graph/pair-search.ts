import type { NodeHeap } from './heap.ts';
import type { LaidLayer } from './laid-layer.ts';
import type { NetEdge } from './net-edge.ts';
import type { ReachedFrom } from './reached-from.ts';
import { stepsTo, type WayStep } from './reached-nodes.ts';
import type { Row } from './row.ts';
import type { FoundWay } from './shortest.ts';
import type { TwoEnds } from './two-ends.ts';

/** What a search writes in, used again for the next. */
export interface Scratch {
  readonly reached: ReachedFrom;
  /** Nodes of the row from which ways go on that are not its own. */
  readonly waiting: NodeHeap;
}

/**
 * The search from a row into another end: from wherever that end's ways or those between the two go on, through all that both
 * have, and back into the house wherever that makes something nearer than the row has it. So the answer is that of the whole net.
 */
export class PairSearch {
  readonly #row: Row;
  readonly #ends: Pick<TwoEnds, 'wholeNodeCount'>;
  readonly #first: LaidLayer;
  readonly #second: LaidLayer;
  readonly #between: LaidLayer;
  readonly #reached: ReachedFrom;
  readonly #waiting: NodeHeap;
  #target = 0;
  /** The least weight that the target was reached by so far. */
  #least = Number.POSITIVE_INFINITY;

  constructor(
    row: Row,
    ends: Pick<TwoEnds, 'wholeNodeCount'>,
    [first, second, between]: readonly [LaidLayer, LaidLayer, LaidLayer],
    { reached, waiting }: Scratch,
  ) {
    [this.#row, this.#ends, this.#reached, this.#waiting] = [row, ends, reached, waiting];
    [this.#first, this.#second, this.#between] = [first, second, between];
  }

  /**
   * The least way by what the row knows so far: none is less where the row has grown beyond it.
   *
   * @returns null when nothing leads there yet.
   */
  wayAsGrown(target: number): FoundWay | null {
    this.#target = target;
    this.#least = Number.POSITIVE_INFINITY;
    this.#reached.begin(this.#ends.wholeNodeCount);
    this.#waiting.clear();
    this.#await(this.#second);
    this.#await(this.#between);
    for (;;) {
      const node = this.#reached.settleNext(this.#waiting.nextWeight);
      if (node === target) break;
      if (node >= 0) this.#growFrom(node);
      else if (this.#waiting.size > 0) this.#leaveRow(this.#waiting.pop());
      else break;
    }
    if (this.#least === Number.POSITIVE_INFINITY) return null;
    return { weight: this.#least, steps: stepsTo(this, target) };
  }

  /** The step by which a node is reached; null where the row begins. */
  stepTo(node: number): WayStep | null {
    return this.#reached.stepTo(node) ?? this.#row.stepTo(node);
  }

  /** Where the row has been, and ways go on that it knows nothing of: those wait until the search has come as far. */
  #await({ ways: { entries } }: LaidLayer): void {
    for (let at = 0; at < entries.length; at += 1) {
      const node = entries[at] as number;
      if (node >= this.#row.nodeCount) continue;
      const weight = this.#row.weightOf(node);
      if (weight < Number.POSITIVE_INFINITY) this.#waiting.push(node, weight);
    }
  }

  /** On from a node as the row has it, unless something nearer has been found by then. */
  #leaveRow(node: number): void {
    if (this.#reached.weightOf(node) < Number.POSITIVE_INFINITY) return;
    const weight = this.#row.weightOf(node);
    this.#leaveBy(this.#second, node, weight);
    this.#leaveBy(this.#between, node, weight);
  }

  #leaveBy(layer: LaidLayer, node: number, weight: number): void {
    const place = layer.placeOf(node);
    if (place < 0) return;
    const { first } = layer.ways;
    const end = first[place + 1] as number;
    for (let at = first[place] as number; at < end; at += 1) {
      const reached = weight + layer.weightAt(at);
      const next = layer.toAt(at);
      const edge = layer.ways.edgeAt(at);
      if (this.#isNearer(next, reached)) this.#reach(next, reached, node, edge);
      else if (reached === this.#reached.weightOf(next) && this.#goesFirst(node, this.#reached.fromOf(next)))
        this.#reached.reachBy(next, node, edge);
    }
  }

  /** Of two steps that weigh the same, the one that leaves the row counts, of two such the one that its layer came upon first. */
  #goesFirst(node: number, other: number): boolean {
    const isInRow = this.#reached.weightOf(other) === Number.POSITIVE_INFINITY;
    return !isInRow || this.#orderOf(node) < this.#orderOf(other);
  }

  #orderOf(node: number): number {
    const place = this.#second.placeOf(node);
    return place >= 0 ? place : this.#second.ways.entries.length + this.#between.placeOf(node);
  }

  #growFrom(node: number): void {
    const weight = this.#reached.weightOf(node);
    this.#goThroughHouse(node, weight);
    this.#goOn(this.#first, node, weight);
    this.#goOn(this.#second, node, weight);
    this.#goOn(this.#between, node, weight);
  }

  #goThroughHouse(node: number, weight: number): void {
    const { house } = this.#row;
    const { ways } = house;
    if (node >= ways.ownCount) return;
    const end = ways.first[node + 1] as number;
    for (let at = ways.first[node] as number; at < end; at += 1) {
      const reached = weight + house.weightAt(at);
      const next = ways.to[at] as number;
      if (this.#isNearer(next, reached)) this.#reach(next, reached, node, ways.edgeAt(at));
    }
  }

  #goOn(layer: LaidLayer, node: number, weight: number): void {
    const place = layer.placeOf(node);
    if (place < 0) return;
    const { first } = layer.ways;
    const end = first[place + 1] as number;
    for (let at = first[place] as number; at < end; at += 1) {
      const reached = weight + layer.weightAt(at);
      const next = layer.toAt(at);
      if (this.#isNearer(next, reached)) this.#reach(next, reached, node, layer.ways.edgeAt(at));
    }
  }

  #isNearer(node: number, weight: number): boolean {
    if (weight >= this.#least || weight >= this.#reached.weightOf(node)) return false;
    return node >= this.#row.nodeCount || weight < this.#row.weightOf(node);
  }

  #reach(node: number, weight: number, from: number, edge: NetEdge): void {
    this.#reached.reach(node, weight, from, edge);
    if (node === this.#target) this.#least = weight;
  }
}
