import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leastCost } from '#engine/schemes/search/cheapest-choices.ts';
import { goodChoice } from '#engine/schemes/search/many-points.ts';
import type { Choice, Column, SearchSpace } from '#engine/schemes/search/search-space.ts';
import { randomFrom } from '../../proof/flow/random-network.ts';
import { spaces } from './random-space.ts';

/** Whether the choice connects each point once and no layer twice. */
function isChoice(space: SearchSpace, { columns, cost }: Choice): boolean {
  const together = columns.reduce((mask, one) => mask | one.mask, 0);
  const sum = columns.reduce((total, one) => total + one.mask, 0);
  return (
    together === 2 ** space.points - 1 &&
    sum === together &&
    space.layers.every((layer) => layer.columns.filter((one) => columns.includes(one)).length <= 1) &&
    cost === columns.reduce((total, one) => total + one.cost, 0)
  );
}

/** Points on a plane, attachments around them; sets of up to four points, cost by the ways from the attachment. */
function houseOf(points: number, seed: number): SearchSpace {
  const random = randomFrom(seed);
  const place = (): readonly [number, number] => [random() * 9, random() * 9];
  const wanted = Array.from({ length: points }, place);
  const sets = (from: number, set: readonly number[]): readonly (readonly number[])[] => [
    ...(set.length > 0 ? [set] : []),
    ...(set.length === 4 ? [] : wanted.flatMap((_, i) => (i >= from ? sets(i + 1, [...set, i]) : []))),
  ];
  const all = sets(0, []);
  const columns = (name: string): Column[] => {
    const [x, y] = place();
    return all.map((set) => ({
      mask: set.reduce((mask, i) => mask | (1 << i), 0),
      cost:
        800 +
        Math.round(
          set.reduce(
            (sum, i) =>
              sum + 300 * (Math.abs((wanted[i]?.[0] ?? 0) - x) + Math.abs((wanted[i]?.[1] ?? 0) - y)),
            0,
          ),
        ),
      key: `${name}/${set.join('+')}`,
    }));
  };
  return {
    points,
    layers: Array.from({ length: 30 }, (_, k) => ({ id: `k${k}`, columns: columns(`k${k}`) })),
    free: columns('free').filter((_, i) => i % 5 === 0),
  };
}

describe('a good choice for many points', () => {
  it('is a choice, and its bound is no dearer than the cheapest', () => {
    fc.assert(
      fc.property(spaces({ points: 7, layers: 5, columns: 12 }), (space) => {
        const least = leastCost(space);
        const { choice, bound, gap } = goodChoice(space);
        expect(bound).toBeLessThanOrEqual(least ?? Number.POSITIVE_INFINITY);
        expect(choice === null).toBe(least === null);
        if (choice === null || least === null) return;
        expect(isChoice(space, choice)).toBe(true);
        expect(choice.cost).toBeGreaterThanOrEqual(least);
        if (gap === 0) expect(choice.cost).toBe(least);
      }),
      { numRuns: 300 },
    );
  });

  it.each([13, 18, 24])('of %i points on a plane lies within a hundredth of its bound', (points) => {
    const space = houseOf(points, 7 * points);
    const { choice, bound, gap } = goodChoice(space);
    expect(choice !== null && isChoice(space, choice)).toBe(true);
    expect(bound).toBeLessThanOrEqual(choice?.cost ?? 0);
    expect(gap).toBeLessThanOrEqual(0.01);
  });

  it('does not depend on the order in which layers and columns are told', () => {
    const space = houseOf(14, 3);
    const turned = {
      points: space.points,
      layers: space.layers.toReversed().map((one) => ({ ...one, columns: one.columns.toReversed() })),
      free: space.free.toReversed(),
    };
    expect(goodChoice(turned)).toEqual(goodChoice(space));
  });

  it('is nothing for nothing, and none where a point is never connected', () => {
    expect(goodChoice({ points: 0, layers: [], free: [] })).toEqual({
      choice: { cost: 0, columns: [] },
      bound: 0,
      gap: 0,
    });
    const free = [{ mask: 1, cost: 5, key: 'a' }];
    expect(goodChoice({ points: 2, layers: [], free })).toEqual({
      choice: null,
      bound: Number.POSITIVE_INFINITY,
      gap: null,
    });
  });
});
