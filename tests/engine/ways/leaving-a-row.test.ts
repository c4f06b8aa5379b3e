import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { buildPlan } from '#engine/plan/build-plan.ts';
import { tariffOf } from '#engine/schemes/tariff.ts';
import { endLayer } from '#engine/ways/graph/end-layer.ts';
import { endLines } from '#engine/ways/graph/end-lines.ts';
import { houseNet } from '#engine/ways/graph/house-net.ts';
import type { NetEdge } from '#engine/ways/graph/net-edge.ts';
import { Row } from '#engine/ways/graph/row.ts';
import { WaysInto } from '#engine/ways/graph/shortest.ts';
import { TwoEnds } from '#engine/ways/graph/two-ends.ts';
import { WeighedWays } from '#engine/ways/graph/weighed-ways.ts';
import { houseOf } from '#tests/houses/house-of.ts';

interface Step {
  readonly from: number;
  readonly edge: NetEdge;
}

/**
 * Independent oracle: the same search as plainly as it can be written. Everything leaves the row at once, in the order in which the
 * layers came upon it; then what is nearest is looked for among all, of two as near the lower node. The first step counts.
 */
function plainly(row: Row, ends: TwoEnds, target: number): { weight: number; steps: Step[] } {
  const { weighing, ways: house } = row.house;
  const known = new Map<number, { weight: number; step: Step }>();
  const offer = (from: number, to: number, weight: number, edge: NetEdge): void => {
    const ofRow = to < row.nodeCount ? row.weightOf(to) : Number.POSITIVE_INFINITY;
    if (weight < ofRow && weight < (known.get(to)?.weight ?? Number.POSITIVE_INFINITY))
      known.set(to, { weight, step: { from, edge } });
  };
  const away = ({ entries }: { entries: Int32Array }, from: number, weight: number) => {
    if (!entries.includes(from) && from < row.house.ways.ownCount) return;
    ends.eachEdge(from, (to, edge) => offer(from, to, weight + edge.weigh(weighing), edge));
  };
  for (const layer of [ends.secondWays, ends.waysBetween])
    for (const entry of layer.entries) if (entry < row.nodeCount) away(layer, entry, row.weightOf(entry));
  const settled = new Set<number>();
  for (;;) {
    let next = -1;
    for (const [node, { weight }] of known) {
      const best = known.get(next)?.weight ?? Number.POSITIVE_INFINITY;
      if (!settled.has(node) && (weight < best || (weight === best && node < next))) next = node;
    }
    if (next < 0 || next === target) break;
    settled.add(next);
    const weight = known.get(next)?.weight ?? 0;
    house.eachFrom(next, (to, edge) => offer(next, to, weight + edge.weigh(weighing), edge));
    ends.eachEdge(next, (to, edge) => offer(next, to, weight + edge.weigh(weighing), edge));
  }
  const steps: Step[] = [];
  for (let at = target; ; ) {
    const step: Step | null = known.get(at)?.step ?? row.stepTo(at);
    if (step === null) break;
    steps.unshift(step);
    at = step.from;
  }
  return { weight: known.get(target)?.weight ?? Number.POSITIVE_INFINITY, steps };
}

describe('what leaves a row', () => {
  it.each([
    [1, 'pence'],
    [1, 'mess'],
    [2, 'pence'],
    [2, 'mess'],
  ] as const)('goes step by step as where all leave it at once, house %i by %s', (seed, aim) => {
    const job = houseOf({ seed, rooms: 8, wanted: 4 });
    const plan = buildPlan(job);
    const house = houseNet({ plan, tariff: tariffOf(demoLibrary()) });
    const weighed = new WeighedWays(house.net.ways(), { aim, surface: false });
    const layers = [...plan.positionOfPoint.values()].map((position) =>
      endLayer(house, endLines(house, { position, mount: null })),
    );
    const [from, ...others] = layers.toReversed();
    if (from === undefined || from.node === null) throw new Error('The last point has no place.');
    const row = new Row(weighed, from.net, from.node);
    for (const to of others) {
      const ends = new TwoEnds(house, from, to);
      const way = new WaysInto().way(row, ends);
      const plain = plainly(row, ends, ends.target ?? -1);
      expect(way?.weight).toBe(plain.weight);
      expect(way?.steps.map((step) => step.from)).toEqual(plain.steps.map((step) => step.from));
      expect(way?.steps.every(({ edge }, at) => edge === plain.steps[at]?.edge)).toBe(true);
    }
  });
});
