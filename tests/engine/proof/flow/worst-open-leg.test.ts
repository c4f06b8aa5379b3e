import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { prepareFlow } from '#engine/proof/flow/prepare-flow.ts';
import { type OpenLegCase, worstOpenLeg } from '#engine/proof/flow/worst-open-leg.ts';
import { denseFlow } from './dense-flow.ts';
import { networkRecipe } from './network-recipe.ts';
import { type LoadedNetwork, randomFrom, randomNetwork } from './random-network.ts';
import { largest, networkOf } from './solved-flow.ts';

const TRIES = { numRuns: 150 } as const;

/** Every leg opened by itself, each case by the full system of equations. */
const allCases = (loaded: LoadedNetwork, legs: readonly number[]): readonly OpenLegCase[] =>
  legs.map((leg) => {
    const { legA, dropV } = denseFlow(loaded, leg);
    return { leg, worstA: largest(legs.map((each) => legA[each] ?? 0)), worstDropV: largest(dropV) };
  });

function expectWorst(loaded: LoadedNetwork, legs: readonly number[]): void {
  const cases = allCases(loaded, legs);
  const found = worstOpenLeg(loaded.network, loaded.loadA, legs);
  const same = cases.find(({ leg }) => leg === found.leg);
  expect(found.worstA).toBeCloseTo(same?.worstA ?? Number.NaN, 8);
  expect(found.worstDropV).toBeCloseTo(same?.worstDropV ?? Number.NaN, 8);
  const mostA = Math.max(...cases.map(({ worstA }) => worstA));
  expect(found.worstA).toBeCloseTo(mostA, 6);
  const heaviest = cases.filter(({ worstA }) => worstA > mostA * (1 - 1e-11));
  expect(found.worstDropV).toBeGreaterThan(Math.max(...heaviest.map(({ worstDropV }) => worstDropV)) - 1e-6);
}

describe('the worst leg to be open', () => {
  it('is the end of a ring that leaves everything to the thinner way round', () => {
    const network = networkOf(3, [
      [0, 1, 0.1],
      [1, 2, 0.2],
      [2, 0, 0.3],
    ]);
    const { leg, worstA, worstDropV } = worstOpenLeg(network, Float64Array.of(0, 12, 20), [0, 1, 2]);
    expect(leg).toBe(0);
    expect(worstA).toBe(32);
    expect(worstDropV).toBeCloseTo(32 * 0.3 + 12 * 0.2, 12);
  });

  it('is the first of equal ones', () => {
    const network = networkOf(3, [
      [0, 1, 0.1],
      [1, 2, 0.1],
      [2, 0, 0.1],
    ]);
    expect(worstOpenLeg(network, Float64Array.of(0, 10, 10), [0, 1, 2]).leg).toBe(0);
    expect(worstOpenLeg(network, Float64Array.of(0, 10, 10), [2, 1, 0]).leg).toBe(2);
  });

  it('counts the volt drop of trees, also of those at the source', () => {
    const ring = [
      [0, 1, 0.1],
      [1, 0, 0.1],
    ] as const;
    const onRing = networkOf(3, [...ring, [1, 2, 0.5]]);
    expect(worstOpenLeg(onRing, Float64Array.of(0, 0, 10), [0, 1]).worstDropV).toBeCloseTo(6, 12);
    const atSource = networkOf(3, [...ring, [0, 2, 0.5]]);
    expect(worstOpenLeg(atSource, Float64Array.of(0, 1, 10), [0, 1]).worstDropV).toBeCloseTo(5, 12);
  });

  it('is none where there is no leg to open', () => {
    const network = networkOf(2, [[0, 1, 0.1]]);
    expect(worstOpenLeg(network, Float64Array.of(0, 5), [])).toEqual({ leg: -1, worstA: 0, worstDropV: 0 });
  });

  it('agrees with opening every leg of a ring', () => {
    fc.assert(
      fc.property(networkRecipe(['ring', 'ring-with-trees']), (recipe) => {
        const loaded = randomNetwork(recipe);
        expectWorst(loaded, [...(prepareFlow(loaded.network).ring?.legs ?? [])]);
      }),
      TRIES,
    );
  });

  it('agrees with opening some legs of a ring', () => {
    fc.assert(
      fc.property(networkRecipe(['ring-with-trees']), fc.nat(), (recipe, seed) => {
        const loaded = randomNetwork(recipe);
        const random = randomFrom(seed);
        const legs = [...(prepareFlow(loaded.network).ring?.legs ?? [])].filter(() => random() < 0.4);
        fc.pre(legs.length > 0);
        expectWorst(loaded, legs.toReversed());
      }),
      TRIES,
    );
  });

  it('agrees with opening every leg of a tree or a mesh, whatever that cuts off', () => {
    fc.assert(
      fc.property(networkRecipe(['tree', 'two-rings', 'joined-rings', 'lollipop', 'mesh']), (recipe) => {
        const loaded = randomNetwork({ ...recipe, size: Math.ceil(recipe.size / 2) });
        fc.pre(loaded.network.from.length > 0);
        expectWorst(loaded, [...loaded.network.from.keys()]);
      }),
      { numRuns: 80 },
    );
  });
});
