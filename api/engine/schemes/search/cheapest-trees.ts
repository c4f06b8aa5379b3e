import { type TreeCable, type TreeTable, treeOf, treesFrom as treesOf, treeTable } from './branch-trees.ts';
import type { Costs } from './cheapest-orders.ts';
import type { PointSets } from './point-sets.ts';

/** The cheapest tree over one set of points: from where each cable leads to where, −1 for the root, feeders first. */
export interface Tree {
  readonly cost: number;
  readonly feeds: () => readonly (readonly [from: number, to: number])[];
}

/** Trees among wanted points, for every root of a house. */
export const treesAmong = (costs: Costs, sets: PointSets): TreeTable =>
  treeTable({ points: costs.length, cost: costs.flat(), sets });

/**
 * The cheapest tree from a root over every set.
 *
 * @param row from the root to each point. @param most how many cables may leave the root.
 * @returns by set, in their order; null for the empty set and where no tree joins the set.
 */
export function cheapestTrees(
  table: TreeTable,
  row: readonly number[],
  most: number,
): readonly (Tree | null)[] {
  const rooted = treesOf(table, { fromRoot: row, cables: most });
  return Array.from(rooted.cost, (cost, set): Tree | null =>
    set === 0 || !Number.isFinite(cost)
      ? null
      : { cost, feeds: () => feedersFirst(treeOf(rooted, table.sets.masks[set] as number) ?? []) },
  );
}

function feedersFirst(cables: readonly TreeCable[]): ReturnType<Tree['feeds']> {
  const below = (from: number | null): ReturnType<Tree['feeds']> =>
    cables
      .filter((cable) => cable.from === from)
      .flatMap(({ point }) => [[from ?? -1, point] as const, ...below(point)]);
  return below(null);
}
