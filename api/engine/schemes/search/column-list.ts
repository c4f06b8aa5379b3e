import { inIdOrder } from '../../circuit/id-order.ts';
import type { Column, SearchSpace } from './search-space.ts';

/** All columns in one row: layer by layer in the order of their ids, the free ones last; in a layer by mask, cost and key. */
export interface ColumnList<C extends Column> {
  readonly points: number;
  readonly columns: readonly C[];
  readonly mask: Int32Array;
  readonly cost: Float64Array;
  /** By column; `layers` where it is free. */
  readonly layer: Int32Array;
  readonly layers: number;
}

/** Masks have room for 30 points. Columns that cost no whole amount (Infinity) are left out. */
export function columnList<C extends Column>({ points, layers, free }: SearchSpace<C>): ColumnList<C> {
  const groups = [...layers.toSorted((a, b) => inIdOrder(a.id, b.id)).map((one) => one.columns), free].map(
    (columns) =>
      columns
        .filter(({ mask, cost }) => mask > 0 && mask < 2 ** points && Number.isFinite(cost))
        .sort((a, b) => a.mask - b.mask || a.cost - b.cost || inIdOrder(a.key, b.key)),
  );
  const columns = groups.flat();
  return {
    points,
    columns,
    mask: Int32Array.from(columns, (one) => one.mask),
    cost: Float64Array.from(columns, (one) => one.cost),
    layer: Int32Array.from(groups.flatMap((group, layer) => group.map(() => layer))),
    layers: layers.length,
  };
}

const CHUNK_BITS = 10;
const CHUNK = 2 ** CHUNK_BITS;

/** A function that gives the sum of the prices of a set's points at once, by three small tables. */
export function priceOfSet(prices: ArrayLike<number>): (mask: number) => number {
  const [low, middle, high] = [0, 1, 2].map((part) => {
    const sums = new Float64Array(CHUNK);
    for (let set = 1; set < CHUNK; set++) {
      const point = 31 - Math.clz32(set & -set) + part * CHUNK_BITS;
      sums[set] = (sums[set & (set - 1)] as number) + (prices[point] ?? 0);
    }
    return sums;
  }) as [Float64Array, Float64Array, Float64Array];
  return (mask) =>
    (low[mask & (CHUNK - 1)] as number) +
    (middle[(mask >>> CHUNK_BITS) & (CHUNK - 1)] as number) +
    (high[mask >>> (2 * CHUNK_BITS)] as number);
}
