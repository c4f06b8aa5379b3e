import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { FlowNetwork } from '#engine/proof/flow/flow-network.ts';
import { prepareFlow } from '#engine/proof/flow/prepare-flow.ts';
import { resistanceFromSource } from '#engine/proof/flow/resistance-from-source.ts';
import { networkRecipe, TRIES } from './network-recipe.ts';
import { randomNetwork } from './random-network.ts';
import { flowOf, largest, networkOf, ROUNDING, solved } from './solved-flow.ts';

/** Thicker cable in one leg, or one more beside it; what is picked decides which leg and how much. */
const copper = fc.record({
  pick: fc.nat(),
  ratio: fc.double({ min: 0.01, max: 0.99, noNaN: true }),
  isBeside: fc.boolean(),
});
type Copper = typeof copper extends fc.Arbitrary<infer T> ? T : never;

const thicker = (network: FlowNetwork, leg: number, ratio: number): FlowNetwork => ({
  ...network,
  ohm: network.ohm.map((ohm, at) => (at === leg ? ohm * ratio : ohm)),
});

function joined(network: FlowNetwork, from: number, to: number, ohm: number): FlowNetwork {
  return {
    ...network,
    from: Int32Array.of(...network.from, from),
    to: Int32Array.of(...network.to, to),
    ohm: Float64Array.of(...network.ohm, ohm),
  };
}

function withCopper(network: FlowNetwork, leg: number, { ratio, isBeside }: Copper): FlowNetwork {
  if (!isBeside) return thicker(network, leg, ratio);
  return joined(network, network.from[leg] ?? 0, network.to[leg] ?? 0, (network.ohm[leg] ?? 0) / ratio);
}

/** The largest rise from one to the other, as a part of the largest value. */
const rise = (before: Float64Array, after: Float64Array): number =>
  Math.max(
    ...Array.from(before, (value, i) =>
      Number.isNaN(value) ? 0 : (after[i] ?? Number.POSITIVE_INFINITY) - value,
    ),
  ) / Math.max(1e-3, largest(before));

const lossW = (loadA: Float64Array, dropV: Float64Array): number =>
  loadA.reduce((sum, each, node) => sum + (Number.isNaN(dropV[node]) ? 0 : each * (dropV[node] ?? 0)), 0);

// That resistances fall and losses with them is Rayleigh's monotonicity law; P. Doyle and J. Snell, Random Walks and
// Electric Networks, 1984, chapter 5 (from memory). Single volt drops need not follow it, so each claim has its limit.
describe('more copper', () => {
  it('never raises a resistance from the source', () => {
    fc.assert(
      fc.property(networkRecipe(), copper, (recipe, added) => {
        const { network } = randomNetwork(recipe);
        fc.pre(network.from.length > 0);
        const more = withCopper(network, added.pick % network.from.length, added);
        const [before, after] = [network, more].map((one) => resistanceFromSource(prepareFlow(one)));
        expect(rise(before ?? new Float64Array(), after ?? new Float64Array())).toBeLessThan(ROUNDING);
      }),
      TRIES,
    );
  });

  it('never raises a resistance from the source between any two nodes either', () => {
    fc.assert(
      fc.property(networkRecipe(), fc.nat(), fc.nat(), (recipe, from, to) => {
        const { network } = randomNetwork(recipe);
        const more = joined(network, from % network.nodeCount, to % network.nodeCount, 0.05);
        const [before, after] = [network, more].map((one) => resistanceFromSource(prepareFlow(one)));
        expect(rise(before ?? new Float64Array(), after ?? new Float64Array())).toBeLessThan(ROUNDING);
      }),
      TRIES,
    );
  });

  it('never raises what is lost in the circuit, nor the volt drop of the only load', () => {
    fc.assert(
      fc.property(networkRecipe(), copper, (recipe, added) => {
        const { network, loadA } = randomNetwork(recipe);
        fc.pre(network.from.length > 0);
        const more = withCopper(network, added.pick % network.from.length, added);
        const single = loadA.map((each, node) => (node === added.pick % network.nodeCount ? each : 0));
        for (const drawn of [loadA, single]) {
          const [before, after] = [network, more].map((one) =>
            lossW(drawn, solved({ network: one, loadA: drawn }).dropV),
          );
          expect(after).toBeLessThanOrEqual((before ?? 0) * (1 + ROUNDING) + ROUNDING);
        }
      }),
      TRIES,
    );
  });

  it('never raises a volt drop where there is one way to each point', () => {
    fc.assert(
      fc.property(networkRecipe(['tree']), copper, (recipe, added) => {
        const { network, loadA } = randomNetwork(recipe);
        fc.pre(network.from.length > 0);
        const more = withCopper(network, added.pick % network.from.length, added);
        expect(rise(solved({ network, loadA }).dropV, solved({ network: more, loadA }).dropV)).toBeLessThan(
          ROUNDING,
        );
      }),
      TRIES,
    );
  });

  it('never raises a volt drop where it leads from the source', () => {
    fc.assert(
      fc.property(networkRecipe(), copper, (recipe, added) => {
        const { network, loadA } = randomNetwork(recipe);
        const before = solved({ network, loadA }).dropV;
        const atSource = [...network.from.keys()].filter((leg) =>
          [network.from[leg], network.to[leg]].includes(network.source),
        );
        const leg = atSource[added.pick % Math.max(1, atSource.length)];
        const mores = [
          joined(network, network.source, added.pick % network.nodeCount, added.ratio),
          ...(leg === undefined ? [] : [withCopper(network, leg, added)]),
        ];
        for (const more of mores)
          expect(rise(before, solved({ network: more, loadA }).dropV)).toBeLessThan(ROUNDING);
      }),
      TRIES,
    );
  });

  it('never raises a volt drop where all cables are thicker alike', () => {
    fc.assert(
      fc.property(networkRecipe(), copper, (recipe, { ratio }) => {
        const { network, loadA } = randomNetwork(recipe);
        const more = { ...network, ohm: network.ohm.map((ohm) => ohm * ratio) };
        expect(rise(solved({ network, loadA }).dropV, solved({ network: more, loadA }).dropV)).toBeLessThan(
          ROUNDING,
        );
      }),
      TRIES,
    );
  });

  it('may raise the volt drop of a point that comes to feed another', () => {
    // 10 A at node 2 alone: the thicker the leg between the two, the more of it goes by node 1.
    const dropAtOne = (betweenOhm: number): number =>
      flowOf(
        networkOf(3, [
          [0, 1, 1],
          [1, 2, betweenOhm],
          [2, 0, 1],
        ]),
        [0, 0, 10],
      ).dropV[1] ?? 0;
    expect(dropAtOne(8)).toBeCloseTo(1, 12);
    expect(dropAtOne(2)).toBeCloseTo(2.5, 12);
  });
});
