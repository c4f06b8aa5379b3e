import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { buildPlan } from '#engine/plan/build-plan.ts';
import { tariffOf } from '#engine/schemes/tariff.ts';
import { endLayer } from '#engine/ways/graph/end-layer.ts';
import { endLines } from '#engine/ways/graph/end-lines.ts';
import { houseNet } from '#engine/ways/graph/house-net.ts';
import { Meetings } from '#engine/ways/graph/meeting.ts';
import { Row, WeighedNet } from '#engine/ways/graph/row.ts';
import { WaysInto } from '#engine/ways/graph/shortest.ts';
import { TwoEnds } from '#engine/ways/graph/two-ends.ts';
import { houseOf } from '#tests/houses/house-of.ts';

/** A house so large that most ends have nothing with one another but the house, and all pairs from its last point. */
function pairsIn(seed: number, aim: 'pence' | 'mess') {
  const job = houseOf({ seed, rooms: 24, wanted: 4, rcd: true });
  const plan = buildPlan(job);
  const house = houseNet({ plan, tariff: tariffOf(demoLibrary()) });
  const ways = house.net.ways();
  const weighed = new WeighedNet(ways, { aim, surface: false });
  const layers = job.points.flatMap(({ id, mount }) => {
    const position = plan.positionOfPoint.get(id);
    return position === undefined
      ? []
      : [endLayer(house, endLines(house, { position, mount: mount ?? null }))];
  });
  const from = layers.at(-1);
  if (from === undefined || from.node === null) throw new Error('The last point has no place.');
  const row = new Row(weighed, from.net, from.node);
  const meetings = new Meetings(house.net.nodeCount);
  const waysInto = new WaysInto();
  const start = from.node;
  return layers.slice(0, -1).map((to) => {
    const ends = new TwoEnds(house, from, to);
    const target = ends.target ?? -1;
    const grownFromBoth = meetings.between(weighed, { ends, start, target, withinMm: Infinity });
    return { ends, into: waysInto.way(row, ends), grownFromBoth };
  });
}

describe('the way into an end that has nothing with the other but the house', () => {
  it.each([
    [1, 'pence'],
    [1, 'mess'],
  ] as const)(
    'weighs what its steps do, and what growing from both ends finds, house %i by %s',
    (seed, aim) => {
      const pairs = pairsIn(seed, aim);
      expect(pairs.filter(({ ends }) => ends.waysBetween.wayCount === 0).length).toBeGreaterThan(3);
      for (const { into, grownFromBoth } of pairs) {
        expect(into?.weight).toBe(grownFromBoth?.weight);
        const weights = (into?.steps ?? []).map(({ edge }) => edge.weigh({ aim, surface: false }));
        expect(weights.reduce((sum, weight) => sum + weight, 0)).toBe(into?.weight);
      }
    },
  );
});
