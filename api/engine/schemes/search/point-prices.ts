import { type ColumnList, priceOfSet } from './column-list.ts';
import type { Column } from './search-space.ts';

/** What each point is reckoned at, whole (below 0 allowed), and what no choice can cost less than. */
export interface PointPrices {
  readonly prices: Float64Array;
  readonly bound: number;
}

const MOST_STEPS = 200;
const STEPS_WITHOUT_GAIN = 6;
const FIRST_STRIDE = 1.5;
const LEAST_STRIDE = 0.005;

/** Each point at its least share of any column; Infinity where none connects it, so that there is no choice at all. */
export function leastShares({ points, mask, cost }: ColumnList<Column>): PointPrices {
  const prices = new Float64Array(points).fill(Number.POSITIVE_INFINITY);
  for (let at = 0; at < mask.length; at++) {
    const set = mask[at] as number;
    const share = Math.floor((cost[at] as number) / sizeOf(set));
    for (let rest = set; rest > 0; rest &= rest - 1) {
      const point = 31 - Math.clz32(rest & -rest);
      if (share < (prices[point] as number)) prices[point] = share;
    }
  }
  return { prices, bound: prices.reduce((sum, price) => sum + price, 0) };
}

/** How many points a set has. */
export function sizeOf(mask: number): number {
  let size = 0;
  for (let rest = mask; rest > 0; rest &= rest - 1) size++;
  return size;
}

/**
 * Raises the bound towards `target`, the cost of a choice that is known, by Lagrange's relaxation of "each point once": with any
 * prices, their sum, and for each layer and each free column what its reduced cost lies below 0, is a bound. Prices are whole,
 * so that the bound is exact. Subgradient steps after Polyak; the same list, the same bound.
 * M. Held, P. Wolfe, H. P. Crowder, "Validation of subgradient optimization", 1974.
 */
export function betterPrices(list: ColumnList<Column>, start: PointPrices, target: number): PointPrices {
  let best = start;
  let prices = start.prices.slice();
  let stride = FIRST_STRIDE;
  for (let step = 0, idle = 0; step < MOST_STEPS && stride > LEAST_STRIDE; step++) {
    const { bound, lack } = relaxed(list, prices);
    idle = bound > best.bound ? 0 : idle + 1;
    if (idle === 0) best = { prices, bound };
    const length = lack.reduce((sum, one) => sum + one * one, 0);
    if (length === 0 || best.bound >= target) break;
    const raise = (stride * Math.max(1, target - bound)) / length;
    prices = prices.map((price, point) => Math.round(price + raise * (lack[point] ?? 0)));
    if (idle < STEPS_WITHOUT_GAIN) continue;
    [stride, idle, prices] = [stride / 2, 0, best.prices.slice()];
  }
  return { prices: best.prices, bound: Math.min(best.bound, target) };
}

/** The bound of these prices, and by point one less what connects it in the relaxed choice. */
function relaxed(list: ColumnList<Column>, prices: Float64Array): { bound: number; lack: Float64Array } {
  const { mask, cost, layer, layers } = list;
  const priceOf = priceOfSet(prices);
  const lack = new Float64Array(list.points).fill(1);
  let bound = prices.reduce((sum, price) => sum + price, 0);
  const take = (set: number, reduced: number): void => {
    bound += reduced;
    for (let rest = set; rest > 0; rest &= rest - 1) {
      const point = 31 - Math.clz32(rest & -rest);
      lack[point] = (lack[point] as number) - 1;
    }
  };
  const least = new Float64Array(layers);
  const leastAt = new Int32Array(layers);
  for (let at = 0; at < mask.length; at++) {
    const reduced = (cost[at] as number) - priceOf(mask[at] as number);
    if (reduced >= 0) continue;
    const own = layer[at] as number;
    if (own === layers) take(mask[at] as number, reduced);
    else if (reduced < (least[own] as number)) [least[own], leastAt[own]] = [reduced, at];
  }
  for (let own = 0; own < layers; own++)
    if ((least[own] as number) < 0) take(mask[leastAt[own] as number] as number, least[own] as number);
  return { bound, lack };
}
