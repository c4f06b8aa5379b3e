import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chargedChoices } from '#engine/schemes/search/charged-choices.ts';
import { choicesByCost } from '#engine/schemes/search/cheapest-choices.ts';
import type { CircuitCharge } from '#engine/schemes/search/circuit-charges.ts';
import type { SchemeColumn } from '#engine/schemes/search/scheme-column.ts';
import type { Column, SearchSpace } from '#engine/schemes/search/search-space.ts';
import { waysByFloor } from '#engine/schemes/search/ways-by-floor.ts';
import { isTouchedSo, type Touched, waysByCharge, within } from '#engine/schemes/search/ways-of-touching.ts';
import { noWorks } from '#engine/schemes/search/works.ts';
import { everyChoice, nameOf, spaces } from './random-space.ts';

const circuitIds = ['a', 'b', 'c'];

const charge = (circuitId: string) =>
  fc
    .record({
      touched: fc.integer({ min: 0, max: 9 }),
      remedies: fc.integer({ min: 0, max: 9 }),
      needing: fc.integer({ min: 0, max: 31 }),
    })
    .map(
      (own): CircuitCharge => ({
        circuitId,
        ...own,
        works: { touched: noWorks, remedies: noWorks },
      }),
    );

const charges = fc.tuple(...circuitIds.map(charge));

/** The columns of a space, each at a circuit or at none: a whole layer at one, free ones by their keys. */
function atCircuits({ points, layers, free }: SearchSpace): SearchSpace<SchemeColumn> {
  const at = (column: Column, k: number): SchemeColumn => ({
    ...column,
    kind: 'spurs',
    circuitIds: circuitIds.slice(k % 4, (k % 4) + 1),
    works: () => noWorks,
    parts: () => [],
  });
  return {
    points,
    layers: layers.map((layer, k) => ({ ...layer, columns: layer.columns.map((one) => at(one, k)) })),
    free: free.map((one) => at(one, one.key.length)),
  };
}

/** What the circuits of a choice charge, worked out from it as a whole. */
function chargedOf(columns: readonly SchemeColumn[], all: readonly CircuitCharge[]): number {
  return all.reduce((sum, { circuitId, touched, remedies, needing }) => {
    const own = columns.filter((column) => column.circuitIds.includes(circuitId));
    if (own.length === 0) return sum;
    const isAsked = own.some(({ mask }) => (mask & needing) !== 0);
    return sum + touched + (isAsked ? remedies : 0);
  }, 0);
}

describe('choices with what their circuits charge', () => {
  it('are all there are, each once, none after a dearer one', () => {
    fc.assert(
      fc.property(spaces({ points: 4, layers: 4, columns: 4 }), charges, (bare, all) => {
        const space = atCircuits(bare);
        const given = [...chargedChoices(space, all, choicesByCost)];
        const wanted = everyChoice(space).filter(({ cost }) => Number.isFinite(cost));
        expect(given.map(({ choice }) => nameOf(choice)).toSorted()).toEqual(wanted.map(nameOf).toSorted());
        for (const [i, { choice, cost }] of given.entries()) {
          const columns = space.layers
            .flatMap((layer) => layer.columns)
            .concat(space.free)
            .filter(({ key }) => choice.columns.some((column) => column.key === key));
          expect(cost).toBe(choice.cost + chargedOf(columns, all));
          expect(cost).toBeLessThanOrEqual(given[i + 1]?.cost ?? cost);
        }
      }),
      { numRuns: 300 },
    );
  });
});

