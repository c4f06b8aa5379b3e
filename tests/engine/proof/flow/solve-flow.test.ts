import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { FlowNetwork } from '#engine/proof/flow/flow-network.ts';
import { prepareFlow } from '#engine/proof/flow/prepare-flow.ts';
import { newFlowResult, solveFlow } from '#engine/proof/flow/solve-flow.ts';
import { denseFlow, reachedNodes, withoutLeg } from './dense-flow.ts';
import { networkRecipe, TRIES } from './network-recipe.ts';
import { randomFrom, randomNetwork } from './random-network.ts';
import { difference, flowOf, largest, networkOf, ROUNDING, solved } from './solved-flow.ts';

const totalA = (loadA: Float64Array): number => loadA.reduce((sum, each) => sum + each, 0);

describe('a load flow', () => {
  it('feeds each load of a tree by the one way that there is', () => {
    const network = networkOf(4, [
      [0, 1, 0.1],
      [2, 1, 0.2],
      [1, 3, 0.5],
    ]);
    const { legA, dropV } = flowOf(network, [0, 3, 10, 5]);
    expect([...legA]).toEqual([18, -10, 5]);
    expect(difference(dropV, [0, 1.8, 3.8, 4.3])).toBeLessThan(ROUNDING);
  });

  it('shares a load on a ring by the resistances of both ways', () => {
    // 3 Ω one way and 1 Ω the other: a quarter of 20 A goes the longer way.
    const network = networkOf(3, [
      [0, 1, 1],
      [1, 2, 2],
      [0, 2, 1],
    ]);
    const { legA, dropV } = flowOf(network, [0, 0, 20]);
    expect(difference(legA, [5, 5, 15])).toBeLessThan(ROUNDING);
    expect(difference(dropV, [0, 5, 15])).toBeLessThan(ROUNDING);
  });

  it('shares a load of two legs between the same ends by their conductances', () => {
    const network = networkOf(3, [
      [0, 1, 0.4],
      [1, 2, 0.3],
      [2, 1, 0.1],
    ]);
    const { legA, dropV } = flowOf(network, [0, 0, 8]);
    expect(difference(legA, [8, 2, -6])).toBeLessThan(ROUNDING);
    expect(difference(dropV, [0, 3.2, 3.8])).toBeLessThan(ROUNDING);
  });

  it('balances a bridge', () => {
    const network = networkOf(4, [
      [0, 1, 1],
      [0, 2, 1],
      [1, 3, 2],
      [2, 3, 2],
      [1, 2, 7],
    ]);
    const { legA, dropV } = flowOf(network, [0, 0, 0, 6]);
    expect(difference(legA, [3, 3, 3, 3, 0])).toBeLessThan(ROUNDING);
    expect(difference(dropV, [0, 3, 3, 9])).toBeLessThan(ROUNDING);
  });

  it('passes links without a drop, in a tree, on a ring and in a mesh', () => {
    const ring = [
      [0, 1, 0],
      [1, 2, 1],
      [2, 0, 1],
    ] as const;
    const spur = [
      [1, 3, 0],
      [3, 4, 0.5],
    ] as const;
    const onRing = flowOf(networkOf(5, [...ring, ...spur]), [0, 0, 10, 0, 4]);
    expect(difference(onRing.legA, [9, 5, -5, 4, 4])).toBeLessThan(ROUNDING);
    expect(difference(onRing.dropV, [0, 0, 5, 0, 2])).toBeLessThan(ROUNDING);
    const meshed = flowOf(networkOf(5, [...ring, ...spur, [2, 4, 0]]), [0, 0, 10, 0, 4]);
    // From the source to nodes 2 and 4, now one: 1 Ω by node 1, 1 Ω direct, 0.5 Ω by the spur.
    expect(difference(meshed.dropV, [0, 0, 3.5, 0, 3.5])).toBeLessThan(ROUNDING);
    expect(difference(meshed.legA, [10.5, 3.5, -3.5, 7, 7, -3])).toBeLessThan(ROUNDING);
  });

  it('splits current evenly between links side by side', () => {
    const atSource = flowOf(
      networkOf(2, [
        [0, 1, 0],
        [1, 0, 0],
      ]),
      [0, 6],
    );
    expect([...atSource.legA]).toEqual([3, -3]);
    expect(largest(atSource.dropV)).toBe(0);
    const furtherOn = flowOf(
      networkOf(4, [
        [0, 1, 0.5],
        [1, 2, 0],
        [2, 1, 0],
        [1, 2, 0],
        [2, 3, 0.5],
      ]),
      [0, 0, 0, 6],
    );
    expect(difference(furtherOn.legA, [6, 2, -2, 2, 6])).toBeLessThan(ROUNDING);
    expect(difference(furtherOn.dropV, [0, 3, 3, 6])).toBeLessThan(ROUNDING);
  });

  it('lets nothing flow across a group of links by legs inside it', () => {
    const network = networkOf(4, [
      [0, 1, 0.5],
      [1, 2, 0],
      [1, 2, 0.3],
      [2, 3, 0.5],
    ]);
    const { legA, dropV } = flowOf(network, [0, 0, 0, 6]);
    expect(difference(legA, [6, 6, 0, 6])).toBeLessThan(ROUNDING);
    expect(difference(dropV, [0, 3, 3, 6])).toBeLessThan(ROUNDING);
  });

  it('lets nothing flow from a node to itself, nor where nothing reaches', () => {
    const network = networkOf(6, [
      [0, 0, 0.1],
      [0, 1, 0.1],
      [1, 1, 0],
      [2, 3, 0.1],
      [3, 4, 0.1],
      [4, 2, 0.1],
    ]);
    const { legA, dropV } = flowOf(network, [99, 10, 5, 5, 5, 5]);
    expect(legA.map(Math.abs)).toEqual(Float64Array.of(0, 10, 0, 0, 0, 0));
    expect([...dropV]).toEqual([0, 1, Number.NaN, Number.NaN, Number.NaN, Number.NaN]);
  });

  it('serves a source alone, with and without a leg to itself', () => {
    expect([...flowOf(networkOf(1, []), [5]).dropV]).toEqual([0]);
    expect([...flowOf(networkOf(1, [[0, 0, 0.1]]), [5]).legA]).toEqual([0]);
  });

  it('agrees with a full system of equations on circuits of every kind', () => {
    fc.assert(
      fc.property(networkRecipe(), (recipe) => {
        const loaded = randomNetwork(recipe);
        const [found, meant] = [solved(loaded), denseFlow(loaded)];
        expect(difference(found.legA, meant.legA)).toBeLessThan(ROUNDING);
        expect(difference(found.dropV, meant.dropV)).toBeLessThan(ROUNDING);
      }),
      TRIES,
    );
  });

  it('brings to every node what it draws and passes on, and from the source what all draw', () => {
    fc.assert(
      fc.property(networkRecipe(), (recipe) => {
        const { network, loadA } = randomNetwork(recipe);
        const { legA, dropV } = solved({ network, loadA });
        const arriving = new Float64Array(network.nodeCount);
        legA.forEach((currentA, leg) => {
          const [from, to] = [network.from[leg] ?? 0, network.to[leg] ?? 0];
          arriving[from] = (arriving[from] ?? 0) - currentA;
          arriving[to] = (arriving[to] ?? 0) + currentA;
        });
        const drawn = loadA.map((each, node) =>
          node === network.source || Number.isNaN(dropV[node]) ? 0 : each,
        );
        drawn[network.source] = -totalA(drawn);
        expect(difference(arriving, drawn)).toBeLessThan(ROUNDING);
      }),
      TRIES,
    );
  });

  it('drops along every leg what its current makes, and reaches what a walk reaches', () => {
    fc.assert(
      fc.property(networkRecipe(), (recipe) => {
        const { network, loadA } = randomNetwork(recipe);
        const { legA, dropV } = solved({ network, loadA });
        const most = largest(dropV);
        const reached = reachedNodes(network);
        expect([...dropV.keys()].filter((node) => !Number.isNaN(dropV[node]))).toEqual(
          [...reached].toSorted((a, b) => a - b),
        );
        for (const [leg, currentA] of legA.entries()) {
          const [from, to] = [network.from[leg] ?? 0, network.to[leg] ?? 0];
          if (!reached.has(from)) expect(currentA).toBe(0);
          else if (from !== to) {
            const acrossV = (dropV[to] ?? 0) - (dropV[from] ?? 0);
            expect(Math.abs(acrossV - currentA * (network.ohm[leg] ?? 0))).toBeLessThanOrEqual(
              most * ROUNDING,
            );
          }
        }
      }),
      TRIES,
    );
  });

  it('changes nothing where the circuit is read backwards', () => {
    fc.assert(
      fc.property(networkRecipe(), (recipe) => {
        const { network, loadA } = randomNetwork(recipe);
        const last = network.nodeCount - 1;
        const backwards: FlowNetwork = {
          nodeCount: network.nodeCount,
          source: last - network.source,
          from: network.to.map((node) => last - node).reverse(),
          to: network.from.map((node) => last - node).reverse(),
          ohm: network.ohm.toReversed(),
        };
        const there = solved({ network, loadA });
        const back = solved({ network: backwards, loadA: loadA.toReversed() });
        expect(
          difference(
            back.legA.toReversed(),
            there.legA.map((each) => -each),
          ),
        ).toBeLessThan(ROUNDING);
        expect(difference(back.dropV.toReversed(), there.dropV)).toBeLessThan(ROUNDING);
      }),
      TRIES,
    );
  });

  it('adds up: two loads together flow as each of them alone', () => {
    fc.assert(
      fc.property(networkRecipe(), fc.nat(), (recipe, seed) => {
        const { network, loadA } = randomNetwork(recipe);
        const random = randomFrom(seed);
        const others = loadA.map(() => random() * 20);
        const [one, other] = [solved({ network, loadA }), solved({ network, loadA: others })];
        const both = solved({ network, loadA: loadA.map((each, node) => each + (others[node] ?? 0)) });
        const sum = one.legA.map((each, leg) => each + (other.legA[leg] ?? 0));
        expect(difference(both.legA, sum)).toBeLessThan(ROUNDING);
        expect(
          difference(
            both.dropV,
            one.dropV.map((each, node) => each + (other.dropV[node] ?? 0)),
          ),
        ).toBeLessThan(ROUNDING);
      }),
      TRIES,
    );
  });

  it('carries nothing by an open leg, and flows as without it', () => {
    fc.assert(
      fc.property(networkRecipe(), fc.nat(), (recipe, pick) => {
        const { network, loadA } = randomNetwork(recipe);
        fc.pre(network.from.length > 0);
        const openLeg = pick % network.from.length;
        const found = solved({ network, loadA }, openLeg);
        const without = solved({ network: withoutLeg(network, openLeg), loadA });
        const meant = denseFlow({ network, loadA }, openLeg);
        expect(found.legA[openLeg]).toBe(0);
        expect(difference(found.legA, without.legA)).toBeLessThan(ROUNDING);
        expect(difference(found.dropV, without.dropV)).toBeLessThan(ROUNDING);
        expect(difference(found.legA, meant.legA)).toBeLessThan(ROUNDING);
        expect(difference(found.dropV, meant.dropV)).toBeLessThan(ROUNDING);
      }),
      TRIES,
    );
  });

  it('leaves nothing of what a result held before', () => {
    fc.assert(
      fc.property(networkRecipe(), (recipe) => {
        const { network, loadA } = randomNetwork(recipe);
        const plan = prepareFlow(network);
        const result = newFlowResult(plan);
        for (const each of [result.legA, result.dropV, result.rowV]) each.fill(1e9);
        solveFlow(plan, loadA, result);
        const fresh = solved({ network, loadA });
        expect(result.legA).toEqual(fresh.legA);
        expect(result.dropV).toEqual(fresh.dropV);
      }),
      TRIES,
    );
  });
});
