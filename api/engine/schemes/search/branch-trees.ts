import type { PointCosts } from './open-paths.ts';
import { allSets, type PointSets } from './point-sets.ts';

/** A tree of cables that branches at accessories only: three cables there at most, one in and two out. */
export interface TreeTable extends PointCosts {
  readonly sets: PointSets;
  /** Entry set·points + i: all of the set hung on its own point i. Infinity where that cannot be. */
  readonly hung: Float64Array;
  /** Entry set·points + i: one cable from point i, outside the set, that feeds all of it. */
  readonly fed: Float64Array;
}

/** What a branch starts from: a fused unit's load side, or the origin of a radial. */
export interface TreeRoot {
  /** Cost from the root to each point. */
  readonly fromRoot: ArrayLike<number>;
  /** How many cables may leave it, at least 1. */
  readonly cables: number;
}

/** One cable of a tree: what it feeds, and from where; null is the root. */
export interface TreeCable {
  readonly point: number;
  readonly from: number | null;
}

/** Cables that a fused unit takes at its load side: what the rule on terminals lets into those of any make. */
export const CABLES_AT_UNIT = 3;
/** Cables of one circuit at its device: as many as where a ring carries a spur. Common practice, no source: its maker says. */
export const CABLES_AT_ORIGIN = 3;

/** The trees inside each set, shared by all roots: n·3ⁿ / 6 steps, and 2·n·2ⁿ entries. */
export function treeTable({ points, cost, sets = allSets(points) }: PointCosts): TreeTable {
  const size = points * sets.masks.length;
  const hung = new Float64Array(size).fill(Number.POSITIVE_INFINITY);
  const fed = new Float64Array(size).fill(Number.POSITIVE_INFINITY);
  const table = { points, cost, sets, hung, fed };
  for (let own = 1; own < sets.masks.length; own++) {
    const mask = sets.masks[own] as number;
    for (let point = 0; point < points; point++)
      if (mask & (1 << point)) hung[own * points + point] = hungCost(table, mask, point);
    for (let from = 0; from < points; from++)
      if (!(mask & (1 << from))) fed[own * points + from] = fedCost(table, mask, from);
  }
  return table;
}

/** The set without the point itself goes to no cable, one or two. */
function hungCost({ points, sets, fed }: TreeTable, mask: number, point: number): number {
  const rest = mask ^ (1 << point);
  if (rest === 0) return 0;
  let least = fed[sets.at(rest) * points + point] as number;
  for (let part = (rest - 1) & rest; part > rest >>> 1; part = (part - 1) & rest) {
    const other = rest ^ part;
    const total =
      (fed[sets.at(part) * points + point] as number) + (fed[sets.at(other) * points + point] as number);
    if (total < least) least = total;
  }
  return least;
}

function fedCost({ points, cost, sets, hung }: TreeTable, mask: number, from: number): number {
  const own = sets.at(mask);
  let least = Number.POSITIVE_INFINITY;
  for (let first = 0; first < points; first++) {
    const total = (cost[from * points + first] as number) + (hung[own * points + first] as number);
    if (total < least) least = total;
  }
  return least;
}

/** By number of cables, then by set in their order: the cheapest tree from the root with at most so many cables there. */
export interface RootedTrees {
  readonly table: TreeTable;
  readonly root: TreeRoot;
  readonly byCables: readonly Float64Array[];
  /** By set, in their order: the cheapest tree that feeds all of it. Infinity where there is none, 0 for the empty set. */
  readonly cost: Float64Array;
}

/** The cheapest tree of every set from this root: 3ⁿ / 2 steps for each cable that may leave it after the first. */
export function treesFrom(table: TreeTable, root: TreeRoot): RootedTrees {
  const single = singleCable(table, root);
  const byCables = [single];
  let cost = single;
  for (let cables = 2; cables <= Math.min(root.cables, table.points); cables++) {
    cost = oneCableMore(table.sets, single, cost);
    byCables.push(cost);
  }
  return { table, root, byCables, cost };
}

