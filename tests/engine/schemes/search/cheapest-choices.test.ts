import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { choicesByCost, leastCost } from '#engine/schemes/search/cheapest-choices.ts';
import { EXACT_POINTS } from '#engine/schemes/search/least-costs.ts';
import type { Choice, Column, SearchSpace } from '#engine/schemes/search/search-space.ts';
import { everyChoice, nameOf, spaces } from './random-space.ts';

const small = spaces({ points: 5, layers: 4, columns: 5 });
const columnOf = (mask: number, cost: number, key: string): Column => ({ mask, cost, key });

/** The stated order of ties, said again: by layers in order of id, then free columns by their lowest points. */
function decisions(space: SearchSpace, { columns }: Choice): string {
  const last = '~';
  const layers = space.layers.map(
    (layer) => layer.columns.find((column) => columns.includes(column))?.key ?? last,
  );
  const free = columns
    .filter((column) => space.free.includes(column))
    .toSorted((a, b) => (a.mask & -a.mask) - (b.mask & -b.mask));
  return [...layers, ...free.map(({ key }) => key)].join(' ');
}

describe('choices by cost', () => {
  it('are all there are, each once, cheapest first, ties in the stated order', () => {
    fc.assert(
      fc.property(small, (space) => {
        const given = [...choicesByCost(space)];
        expect(given.map(nameOf).toSorted()).toEqual(everyChoice(space).map(nameOf).toSorted());
        for (const [i, choice] of given.entries()) {
          const next = given[i + 1];
          if (next === undefined) continue;
          expect(choice.cost).toBeLessThanOrEqual(next.cost);
          if (choice.cost === next.cost) expect(decisions(space, choice) < decisions(space, next)).toBe(true);
        }
        expect(leastCost(space)).toBe(given[0]?.cost ?? null);
      }),
      { numRuns: 300 },
    );
  });

  it('do not depend on the order in which layers and columns are told', () => {
    fc.assert(
      fc.property(small, (space) => {
        const turned = {
          points: space.points,
          layers: space.layers.toReversed().map((one) => ({ ...one, columns: one.columns.toReversed() })),
          free: space.free.toReversed(),
        };
        expect([...choicesByCost(turned)].map(nameOf)).toEqual([...choicesByCost(space)].map(nameOf));
      }),
    );
  });

  it('of nothing wanted is the one that does nothing', () => {
    const nothing = { points: 0, layers: [{ id: 'a', columns: [] }], free: [] };
    expect([...choicesByCost(nothing)]).toEqual([{ cost: 0, columns: [] }]);
    expect(leastCost(nothing)).toBe(0);
  });

  it('of one point are its columns', () => {
    const space = {
      points: 1,
      layers: [{ id: 'a', columns: [columnOf(1, 5, 'a/dear'), columnOf(1, 3, 'a/cheap')] }],
      free: [columnOf(1, 4, 'joint'), columnOf(1, Number.POSITIVE_INFINITY, 'nowhere')],
    };
    expect([...choicesByCost(space)].map(nameOf)).toEqual(['3: a/cheap', '4: joint', '5: a/dear']);
  });

  it('are none where a point is never connected, or one attachment would be used twice', () => {
    const twice = { points: 2, layers: [{ id: 'a', columns: [columnOf(1, 1, 'x'), columnOf(2, 1, 'y')] }] };
    expect([...choicesByCost({ ...twice, free: [] })]).toEqual([]);
    expect(leastCost({ ...twice, free: [] })).toBeNull();
  });

  it('come lazily, where all of them would take longer than anyone waits', () => {
    const columns = (name: string): Column[] =>
      Array.from({ length: 2 ** EXACT_POINTS - 1 }, (_, i) =>
        columnOf(i + 1, 1000 + ((i * 7919) % 997), `${name}/${i + 1}`),
      );
    const space = {
      points: EXACT_POINTS,
      layers: ['a', 'b', 'c', 'd'].map((id) => ({ id, columns: columns(id) })),
      free: columns('free'),
    };
    const choices = choicesByCost(space);
    const first = Array.from({ length: 200 }, () => choices.next().value as Choice);
    expect(first).toHaveLength(200);
    expect(new Set(first.map(nameOf)).size).toBe(200);
  });

  it('refuse more points than can be looked at in full', () => {
    expect(() => leastCost({ points: EXACT_POINTS + 1, layers: [], free: [] })).toThrow(RangeError);
  });
});
