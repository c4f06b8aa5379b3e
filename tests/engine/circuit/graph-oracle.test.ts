import fc from 'fast-check';
import { MultiUndirectedGraph } from 'graphology';
import { connectedComponents, countConnectedComponents } from 'graphology-components';
import { describe, expect, it } from 'vitest';
import { bridgeIds } from '#engine/circuit/bridges.ts';
import { foundNetwork } from '#engine/circuit/found-network.ts';
import { linksOf, reachedFrom, withoutHangingTrees } from '#engine/circuit/network-graph.ts';
import { jobOf, legOf, pointOf, shapeOf } from './circuit-job.ts';

const SPOTS = ['o', 'a', 'b', 'c', 'd', 'e', 'f', 'g'];

/** Any graph of up to eight nodes, with parallel edges and edges from a node to itself. */
const wiring = fc.array(fc.tuple(fc.constantFrom(...SPOTS), fc.constantFrom(...SPOTS)), { maxLength: 12 });

function jobOfWiring(pairs: readonly (readonly [string, string])[]) {
  const legs = pairs.map(([from, to], n) => legOf(`${from}-${to}`, 1000, { id: `leg-${n}` }));
  const touched = new Set(pairs.flat());
  const points = SPOTS.filter((id) => id !== 'o' && touched.has(id)).map((id) => pointOf(id));
  return jobOf({ points, legs, circuit: { shape: 'ring' } });
}

/** The same wiring, held by an unrelated graph library. */
function oracleOf(pairs: readonly (readonly [string, string])[]): MultiUndirectedGraph {
  const graph = new MultiUndirectedGraph();
  for (const spot of SPOTS) graph.addNode(spot);
  for (const [n, [from, to]] of pairs.entries()) graph.addUndirectedEdgeWithKey(`leg-${n}`, from, to);
  return graph;
}

function bridgesByRemoval(graph: MultiUndirectedGraph): string[] {
  const whole = countConnectedComponents(graph);
  return graph.edges().filter((edge) => {
    const cut = graph.copy();
    cut.dropEdge(edge);
    return countConnectedComponents(cut) > whole;
  });
}

function componentOf(graph: MultiUndirectedGraph, node: string): string[] {
  return connectedComponents(graph).find((component) => component.includes(node)) ?? [];
}

describe('the graph work, against an unrelated graph library', () => {
  it('reaches the same nodes, and finds as bridges what parts the graph when taken out', () => {
    fc.assert(
      fc.property(wiring, (pairs) => {
        const network = foundNetwork(jobOfWiring(pairs));
        const graph = oracleOf(pairs);
        const links = linksOf(SPOTS, network.edges);
        for (const spot of SPOTS)
          expect([...reachedFrom([spot], links)].toSorted()).toEqual(componentOf(graph, spot).toSorted());
        expect([...bridgeIds(links)].toSorted()).toEqual(bridgesByRemoval(graph).toSorted());
      }),
      { numRuns: 500 },
    );
  });

  it('takes off the same hanging trees as dropping leaves one by one', () => {
    fc.assert(
      fc.property(wiring, fc.constantFrom(...SPOTS), (pairs, keep) => {
        const graph = oracleOf(pairs);
        const leaf = () => graph.nodes().find((node) => node !== keep && graph.degree(node) <= 1);
        for (let node = leaf(); node !== undefined; node = leaf()) graph.dropNode(node);
        const links = linksOf(SPOTS, foundNetwork(jobOfWiring(pairs)).edges);
        expect([...withoutHangingTrees(links, new Set([keep]))].toSorted()).toEqual(graph.nodes().toSorted());
      }),
      { numRuns: 500 },
    );
  });

  it('names the shape by the number of independent cycles and by whether one passes the origin', () => {
    fc.assert(
      fc.property(wiring, (pairs) => {
        const graph = oracleOf(pairs);
        const component = new Set(componentOf(graph, 'o'));
        const edges = graph.filterEdges((_, __, from) => component.has(from));
        const cycles = edges.length - component.size + 1;
        const bridges = new Set(bridgesByRemoval(graph));
        const isOriginOnCycle = graph.edges('o').some((edge) => !bridges.has(edge));
        const ends = pairs.flat().filter((spot) => spot === 'o').length;
        const open = ends > 0 ? 'broken-ring' : 'unknown';
        const one = isOriginOnCycle ? 'ring' : 'lollipop';
        const expected = cycles > 1 ? 'interconnected' : cycles === 1 ? one : open;
        const job = jobOfWiring(pairs);
        const shape = shapeOf(job, foundNetwork(job));
        expect(shape.shape).toBe(expected);
        const onRing = expected === 'ring' ? edges.filter((edge) => !bridges.has(edge)) : [];
        expect(shape.ringEdges.map(({ id }) => id).toSorted()).toEqual(onRing.toSorted());
      }),
      { numRuns: 1000 },
    );
  });
});