function singleCable({ points, sets, hung }: TreeTable, { fromRoot }: TreeRoot): Float64Array {
  const single = new Float64Array(sets.masks.length);
  for (let own = 1; own < single.length; own++) {
    let least = Number.POSITIVE_INFINITY;
    for (let first = 0; first < points; first++)
      least = Math.min(least, (fromRoot[first] as number) + (hung[own * points + first] as number));
    single[own] = least;
  }
  return single;
}

/** The part with the lowest point goes to a cable of its own, so that no split is looked at twice. */
function oneCableMore(sets: PointSets, single: Float64Array, before: Float64Array): Float64Array {
  const after = before.slice();
  for (let own = 1; own < after.length; own++) {
    const mask = sets.masks[own] as number;
    const lowest = mask & -mask;
    const others = mask ^ lowest;
    let least = after[own] as number;
    for (let rest = others; rest > 0; rest = (rest - 1) & others) {
      const total = (single[sets.at(mask ^ rest)] as number) + (before[sets.at(rest)] as number);
      if (total < least) least = total;
    }
    after[own] = least;
  }
  return after;
}

/**
 * The cables of the cheapest tree that feeds all of the set, by point; null where there is none. Of trees at one cost the one with
 * the fewest cables at the root, then at each point from there on; then the lowest first point; then the smallest first part.
 */
export function treeOf(trees: RootedTrees, mask: number): readonly TreeCable[] | null {
  if ((trees.cost[trees.table.sets.at(mask)] ?? Number.POSITIVE_INFINITY) === Number.POSITIVE_INFINITY)
    return null;
  const cables: TreeCable[] = [];
  for (const part of partsAtRoot(trees, mask))
    follow(trees.table, { mask: part, from: null, costs: trees.root.fromRoot }, cables);
  return cables.sort((a, b) => a.point - b.point);
}

function partsAtRoot({ table: { sets }, byCables, cost }: RootedTrees, mask: number): readonly number[] {
  const own = sets.at(mask);
  const parts: number[] = [];
  let rest = mask;
  let cables = byCables.findIndex((costs) => costs[own] === cost[own]);
  for (; cables > 0; cables--) {
    const [single, before, whole] = [byCables[0], byCables[cables - 1], byCables[cables]?.[sets.at(rest)]];
    const part = smallestPart(
      rest,
      (one) => (single?.[sets.at(one)] ?? 0) + (before?.[sets.at(rest ^ one)] ?? 0) === whole,
    );
    parts.push(part);
    rest ^= part;
  }
  return rest === 0 ? parts : [...parts, rest];
}

/** Among the parts of the set that hold its lowest point, the smallest number that fits. */
function smallestPart(mask: number, fits: (part: number) => boolean): number {
  const lowest = mask & -mask;
  const others = mask ^ lowest;
  for (let more = 0; ; more = (more - others) & others) {
    if (fits(lowest | more)) return lowest | more;
    if (more === others) return mask;
  }
}

interface Feed {
  readonly mask: number;
  readonly from: number | null;
  /** From where the cable comes to each point. */
  readonly costs: ArrayLike<number>;
}

/** Adds the cable that feeds this set, and all behind it. */
function follow(table: TreeTable, { mask, from, costs }: Feed, cables: TreeCable[]): void {
  const { points, cost, sets, hung, fed } = table;
  let point = -1;
  let least = Number.POSITIVE_INFINITY;
  for (let first = 0; first < points; first++) {
    const total = (costs[first] as number) + (hung[sets.at(mask) * points + first] as number);
    if (total < least) [least, point] = [total, first];
  }
  cables.push({ point, from });
  const rest = mask ^ (1 << point);
  if (rest === 0) return;
  const whole = hung[sets.at(mask) * points + point];
  const row = Array.from({ length: points }, (_, to) => cost[point * points + to] as number);
  const feeds = (part: number): number => fed[sets.at(part) * points + point] as number;
  const part =
    feeds(rest) === whole ? rest : smallestPart(rest, (one) => feeds(one) + feeds(rest ^ one) === whole);
  follow(table, { mask: part, from: point, costs: row }, cables);
  if (part !== rest) follow(table, { mask: rest ^ part, from: point, costs: row }, cables);
}
