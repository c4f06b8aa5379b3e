import { costsThrough, orderThrough, type PathEnds, type PathTable, pathTable } from './open-paths.ts';
import type { PointSets } from './point-sets.ts';

/** Costs between n wanted points, symmetric; infinite where no cable can be laid. */
export type Costs = readonly (readonly number[])[];

/** The cheapest order through one set of points, from one end to the other. */
export interface Order {
  readonly cost: number;
  /** The place of the pair of ends that it goes between. */
  readonly by: number;
  readonly order: () => readonly number[];
}

/** Paths among wanted points, for every leg of a house. */
export const pathsAmong = (costs: Costs, sets: PointSets): PathTable =>
  pathTable({ points: costs.length, cost: costs.flat(), sets });

/**
 * For every set of points the cheapest way from A through each of them once to B, whichever pair of ends that takes.
 *
 * @returns by set, in their order; the empty set, and sets that no order joins, are null.
 */
export function cheapestOrders(paths: PathTable, ends: readonly PathEnds[]): readonly (Order | null)[] {
  const { cost: costs, by: pairs } = costsThrough(paths, ends);
  return Array.from(costs, (cost, set) => {
    const by = pairs[set] ?? -1;
    const pair = ends[by];
    return pair === undefined
      ? null
      : { cost, by, order: () => orderThrough(paths, pair, paths.sets.masks[set] as number) ?? [] };
  });
}
