import { allSets, type PointSets } from './point-sets.ts';

/** Costs among wanted points: entry i·points + j is from the i-th to the j-th; Infinity where nothing leads there. */
export interface PointCosts {
  readonly points: number;
  /** Symmetric, `points`² whole numbers that are not negative; what stands on the diagonal is not read. */
  readonly cost: ArrayLike<number>;
  /** Absent: all. */
  readonly sets?: PointSets;
}

/** For each set of points the cheapest path through all of it between each two of its points; shared by all legs. */
export interface PathTable extends PointCosts {
  readonly sets: PointSets;
  /** Entry (set·points + i)·points + j: from i through all of the set to j. Infinity where there is none. */
  readonly best: Float64Array;
}

/** The two ends of an opened leg, as the cost from each to each point. */
export interface PathEnds {
  readonly fromA: ArrayLike<number>;
  readonly fromB: ArrayLike<number>;
}

/**
 * Held and Karp's table with both ends free: n³·2ⁿ / 4 steps, and n²·2ⁿ entries (4.7 MB for 12 points).
 * M. Held, R. M. Karp, "A dynamic programming approach to sequencing problems", 1962.
 */
export function pathTable({ points, cost, sets = allSets(points) }: PointCosts): PathTable {
  const best = new Float64Array(points * points * sets.masks.length).fill(Number.POSITIVE_INFINITY);
  const table = { points, cost, sets, best };
  for (const mask of sets.masks) fillSet(table, mask);
  return table;
}

function fillSet({ points, cost, sets, best }: PathTable, mask: number): void {
  const own = sets.at(mask);
  for (let to = 0; to < points; to++) {
    const bit = 1 << to;
    if (!(mask & bit)) continue;
    if (mask === bit) best[(own * points + to) * points + to] = 0;
    for (let from = 0; from < to; from++) {
      if (!(mask & (1 << from))) continue;
      const row = (sets.at(mask ^ bit) * points + from) * points;
      let least = Number.POSITIVE_INFINITY;
      for (let last = 0; last < points; last++) {
        const total = (best[row + last] as number) + (cost[last * points + to] as number);
        if (total < least) least = total;
      }
      best[(own * points + from) * points + to] = least;
      best[(own * points + to) * points + from] = least;
    }
  }
}

/** By set, in their order: the least cost of a path from A through all of it to B, by any of several pairs of ends; Infinity for none and for the empty set. */
export interface CostsThrough {
  readonly cost: Float64Array;
  /** The place of the pair of ends; −1 where there is no path. */
  readonly by: Int32Array;
}

/** The cheapest paths between any of these ends, in one pass: ends matter by a path's first and last point alone. */
export function costsThrough({ points, sets, best }: PathTable, ends: readonly PathEnds[]): CostsThrough {
  const pair = new Float64Array(points * points).fill(Number.POSITIVE_INFINITY);
  const pairBy = new Int32Array(points * points).fill(-1);
  for (const [k, { fromA, fromB }] of ends.entries())
    for (let at = 0; at < pair.length; at++) {
      const total = (fromA[Math.floor(at / points)] as number) + (fromB[at % points] as number);
      if (total < (pair[at] as number)) [pair[at], pairBy[at]] = [total, k];
    }
  const cost = new Float64Array(sets.masks.length).fill(Number.POSITIVE_INFINITY);
  const by = new Int32Array(sets.masks.length).fill(-1);
  for (let own = 1; own < cost.length; own++) {
    const start = own * pair.length;
    for (let at = 0; at < pair.length; at++) {
      const total = (pair[at] as number) + (best[start + at] as number);
      if (total < (cost[own] as number)) [cost[own], by[own]] = [total, pairBy[at] as number];
    }
  }
  return { cost, by };
}

/** The cheapest path from this point through the rest of the set to B. */
function costOnwards(
  { points, sets, best }: PathTable,
  fromB: ArrayLike<number>,
  mask: number,
  from: number,
): number {
  const row = (sets.at(mask) * points + from) * points;
  let least = Number.POSITIVE_INFINITY;
  for (let last = 0; last < points; last++)
    least = Math.min(least, (best[row + last] as number) + (fromB[last] as number));
  return least;
}

/**
 * The order of the cheapest path from A through all of the set to B; null where there is none, or the set is empty.
 * Of orders at one cost, the one that comes first point by point from A.
 */
export function orderThrough(
  table: PathTable,
  { fromA, fromB }: PathEnds,
  mask: number,
): readonly number[] | null {
  const { points, cost } = table;
  const order: number[] = [];
  for (let rest = mask, at = -1; rest !== 0; ) {
    let next = -1;
    let least = Number.POSITIVE_INFINITY;
    for (let point = 0; point < points; point++) {
      if (!(rest & (1 << point))) continue;
      const step = at < 0 ? fromA[point] : cost[at * points + point];
      const total = (step as number) + costOnwards(table, fromB, rest, point);
      if (total < least) {
        least = total;
        next = point;
      }
    }
    if (next < 0) return null;
    order.push(next);
    rest ^= 1 << next;
    at = next;
  }
  return order.length > 0 ? order : null;
}
