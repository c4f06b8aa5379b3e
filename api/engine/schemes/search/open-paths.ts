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

/** By set, in their order: the cheapest path from A through all of it to B; Infinity where there is none, and for the empty set. */
export function costsThrough(table: PathTable, { fromA, fromB }: PathEnds): Float64Array {
  const { points, sets, best } = table;
  const through = new Float64Array(sets.masks.length).fill(Number.POSITIVE_INFINITY);
  for (let own = 1; own < through.length; own++) {
    const mask = sets.masks[own] as number;
    let least = Number.POSITIVE_INFINITY;
    for (let first = 0; first < points; first++) {
      if (!(mask & (1 << first))) continue;
      const start = fromA[first] as number;
      const row = (own * points + first) * points;
      for (let last = 0; last < points; last++) {
        const total = start + (best[row + last] as number) + (fromB[last] as number);
        if (total < least) least = total;
      }
    }
    through[own] = least;
  }
  return through;
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
