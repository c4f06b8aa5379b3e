import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type TreeCable, treeOf, treesFrom, treeTable } from '#engine/schemes/search/branch-trees.ts';
import { pointCosts } from './random-space.ts';

interface Wired {
  readonly points: number;
  readonly cost: readonly number[];
  readonly fromRoot: readonly number[];
}

const cableCost = ({ points, cost, fromRoot }: Wired, { point, from }: TreeCable): number =>
  (from === null ? fromRoot[point] : cost[from * points + point]) ?? 0;

/** Whether every point hangs together with the root, and nothing has more cables than it may. */
function isTree(cables: readonly TreeCable[], rootCables: number): boolean {
  const out = (from: number | null): number => cables.filter((cable) => cable.from === from).length;
  const reached = new Set<number | null>([null]);
  for (let i = 0; i < cables.length; i++)
    for (const { point, from } of cables) if (reached.has(from)) reached.add(point);
  return (
    reached.size === cables.length + 1 &&
    out(null) <= rootCables &&
    cables.every(({ point }) => out(point) <= 2)
  );
}

/** Every point of the set under every other, or under the root. */
function everyTree(set: readonly number[], rootCables: number): readonly (readonly TreeCable[])[] {
  const go = (at: number, cables: readonly TreeCable[]): readonly (readonly TreeCable[])[] => {
    const point = set[at];
    if (point === undefined) return isTree(cables, rootCables) ? [cables] : [];
    return [null, ...set.filter((one) => one !== point)].flatMap((from) =>
      go(at + 1, [...cables, { point, from }]),
    );
  };
  return go(0, []);
}

describe('trees behind a fused unit', () => {
  it.each([1, 2, 3])('cost what the cheapest of all trees costs, with %i cables at the root', (cables) => {
    fc.assert(
      fc.property(pointCosts(5), ({ points, cost, fromA: fromRoot }) => {
        const trees = treesFrom(treeTable({ points, cost }), { fromRoot, cables });
        expect(trees.cost[0]).toBe(0);
        for (let mask = 1; mask < 2 ** points; mask++) {
          const set = Array.from({ length: points }, (_, i) => i).filter((i) => mask & (1 << i));
          const total = (tree: readonly TreeCable[]): number =>
            tree.reduce((sum, cable) => sum + cableCost({ points, cost, fromRoot }, cable), 0);
          const least = Math.min(...everyTree(set, cables).map(total));
          expect(trees.cost[mask]).toBe(least);
          const tree = treeOf(trees, mask);
          expect(tree === null).toBe(least === Number.POSITIVE_INFINITY);
          if (tree === null) continue;
          expect(tree.map(({ point }) => point)).toEqual(set);
          expect(isTree(tree, cables)).toBe(true);
          expect(total(tree)).toBe(least);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('pass the limit on to accessories: a star of four has two cables at its unit', () => {
    const cost = Array.from({ length: 16 }, () => 10);
    const trees = treesFrom(treeTable({ points: 4, cost }), { fromRoot: [1, 1, 1, 1], cables: 2 });
    expect(trees.cost[15]).toBe(22);
    expect(treeOf(trees, 15)?.filter(({ from }) => from === null)).toHaveLength(2);
  });

  it('of no points are empty', () => {
    const trees = treesFrom(treeTable({ points: 0, cost: [] }), { fromRoot: [], cables: 2 });
    expect([...trees.cost]).toEqual([0]);
    expect(treeOf(trees, 0)).toEqual([]);
  });
});
