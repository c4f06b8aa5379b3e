import { UndirectedGraph } from 'graphology';
import { dijkstra } from 'graphology-shortest-path';
import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { buildPlan } from '#engine/plan/build-plan.ts';
import { tariffOf } from '#engine/schemes/tariff.ts';
import { type EndLayer, inHouse, withEnd } from '#engine/ways/graph/end-layer.ts';
import { endLines } from '#engine/ways/graph/end-lines.ts';
import { type HouseNet, houseNet } from '#engine/ways/graph/house-net.ts';
import { flatNet, rowFrom, wayInto } from '#engine/ways/graph/shortest.ts';
import { type Weighing, weightOf } from '#engine/ways/graph/weigh.ts';
import type { WayPlace } from '#engine/ways/way-cost.ts';
import { houseOf } from '#tests/houses/house-of.ts';

/** Independent oracle: graphology-shortest-path 2.1.0 (MIT), Dijkstra on a graph of the same nodes and weights. */
const SEEDS = [1, 2, 3, 4, 5, 6, 7, 8];
const weighings: readonly Weighing[] = [
  { aim: 'pence', surface: false },
  { aim: 'mess', surface: true },
  { aim: 'pence', surface: false, avoid: 'void ', asFound: true },
];

const tariff = tariffOf(demoLibrary());

function netOf(seed: number): { house: HouseNet; ends: readonly WayPlace[] } {
  const plan = buildPlan(houseOf({ seed, rooms: 8, wanted: 4 }));
  const house = houseNet({ plan, tariff, options: { chased: 'oval' } });
  const ends = [...plan.positionOfPoint.values()].map((position) => ({ position, mount: null }));
  return { house, ends };
}

/** The whole net of two ends as the other library has it: of parallel ways the least. */
function oracleOf(house: HouseNet, layers: readonly EndLayer[], weighing: Weighing): UndirectedGraph {
  const graph = new UndirectedGraph();
  const count = layers.at(-1)?.net.nodeCount ?? 0;
  for (let node = 0; node < count; node += 1) graph.addNode(String(node));
  for (const net of [house.net, ...layers.map((layer) => layer.net)])
    for (let node = 0; node < count; node += 1)
      for (const edge of net.edgesOf(node)) {
        const [a, b] = [String(node), String(edge.to)];
        const weight = weightOf(edge, weighing);
        const known = graph.hasEdge(a, b) ? graph.getEdgeAttribute(a, b, 'weight') : undefined;
        if (known === undefined || weight < known) graph.mergeEdge(a, b, { weight });
      }
  return graph;
}

/** What a way of the other library adds up to; null for none. */
function weightAlong(graph: UndirectedGraph, from: number, to: number): number | null {
  const path: string[] | null = dijkstra.bidirectional(graph, String(from), String(to), 'weight');
  if (path === null) return null;
  return path
    .slice(1)
    .reduce((sum, node, index) => sum + graph.getEdgeAttribute(path[index] ?? '', node, 'weight'), 0);
}

describe('the least way through a house’s net', () => {
  it.each(SEEDS)('weighs what a general graph library finds, house %i', { timeout: 120_000 }, (seed) => {
    const { house, ends } = netOf(seed);
    const times = { ours: 0, theirs: 0, pairs: 0 };
    for (const weighing of weighings) {
      const flat = flatNet(house.net, weighing);
      for (const [index, from] of ends.slice(0, 3).entries()) {
        const first = withEnd(house, inHouse(house, endLines(house, from)), null);
        if (first.node === null) continue;
        const row = rowFrom(flat, first.net, first.node, weighing);
        for (const to of ends.slice(index + 1, index + 5)) {
          const second = withEnd(house, inHouse(house, endLines(house, to)), first);
          if (second.node === null) continue;
          const start = performance.now();
          const ours = wayInto(row, second.net, second.node)?.weight ?? null;
          const middle = performance.now();
          const graph = oracleOf(house, [first, second], weighing);
          const built = performance.now();
          const theirs = weightAlong(graph, first.node, second.node);
          times.ours += middle - start;
          times.theirs += performance.now() - built;
          times.pairs += 1;
          expect(ours).toBe(theirs);
        }
      }
    }
    expect(times.pairs).toBeGreaterThan(20);
    console.info(
      `${times.pairs} ways in house ${seed}: ours ${times.ours.toFixed(1)} ms beside kept rows, graphology ${times.theirs.toFixed(1)} ms`,
    );
  });
});
