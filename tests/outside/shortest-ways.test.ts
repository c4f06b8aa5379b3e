import { UndirectedGraph } from 'graphology';
import { dijkstra } from 'graphology-shortest-path';
import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { buildPlan } from '#engine/plan/build-plan.ts';
import { tariffOf } from '#engine/schemes/tariff.ts';
import { endLayer } from '#engine/ways/graph/end-layer.ts';
import { endLines } from '#engine/ways/graph/end-lines.ts';
import { type HouseNet, houseNet } from '#engine/ways/graph/house-net.ts';
import { Meetings } from '#engine/ways/graph/meeting.ts';
import type { NetEdge } from '#engine/ways/graph/net-edge.ts';
import { Row } from '#engine/ways/graph/row.ts';
import { WaysInto } from '#engine/ways/graph/shortest.ts';
import { TwoEnds } from '#engine/ways/graph/two-ends.ts';
import { type Weighing, weightOf } from '#engine/ways/graph/weigh.ts';
import { WeighedWays } from '#engine/ways/graph/weighed-ways.ts';
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
  const house = houseNet({ plan, tariff });
  const ends = [...plan.positionOfPoint.values()].map((position) => ({ position, mount: null }));
  return { house, ends };
}

/** The whole net of two ends as the other library has it: of parallel ways the least. */
function oracleOf(house: HouseNet, ends: TwoEnds, weighing: Weighing): UndirectedGraph {
  const graph = new UndirectedGraph();
  const add = (from: number, to: number, edge: NetEdge): void => {
    const [a, b] = [String(from), String(to)];
    graph.mergeNode(a);
    graph.mergeNode(b);
    const weight = weightOf(edge, weighing);
    const known = graph.hasEdge(a, b) ? graph.getEdgeAttribute(a, b, 'weight') : undefined;
    if (known === undefined || weight < known) graph.mergeEdge(a, b, { weight });
  };
  for (let node = 0; node < house.net.nodeCount; node += 1)
    house.net.ways().eachFrom(node, (to, edge) => add(node, to, edge));
  for (let node = 0; node < ends.wholeNodeCount; node += 1)
    ends.eachEdge(node, (to, edge) => add(node, to, edge));
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
    const meetings = new Meetings(house.net.nodeCount);
    const waysInto = new WaysInto();
    for (const weighing of weighings) {
      const weighed = new WeighedWays(house.net.ways(), weighing);
      for (const [index, from] of ends.slice(0, 3).entries()) {
        const first = endLayer(house, endLines(house, from));
        if (first.node === null) continue;
        const row = new Row(weighed, first.net, first.node);
        for (const to of ends.slice(index + 1, index + 5)) {
          const both = new TwoEnds(house, first, endLayer(house, endLines(house, to)));
          if (both.target === null) continue;
          const start = performance.now();
          const ours = waysInto.way(row, both)?.weight ?? null;
          const middle = performance.now();
          const graph = oracleOf(house, both, weighing);
          const built = performance.now();
          const theirs = weightAlong(graph, first.node, both.target);
          times.ours += middle - start;
          times.theirs += performance.now() - built;
          times.pairs += 1;
          expect(ours).toBe(theirs);
          const pair = { ends: both, start: first.node, target: both.target };
          const met = meetings.between(weighed, { ...pair, withinMm: Number.POSITIVE_INFINITY });
          expect(met?.weight ?? null).toBe(theirs);
          if (met === null) continue;
          // Its steps lead from the one end to the other, and add up to what it weighs and to what is long enough.
          expect(met.steps.reduce((sum, { edge }) => sum + weightOf(edge, weighing), 0)).toBe(theirs);
          expect(met.steps[0]?.from ?? both.target).toBe(first.node);
          const lengthMm = met.steps.reduce((sum, { edge }) => sum + edge.lengthMm, 0);
          const limited = meetings.between(weighed, { ...pair, withinMm: lengthMm + 0.001 });
          expect(limited?.weight).toBe(theirs);
          const shorter = meetings.between(weighed, { ...pair, withinMm: lengthMm * 0.9 });
          expect(shorter?.weight ?? Number.POSITIVE_INFINITY).toBeGreaterThanOrEqual(met.weight);
        }
      }
    }
    expect(times.pairs).toBeGreaterThan(20);
    console.info(
      `${times.pairs} ways in house ${seed}: ours ${times.ours.toFixed(1)} ms with their rows, graphology ${times.theirs.toFixed(1)} ms`,
    );
  });
});
