import { NodeHeap } from './heap.ts';
import { EntryTable, LaidLayer } from './laid-layer.ts';
import { PairSearch } from './pair-search.ts';
import { ReachedFrom } from './reached-from.ts';
import type { WayStep } from './reached-nodes.ts';
import type { Row } from './row.ts';
import type { TwoEnds } from './two-ends.ts';

/** A way, in order from the row's end. */
export interface FoundWay {
  readonly weight: number;
  readonly steps: readonly WayStep[];
}

/**
 * The least ways from rows' ends to other ends on one house. What is known of nodes lies in arrays that are used again from
 * pair to pair, and the layer of a row's own end stays laid out as long as the same row is asked.
 */
export class WaysInto {
  readonly #scratch = { reached: new ReachedFrom(), waiting: new NodeHeap() };
  readonly #tables = [new EntryTable(), new EntryTable(), new EntryTable()] as const;
  #row: Row | null = null;
  #first: LaidLayer | null = null;

  /**
   * The least way from a row's end to the other; the row grows as far as that asks for.
   *
   * @param ends the row's first.
   * @returns null when nothing leads there.
   */
  way(row: Row, ends: TwoEnds): FoundWay | null {
    if (ends.target === null) return null;
    const search = new PairSearch(row, ends, this.#layersOf(row, ends), this.#scratch);
    for (;;) {
      const way = search.wayAsGrown(ends.target);
      if (way !== null && row.frontier > way.weight) return way;
      if (row.frontier === Number.POSITIVE_INFINITY) return way;
      if (way === null) row.growOn();
      else row.growBeyond(way.weight);
    }
  }

  /** What the two ends bring, and what is between them. */
  #layersOf(row: Row, ends: TwoEnds): readonly [LaidLayer, LaidLayer, LaidLayer] {
    const { weighing } = row.house;
    const [ofFirst, ofSecond, ofBoth] = this.#tables;
    if (this.#first === null || this.#row !== row)
      this.#first = new LaidLayer(ends.firstWays, weighing, row.house.ways.ownCount, ofFirst);
    this.#row = row;
    return [
      this.#first,
      new LaidLayer(ends.secondWays, weighing, row.nodeCount, ofSecond),
      new LaidLayer(ends.waysBetween, weighing, ends.nodeCount, ofBoth),
    ];
  }
}
