import { inIdOrder } from '../../circuit/id-order.ts';
import type { Column, SearchSpace } from './search-space.ts';

/** Most wanted points that every choice is looked at for. */
export const EXACT_POINTS = 12;

/** Columns by their masks: those of one mask are `columns[first[mask]]` up to, without, `columns[first[mask + 1]]`. */
export interface ColumnsByMask<C extends Column> {
  readonly columns: readonly C[];
  readonly first: Int32Array;
  /** By mask the least of them; Infinity where there is none. */
  readonly least: Float64Array;
}

/** What each set of points costs at least, by the layers that are still to be asked. */
export interface LeastCosts<C extends Column> {
  readonly points: number;
  /** In the order of their ids. */
  readonly layers: readonly ColumnsByMask<C>[];
  readonly free: ColumnsByMask<C>;
  /** Entry k, by mask: the least cost of the set by layer k, those after it and free columns; the last by free columns alone. */
  readonly toGo: readonly Float64Array[];
}

/**
 * Layer by layer from the last: 3ⁿ steps each at most, less where a layer lacks sets. Columns that cost no whole amount
 * (Infinity where nothing leads there) count as absent. More than `EXACT_POINTS` points are a mistake of the caller.
 */
export function leastCosts<C extends Column>(space: SearchSpace<C>): LeastCosts<C> {
  const { points } = space;
  if (points > EXACT_POINTS)
    throw new RangeError(`${points} points; all choices are known up to ${EXACT_POINTS}`);
  const layers = space.layers
    .toSorted((a, b) => inIdOrder(a.id, b.id))
    .map(({ columns }) => columnsByMask(points, columns));
  const free = columnsByMask(points, space.free);
  const freeOnly = freeCosts(free.least);
  const toGo = [freeOnly];
  for (const layer of layers.toReversed())
    toGo.push(oneLayerMore(layer.least, toGo.at(-1) ?? freeOnly, freeOnly));
  return { points, layers, free, toGo: toGo.reverse() };
}

function columnsByMask<C extends Column>(points: number, all: readonly C[]): ColumnsByMask<C> {
  const sets = 2 ** points;
  const usable = all.filter(({ mask, cost }) => mask > 0 && mask < sets && Number.isFinite(cost));
  const first = new Int32Array(sets + 1);
  const least = new Float64Array(sets).fill(Number.POSITIVE_INFINITY);
  for (const { mask, cost } of usable) {
    first[mask + 1] = (first[mask + 1] as number) + 1;
    if (cost < (least[mask] as number)) least[mask] = cost;
  }
  for (let mask = 0; mask < sets; mask++)
    first[mask + 1] = (first[mask + 1] as number) + (first[mask] as number);
  const next = first.slice();
  const columns = new Array<C>(usable.length);
  for (const column of usable) {
    const at = next[column.mask] as number;
    columns[at] = column;
    next[column.mask] = at + 1;
  }
  return { columns, first, least };
}

/** The cheapest partition of each set into free columns; the part with the lowest point is always taken first. */
function freeCosts(least: Float64Array): Float64Array {
  const cost = new Float64Array(least.length);
  for (let mask = 1; mask < cost.length; mask++) {
    const others = mask & (mask - 1);
    let best = least[mask] as number;
    for (let rest = others; rest > 0; rest = (rest - 1) & others) {
      const total = (least[mask ^ rest] as number) + (cost[rest] as number);
      if (total < best) best = total;
    }
    cost[mask] = best;
  }
  return cost;
}

/** A layer's column that free columns undercut is never needed for the least cost: they may be added to any choice. */
function oneLayerMore(least: Float64Array, after: Float64Array, free: Float64Array): Float64Array {
  const cost = after.slice();
  for (let taken = 1; taken < least.length; taken++) {
    const column = least[taken] as number;
    if (!(column < (free[taken] as number))) continue;
    const others = least.length - 1 - taken;
    for (let rest = others; ; rest = (rest - 1) & others) {
      const total = column + (after[rest] as number);
      if (total < (cost[taken | rest] as number)) cost[taken | rest] = total;
      if (rest === 0) break;
    }
  }
  return cost;
}
