import type { OwnWays } from './own-ways.ts';
import type { Weighing } from './weigh.ts';
import type { WeighedWays } from './weighed-ways.ts';

/** There are no ways out of a node. */
const NONE = -1;

/** Which nodes are entries of a layer, and which; in arrays that are used again for the next layer. */
export class EntryTable {
  #places = new Int32Array(0);
  /** What was written in an earlier turn counts for nothing. */
  #laidIn = new Int32Array(0);
  #turn = 0;

  /** Forgets the layer before it. */
  lay({ entries, nodesBelow }: OwnWays): void {
    if (this.#places.length < nodesBelow) {
      [this.#places, this.#laidIn] = [new Int32Array(nodesBelow), new Int32Array(nodesBelow)];
    }
    this.#turn += 1;
    for (let at = 0; at < entries.length; at += 1) {
      const node = entries[at] as number;
      this.#places[node] = at;
      this.#laidIn[node] = this.#turn;
    }
  }

  /** The place of a node among the entries; −1 where it is none of them. */
  placeOf(node: number): number {
    return this.#laidIn[node] === this.#turn ? (this.#places[node] as number) : NONE;
  }
}

/** A layer of ways as a search through several layers has it: by the numbers that nodes have in all of them together. */
export class LaidLayer {
  readonly ways: OwnWays;
  readonly #weighed: WeighedWays;
  readonly #table: EntryTable;
  readonly #ownCount: number;
  readonly #firstOwn: number;

  /**
   * @param firstOwn what the first of the layer's own nodes is called in all layers together.
   * @param table of this layer alone as long as it is used.
   */
  constructor(ways: OwnWays, weighing: Weighing, firstOwn: number, table: EntryTable) {
    [this.ways, this.#firstOwn, this.#table] = [ways, firstOwn, table];
    this.#weighed = ways.weighed(weighing);
    this.#ownCount = ways.ownCount;
    table.lay(ways);
  }

  /** The place of a node among those whose ways are laid out; −1 where the layer has no way out of it. */
  placeOf(node: number): number {
    if (node < this.ways.nodesBelow) return this.#table.placeOf(node);
    const own = node - this.#firstOwn;
    return own >= 0 && own < this.#ownCount ? this.ways.entries.length + own : NONE;
  }

  /** What a way weighs. */
  weightAt(at: number): number {
    return this.#weighed.weightAt(at);
  }

  /** Where a way leads, as it is called in all layers together. */
  toAt(at: number): number {
    const to = this.ways.to[at] as number;
    return to < this.ways.nodesBelow ? to : to - this.ways.nodesBelow + this.#firstOwn;
  }
}
