import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { FlowShape } from '#engine/proof/flow/flow-network.ts';
import { prepareFlow } from '#engine/proof/flow/prepare-flow.ts';
import { reachedNodes } from './dense-flow.ts';
import { networkRecipe, TRIES } from './network-recipe.ts';
import { type NetworkKind, randomNetwork } from './random-network.ts';
import { networkOf } from './solved-flow.ts';

const shapes: readonly (readonly [FlowShape, readonly NetworkKind[]])[] = [
  ['tree', ['tree']],
  ['ring', ['ring', 'ring-with-trees']],
  ['mesh', ['two-rings', 'joined-rings', 'lollipop']],
];

describe('the shape of a network', () => {
  it.each(shapes)('is a %s for %s', (shape, kinds) => {
    fc.assert(
      fc.property(networkRecipe(kinds), (recipe) => {
        expect(prepareFlow(randomNetwork(recipe).network).shape).toBe(shape);
      }),
      TRIES,
    );
  });

  it('is a tree for a ring with a leg open', () => {
    fc.assert(
      fc.property(networkRecipe(['ring', 'ring-with-trees']), fc.nat(), (recipe, pick) => {
        const { network } = randomNetwork(recipe);
        const ringLegs = prepareFlow(network).ring?.legs ?? [];
        const openLeg = ringLegs[pick % ringLegs.length] ?? -1;
        const plan = prepareFlow(network, { openLeg });
        expect(plan.shape).toBe('tree');
        expect(plan.trees.legs).toHaveLength(reachedNodes(network).size - 1);
      }),
      TRIES,
    );
  });

  it('is a ring for two legs side by side at the source, a mesh for two further on', () => {
    expect(
      prepareFlow(
        networkOf(3, [
          [0, 1, 1],
          [1, 0, 1],
          [1, 2, 1],
        ]),
      ).shape,
    ).toBe('ring');
    expect(
      prepareFlow(
        networkOf(3, [
          [0, 1, 1],
          [1, 2, 1],
          [1, 2, 1],
        ]),
      ).shape,
    ).toBe('mesh');
  });

  it('does not depend on loops that nothing reaches', () => {
    const legs = [
      [0, 1, 1],
      [2, 3, 1],
      [3, 2, 1],
    ] as const;
    expect(prepareFlow(networkOf(4, legs)).shape).toBe('tree');
    expect(prepareFlow(networkOf(4, [...legs, [0, 1, 1]])).shape).toBe('ring');
  });

  it('walks a ring from the source round to it', () => {
    fc.assert(
      fc.property(networkRecipe(['ring', 'ring-with-trees']), (recipe) => {
        const { network } = randomNetwork(recipe);
        const { nodes, legs } = prepareFlow(network).ring ?? { nodes: [], legs: [] };
        expect(nodes[0]).toBe(network.source);
        expect(new Set(nodes).size).toBe(nodes.length);
        expect(new Set(legs).size).toBe(nodes.length);
        for (const [place, leg] of legs.entries()) {
          const ends = [nodes[place], nodes[(place + 1) % nodes.length]];
          expect(new Set(ends)).toEqual(new Set([network.from[leg], network.to[leg]]));
        }
      }),
      TRIES,
    );
  });
});
