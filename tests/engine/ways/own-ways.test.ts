import fc from 'fast-check';
import { MultiUndirectedGraph } from 'graphology';
import { describe, expect, it } from 'vitest';
import { measureOf } from '#engine/ways/graph/line.ts';
import { OverJoin } from '#engine/ways/graph/net-edge.ts';
import { OwnWays } from '#engine/ways/graph/own-ways.ts';

const weighing = { aim: 'pence', surface: false } as const;

/** A layer over `nodesBelow` nodes: ways between any two of its own or one of them and one beneath, each of a cost of its own. */
const layers = fc
  .record({ nodesBelow: fc.integer({ min: 0, max: 12 }), ownCount: fc.integer({ min: 1, max: 12 }) })
  .chain(({ nodesBelow, ownCount }) =>
    fc.record({
      nodesBelow: fc.constant(nodesBelow),
      nodeCount: fc.constant(nodesBelow + ownCount),
      pairs: fc.array(
        fc.tuple(
          fc.integer({ min: 0, max: nodesBelow + ownCount - 1 }),
          fc.integer({ min: nodesBelow, max: nodesBelow + ownCount - 1 }),
        ),
        { maxLength: 40 },
      ),
    }),
  );

const laidOut = ({
  nodesBelow,
  nodeCount,
  pairs,
}: typeof layers extends fc.Arbitrary<infer T> ? T : never) => {
  const edges = pairs.map(
    (_, way) =>
      new OverJoin({
        a: { line: 0, tMm: 0 },
        b: { line: 0, tMm: 0 },
        measure: measureOf({ millipence: way + 1, minutes: 0, mess: 0 }),
      }),
  );
  return { edges, ways: new OwnWays({ ends: pairs.flat(), edges }, { nodesBelow, nodeCount }) };
};

describe('a layer’s ways in arrays', () => {
  it('lead out of every node what a general graph library has at it, in the order in which they were added', () => {
    fc.assert(
      fc.property(layers, (layer) => {
        const { edges, ways } = laidOut(layer);
        // Independent oracle: graphology 0.26 (MIT), a multigraph of the same ways; loops have an end at either side.
        const graph = new MultiUndirectedGraph();
        for (let node = 0; node < layer.nodeCount; node += 1) graph.addNode(node);
        for (const [way, [from, to]] of layer.pairs.entries()) graph.addUndirectedEdgeWithKey(way, from, to);
        for (let node = 0; node < layer.nodeCount; node += 1) {
          const seen: [number, number][] = [];
          ways.eachFrom(node, (to, edge) => seen.push([edges.indexOf(edge as OverJoin), to]));
          const theirs = graph.edges(node).map((key): [number, number] => {
            return [Number(key), Number(graph.opposite(node, key))];
          });
          const twice = theirs.flatMap((each) => (each[1] === node ? [each, each] : [each]));
          expect(seen).toEqual(twice.toSorted(([a], [b]) => a - b));
        }
      }),
    );
  });

  it('name as entries the nodes beneath that have a way, in the order in which they were come upon', () => {
    fc.assert(
      fc.property(layers, (layer) => {
        const { ways } = laidOut(layer);
        const entries = [...new Set(layer.pairs.flat())].filter((node) => node < layer.nodesBelow);
        expect([...ways.entries]).toEqual(entries);
        expect(ways.ownCount).toBe(layer.nodeCount - layer.nodesBelow);
        for (let node = 0; node < layer.nodesBelow; node += 1)
          expect(ways.placeOf(node)).toBe(entries.indexOf(node));
      }),
    );
  });

  it('weigh each what the way itself does, either direction alike', () => {
    fc.assert(
      fc.property(layers, (layer) => {
        const { ways } = laidOut(layer);
        const weighed = ways.weighed(weighing);
        for (let at = 0; at < ways.to.length; at += 1) {
          expect(weighed.weightAt(at)).toBe(ways.edgeAt(at).weigh(weighing));
          expect(weighed.weightAt(at)).toBe(ways.edgeAt(at).weigh(weighing));
        }
        expect(ways.weighed(weighing)).toBe(weighed);
      }),
    );
  });
});