describe('the order of charged choices', () => {
  it('is that of every way ranked by itself: by cost, then by way, then as ranked', () => {
    fc.assert(
      fc.property(spaces({ points: 4, layers: 4, columns: 4 }), charges, (bare, all) => {
        const space = atCircuits(bare);
        const name = (cost: number, columns: readonly Column[]) =>
          `${cost}: ${columns.map(({ key }) => key).join(' ')}`;
        const ranked = [...waysByCharge(all, space.points)].flatMap(({ states, charge: own }) =>
          [...choicesByCost(within(space, all, states))]
            .filter(({ columns }) => isTouchedSo(columns, all, states))
            .map(({ cost, columns }) => ({ cost: own + cost, columns })),
        );
        const wanted = ranked.toSorted((a, b) => a.cost - b.cost);
        const given = [...chargedChoices(space, all, choicesByCost)];
        expect(given.map(({ cost, choice }) => name(cost, choice.columns))).toEqual(
          wanted.map(({ cost, columns }) => name(cost, columns)),
        );
      }),
      { numRuns: 500 },
    );
  });

  it('asks for the ranking of few ways where many circuits could be touched', () => {
    const one = (circuit: number, point: number, cost: number): SchemeColumn => ({
      ...{ mask: 1 << point, cost, key: `${circuit}/${point}`, kind: 'spurs', circuitIds: [`c${circuit}`] },
      ...{ works: () => noWorks, parts: () => [] },
    });
    // Each point is near one circuit of its own and far from the others.
    const layers = Array.from({ length: 30 }, (_, circuit) => ({
      id: `layer-${circuit}`,
      columns: [0, 1, 2, 3].map((point) => one(circuit, point, circuit === point * 7 ? 10 : 500 + circuit)),
    }));
    const all = layers.map(
      (_, i): CircuitCharge => ({
        ...{ circuitId: `c${i}`, touched: 20, remedies: 40, needing: 15 },
        works: { touched: noWorks, remedies: noWorks },
      }),
    );
    let rankings = 0;
    const counted = <C extends Column>(space: SearchSpace<C>) => {
      rankings += 1;
      return choicesByCost(space);
    };
    const choices = chargedChoices({ points: 4, layers, free: [] }, all, counted);
    expect(choices.next().value?.cost).toBe(4 * (10 + 60));
    for (let i = 0; i < 9; i++) choices.next();
    expect(rankings).toBeLessThan(30);
  });
});

describe('ways by the floors of their choices', () => {
  it('give every way that has a choice of its own, none after a choice that costs less than the floor was', () => {
    fc.assert(
      fc.property(spaces({ points: 4, layers: 4, columns: 4 }), charges, (bare, all) => {
        const space = atCircuits(bare);
        const leastOf = ({ states, charge: own }: Touched): number | null => {
          const costs = [...choicesByCost(within(space, all, states))].flatMap(({ columns, cost }) =>
            isTouchedSo(columns, all, states) ? [own + cost] : [],
          );
          return costs[0] ?? null;
        };
        const ways = waysByFloor(space, all);
        const given = new Map<string, number>();
        for (let floor = ways.floor; floor < Number.POSITIVE_INFINITY; floor = ways.floor) {
          const way = ways.next();
          expect(ways.floor).toBeGreaterThanOrEqual(floor);
          if (way !== null) given.set(way.states.join(' '), floor);
        }
        for (const way of waysByCharge(all, space.points)) {
          const least = leastOf(way);
          if (least !== null) expect(given.get(way.states.join(' '))).toBeLessThanOrEqual(least);
        }
      }),
      { numRuns: 300 },
    );
  });
});

describe('ways of touching circuits', () => {
  const many = Array.from(
    { length: 30 },
    (_, i): CircuitCharge => ({
      circuitId: `c${i}`,
      touched: 10 + i,
      remedies: 5,
      needing: 1,
      works: { touched: noWorks, remedies: noWorks },
    }),
  );

  it('come one after another as they are asked for, those that charge least first, of thirty circuits too', () => {
    const ways = waysByCharge(many, 4);
    const charged = Array.from({ length: 200 }, () => ways.next().value?.charge ?? Number.NaN);
    expect(charged).toEqual(charged.toSorted((a, b) => a - b));
    expect(charged.slice(0, 3)).toEqual([0, 10, 11]);
  });

  it('touch no more circuits than there are points', () => {
    const all = [...waysByCharge(many.slice(0, 5), 2)];
    // None, one of five, two of five; each touched one plainly or with its remedy.
    expect(all).toHaveLength(1 + 5 * 2 + 10 * 4);
    expect(new Set(all.map(({ states }) => states.join(' '))).size).toBe(all.length);
  });
});
