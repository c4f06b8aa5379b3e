import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { prepareFlow, withOhm } from '#engine/proof/flow/prepare-flow.ts';
import { resistanceFromSource } from '#engine/proof/flow/resistance-from-source.ts';
import { denseFlow } from './dense-flow.ts';
import { networkRecipe } from './network-recipe.ts';
import { randomNetwork } from './random-network.ts';
import { difference, networkOf, ROUNDING } from './solved-flow.ts';

describe('the resistance between the source and each node', () => {
  it('is that of both ways round side by side on a ring, with its trees added', () => {
    const network = networkOf(5, [
      [0, 1, 0.1],
      [2, 1, 0.2],
      [2, 0, 0.3],
      [2, 3, 0.4],
    ]);
    const found = resistanceFromSource(prepareFlow(network));
    expect(difference(found, [0, (0.1 * 0.5) / 0.6, (0.3 * 0.3) / 0.6, 0.55, Number.NaN])).toBeLessThan(
      ROUNDING,
    );
  });

  it('is nought round a ring of links', () => {
    const network = networkOf(3, [
      [0, 1, 0],
      [1, 2, 0],
      [2, 0, 0],
    ]);
    expect([...resistanceFromSource(prepareFlow(network))]).toEqual([0, 0, 0]);
  });

  it('is the volt drop of 1 A drawn there alone, on circuits of every kind', () => {
    fc.assert(
      fc.property(networkRecipe(), (recipe) => {
        const { network } = randomNetwork(recipe);
        const found = resistanceFromSource(prepareFlow(network));
        const meant = Array.from(found, (_, node) => {
          const loadA = new Float64Array(network.nodeCount);
          loadA[node] = 1;
          return denseFlow({ network, loadA }).dropV[node] ?? 0;
        });
        expect(difference(found, meant)).toBeLessThan(ROUNDING);
      }),
      { numRuns: 80 },
    );
  });

  it('is the same with other resistances as if the network were prepared with them', () => {
    fc.assert(
      fc.property(networkRecipe(), fc.double({ min: 0.1, max: 9, noNaN: true }), (recipe, factor) => {
        const { network } = randomNetwork(recipe);
        const ohm = network.ohm.map((one, leg) => one * (1 + (factor * ((leg * 7) % 5)) / 5));
        const anew = resistanceFromSource(prepareFlow({ ...network, ohm }));
        expect(difference(resistanceFromSource(withOhm(prepareFlow(network), ohm)), anew)).toBeLessThan(
          ROUNDING,
        );
      }),
      { numRuns: 80 },
    );
  });
});
