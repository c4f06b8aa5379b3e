import type { Costs } from './cheapest-orders.ts';

/** The cheapest tree over one set of points: from where each cable leads to where, −1 for the root, feeders first. */
export interface Tree {
  readonly cost: number;
  readonly feeds: () => readonly (readonly [from: number, to: number])[];
}

const NONE = Number.POSITIVE_INFINITY;

/**
 * Trees whose every point feeds two others at the most (three cables at an accessory), worked out by sets: exact.
 * `costs` are shared by all roots of one house, so that a further root costs only its own row.
 */
export function cheapestTrees(n: number, costs: Costs): TreesOfHouse {
  const size = 1 << n;
  // hung[v][S]: v feeds exactly all of S by one cable at its own terminals; below[v][S]: by up to two.
  const one = Array.from({ length: n }, () => new Float64Array(size).fill(NONE));
  const below = Array.from({ length: n }, () => new Float64Array(size).fill(NONE));
  const oneOf = (row: readonly number[], set: number): number => {
    let cost = NONE;
    for (let c = 0; c < n; c += 1)
      if ((set >> c) & 1) cost = Math.min(cost, (row[c] ?? NONE) + (below[c]?.[set & ~(1 << c)] ?? NONE));
    return cost;
  };
  for (let v = 0; v < n; v += 1) {
    const own = below[v];
    if (own) own[0] = 0;
  }
  for (let set = 1; set < size; set += 1)
    for (let v = 0; v < n; v += 1) {
      const [ones, twos] = [one[v], below[v]];
      if ((set >> v) & 1 || !ones || !twos) continue;
      ones[set] = oneOf(costs[v] ?? [], set);
      twos[set] = Math.min(ones[set] ?? NONE, pairOf(ones, set).cost);
    }
  return { n, costs, below, oneOf };
}

/** What `cheapestTrees` keeps of the points, for every root. */
export interface TreesOfHouse {
  readonly n: number;
  readonly costs: Costs;
  readonly below: readonly Float64Array[];
  readonly oneOf: (row: readonly number[], set: number) => number;
}

/** The cheapest split of a set into two parts, one cable each; the lowest point is in the first. */
function pairOf(ones: ArrayLike<number>, set: number): { readonly cost: number; readonly first: number } {
  const low = set & -set;
  let best = { cost: NONE, first: 0 };
  for (let part = (set - 1) & set; part > 0; part = (part - 1) & set) {
    if (!(part & low)) continue;
    const cost = (ones[part] ?? NONE) + (ones[set & ~part] ?? NONE);
    if (cost < best.cost) best = { cost, first: part };
  }
  return best;
}

/**
 * The cheapest tree from a root over every set.
 *
 * @param row from the root to each point. @param most how many cables may leave the root, 1 or 2.
 * @returns by mask; null at 0 and where no tree joins the set.
 */
export function treesFrom(
  trees: TreesOfHouse,
  row: readonly number[],
  most: 1 | 2,
): readonly (Tree | null)[] {
  const size = 1 << trees.n;
  const ones = Float64Array.from({ length: size }, (_, set) => (set === 0 ? NONE : trees.oneOf(row, set)));
  return Array.from({ length: size }, (_, set): Tree | null => {
    if (set === 0) return null;
    const pair = most === 2 ? pairOf(ones, set) : { cost: NONE, first: 0 };
    const single = ones[set] ?? NONE;
    const cost = Math.min(single, pair.cost);
    if (!Number.isFinite(cost)) return null;
    const sets = single <= pair.cost ? [set] : [pair.first, set & ~pair.first];
    return { cost, feeds: () => sets.flatMap((part) => branch(trees, -1, row, part)) };
  });
}

function branch(
  trees: TreesOfHouse,
  from: number,
  row: readonly number[],
  set: number,
): ReturnType<Tree['feeds']> {
  const { n, below, costs, oneOf } = trees;
  const costTo = (c: number): number => (row[c] ?? NONE) + (below[c]?.[set & ~(1 << c)] ?? NONE);
  const first = Array.from({ length: n }, (_, c) => c)
    .filter((c) => (set >> c) & 1)
    .reduce((best, c) => (costTo(c) < costTo(best) ? c : best), Math.log2(set & -set));
  const rest = set & ~(1 << first);
  if (rest === 0) return [[from, first]];
  const own = costs[first] ?? [];
  const ones = Float64Array.from({ length: 1 << n }, (_, part) =>
    part !== 0 && (part & rest) === part ? oneOf(own, part) : NONE,
  );
  const pair = pairOf(ones, rest);
  const sets = (ones[rest] ?? NONE) <= pair.cost ? [rest] : [pair.first, rest & ~pair.first];
  return [[from, first], ...sets.flatMap((part) => branch(trees, first, own, part))];
}
