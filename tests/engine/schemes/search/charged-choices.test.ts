import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chargedChoices, waysByCharge } from '#engine/schemes/search/charged-choices.ts';
import { choicesByCost } from '#engine/schemes/search/cheapest-choices.ts';
import type { CircuitCharge } from '#engine/schemes/search/circuit-charges.ts';
import type { SchemeColumn } from '#engine/schemes/search/scheme-column.ts';
import type { Column, SearchSpace } from '#engine/schemes/search/search-space.ts';
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
