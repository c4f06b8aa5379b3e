import { costsThrough, orderThrough, type PathTable, pathTable } from './open-paths.ts';
import type { PointSets } from './point-sets.ts';

/** Costs between n wanted points, symmetric; infinite where no cable can be laid. */
export type Costs = readonly (readonly number[])[];

/** The cheapest order through one set of points, from one end to the other. */
export interface Order {
  readonly cost: number;
  readonly order: () => readonly number[];
}

/** Paths among wanted points, for every leg of a house. */
export const pathsAmong = (costs: Costs, sets: PointSets): PathTable =>
  pathTable({ points: costs.length, cost: costs.flat(), sets });

/**
 * For every set of points the cheapest way from A through each of them once to B.
 *
 * @returns by set, in their order; the empty set, and sets that no order joins, are null.
 */
export function cheapestOrders(
  paths: PathTable,
  ends: { readonly fromA: readonly number[]; readonly fromB: readonly number[] },
): readonly (Order | null)[] {
  return Array.from(costsThrough(paths, ends), (cost, set) =>
    Number.isFinite(cost)
      ? { cost, order: () => orderThrough(paths, ends, paths.sets.masks[set] as number) ?? [] }
      : null,
  );
}
