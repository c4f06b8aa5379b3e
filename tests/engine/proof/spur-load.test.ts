import { describe, expect, it } from 'vitest';
import { spurLoads } from '#engine/proof/spur-load.ts';
import { factsOf, nodeOf, nodePlaceOf, pointOf, shapeOf, spurOf, unitOf } from '../rules/facts-builder.ts';

const facts = factsOf({
  job: {
    points: [
      pointOf('a', { kind: 'socket-single' }),
      pointOf('b'),
      pointOf('d', { kind: 'flex-outlet', load: { watts: 690, use: 'towel rail', fixed: true } }),
      pointOf('e', { kind: 'blank' }),
    ],
  },
  proposed: {
    nodes: [
      nodeOf('a'),
      nodeOf('b', { state: 'new' }),
      nodeOf('d'),
      nodeOf('e'),
      nodeOf('k1/unit', { pointId: null }),
    ],
  },
  things: { fusedUnits: [unitOf('k1/unit', { pointId: null, fuseA: 3 })] },
  shapes: [
    shapeOf('c', {
      spurs: [spurOf('spur@1', { accessoryNodes: ['k1/unit', 'e', 'd', 'b', 'a'] })],
      places: [
        nodePlaceOf('a', { depth: 2 }),
        nodePlaceOf('b', { depth: 2 }),
        nodePlaceOf('d', { depth: 1 }),
        nodePlaceOf('e', { depth: 3 }),
        nodePlaceOf('k1/unit', { depth: 4, upstreamNode: 'e' }),
      ],
    }),
  ],
});

describe('what an unfused spur feeds', () => {
  it('lists accessories from the ring outwards, found before new, with what each can draw', () => {
    const [load] = spurLoads(facts, 'c');
    expect(load?.accessories.map(({ nodeId, possibleA }) => [nodeId, possibleA])).toEqual([
      ['d', 3],
      ['a', 13],
      ['b', 26],
      ['k1/unit', 3],
    ]);
  });

  it('adds them up, and has none for a circuit that is not there', () => {
    expect(spurLoads(facts, 'c')[0]?.possibleA).toBe(45);
    expect(spurLoads(facts, 'nowhere')).toEqual([]);
  });

  it('takes a fixed item’s watts from the switch before it where the item has none of its own', () => {
    const load = { watts: 2300, use: 'immersion', fixed: true };
    const points = [pointOf('s', { kind: 'dp-switch', load }), pointOf('o', { kind: 'flex-outlet' })];
    const switched = factsOf({
      job: { points },
      proposed: { nodes: [nodeOf('s'), nodeOf('o')] },
      shapes: [
        shapeOf('c', {
          spurs: [spurOf('spur@1', { accessoryNodes: ['o', 's'] })],
          places: [nodePlaceOf('s', { depth: 1 }), nodePlaceOf('o', { depth: 2, upstreamNode: 's' })],
        }),
      ],
    });
    expect(spurLoads(switched, 'c')[0]?.accessories).toMatchObject([
      { nodeId: 'o', isFixedItem: true, loadW: 2300, possibleA: 10 },
    ]);
  });
});
