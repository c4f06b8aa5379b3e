import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { costsThrough, orderThrough, pathTable } from '#engine/schemes/search/open-paths.ts';
import { pointCosts } from './random-space.ts';

const orders = (points: readonly number[]): readonly (readonly number[])[] =>
  points.length === 0
    ? [[]]
    : points.flatMap((first) =>
        orders(points.filter((one) => one !== first)).map((rest) => [first, ...rest]),
      );

describe('paths through a set of points', () => {
  it('cost what the cheapest of all orders costs, and are the first of those', () => {
    fc.assert(
      fc.property(pointCosts(5), ({ points, cost, fromA, fromB }) => {
        const table = pathTable({ points, cost });
        const through = costsThrough(table, [{ fromA, fromB }]).cost;
        for (let mask = 1; mask < 2 ** points; mask++) {
          const set = Array.from({ length: points }, (_, i) => i).filter((i) => mask & (1 << i));
          const priced = orders(set).map((order) => ({
            order,
            total: order.reduce(
              (sum, point, i) => sum + (i === 0 ? 0 : (cost[(order[i - 1] ?? 0) * points + point] ?? 0)),
              (fromA[order[0] ?? 0] ?? 0) + (fromB[order.at(-1) ?? 0] ?? 0),
            ),
          }));
          const least = Math.min(...priced.map(({ total }) => total));
          expect(through[mask]).toBe(least);
          const expected = priced.find(({ total }) => total === least && least < Number.POSITIVE_INFINITY);
          expect(orderThrough(table, { fromA, fromB }, mask)).toEqual(expected?.order ?? null);
        }
      }),
      { numRuns: 150 },
    );
  });

  it('take of several pairs of ends the cheapest', () => {
    fc.assert(
      fc.property(pointCosts(4), fc.integer({ min: 0, max: 3 }), ({ points, cost, fromA, fromB }, more) => {
        const table = pathTable({ points, cost });
        const turned = (row: readonly number[], by: number) => row.map((_, i) => row[(i + by) % points] ?? 0);
        const ends = Array.from({ length: more + 1 }, (_, k) => ({
          fromA: turned(fromA, k),
          fromB: turned(fromB, 2 * k),
        }));
        const each = ends.map((pair) => costsThrough(table, [pair]).cost);
        const any = costsThrough(table, ends);
        for (let mask = 1; mask < 2 ** points; mask++) {
          const costs = each.map((through) => through[mask] ?? 0);
          const least = Math.min(...costs);
          expect(any.cost[mask]).toBe(least);
          if (least < Number.POSITIVE_INFINITY) expect(costs[any.by[mask] ?? -1]).toBe(least);
          else expect(any.by[mask]).toBe(-1);
        }
      }),
      { numRuns: 100 },
    );
  });

  it('out and back is the way of one point', () => {
    const table = pathTable({ points: 1, cost: [0] });
    const ends = { fromA: [30], fromB: [12] };
    expect([...costsThrough(table, [ends]).cost]).toEqual([Number.POSITIVE_INFINITY, 42]);
    expect(orderThrough(table, ends, 1)).toEqual([0]);
    expect(orderThrough(table, ends, 0)).toBeNull();
  });

  it('of no points are none', () => {
    const table = pathTable({ points: 0, cost: [] });
    expect([...costsThrough(table, [{ fromA: [], fromB: [] }]).cost]).toEqual([Number.POSITIVE_INFINITY]);
  });
});
