import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { buildPlan } from '#engine/plan/build-plan.ts';
import { tariffOf } from '#engine/schemes/tariff.ts';
import { type EndLayer, endLayer } from '#engine/ways/graph/end-layer.ts';
import { endLines } from '#engine/ways/graph/end-lines.ts';
import { houseNet } from '#engine/ways/graph/house-net.ts';
import { Meetings } from '#engine/ways/graph/meeting.ts';
import { Row } from '#engine/ways/graph/row.ts';
import { WaysInto } from '#engine/ways/graph/shortest.ts';
import { TwoEnds } from '#engine/ways/graph/two-ends.ts';
import { WeighedWays } from '#engine/ways/graph/weighed-ways.ts';
import { houseOf } from '#tests/houses/house-of.ts';

type Aim = 'pence' | 'mess';

/** A house so large that many ends have nothing with one another but the house, and its ends, those wanted last. */
function groundOf(seed: number, aim: Aim) {
  const job = houseOf({ seed, rooms: 24, wanted: 4, rcd: true });
  const plan = buildPlan(job);
  const house = houseNet({ plan, tariff: tariffOf(demoLibrary()) });
  const weighed = new WeighedWays(house.net.ways(), { aim, surface: false });
  const layers = job.points.flatMap(({ id, mount }) => {
    const position = plan.positionOfPoint.get(id);
    return position === undefined
      ? []
      : [endLayer(house, endLines(house, { position, mount: mount ?? null }))];
  });
  return { house, weighed, layers };
}

type Ground = ReturnType<typeof groundOf>;

const startOf = ({ node }: EndLayer): number => {
  if (node === null) throw new Error('The point has no place.');
  return node;
};
const rowFrom = ({ weighed }: Ground, from: EndLayer): Row => new Row(weighed, from.net, startOf(from));

const cases: readonly (readonly [number, Aim])[] = [
  [1, 'pence'],
  [1, 'mess'],
];

describe('the least way from a row into another end', () => {
  it.each(cases)(
    'weighs what its steps do, and what growing from both ends finds, house %i by %s',
    (seed, aim) => {
      const ground = groundOf(seed, aim);
      const [from, ...others] = ground.layers.toReversed() as [EndLayer, ...EndLayer[]];
      const row = rowFrom(ground, from);
      const waysInto = new WaysInto();
      const meetings = new Meetings(ground.house.net.nodeCount);
      const apart: boolean[] = [];
      for (const to of others) {
        const ends = new TwoEnds(ground.house, from, to);
        apart.push(ends.waysBetween.wayCount === 0);
        const into = waysInto.way(row, ends);
        const sought = { ends, start: startOf(from), target: ends.target ?? -1, withinMm: Infinity };
        expect(into?.weight).toBe(meetings.between(ground.weighed, sought)?.weight);
        const weights = (into?.steps ?? []).map(({ edge }) => edge.weigh({ aim, surface: false }));
        expect(weights.reduce((sum, weight) => sum + weight, 0)).toBe(into?.weight);
        expect(into?.steps[0]?.from).toBe(startOf(from));
      }
      expect(apart.filter((each) => each).length).toBeGreaterThan(3);
      expect(apart.filter((each) => !each).length).toBeGreaterThan(3);
    },
  );

  it.each(cases)(
    'is the same whatever was asked before, rows by turns or each of its own, house %i by %s',
    (seed, aim) => {
      const ground = groundOf(seed, aim);
      const [one, other, ...found] = ground.layers.toReversed() as [EndLayer, EndLayer, ...EndLayer[]];
      const shared = new WaysInto();
      const rows = [one, other].map((from) => ({ from, row: rowFrom(ground, from) }));
      for (const to of found.slice(0, 12))
        for (const { from, row } of rows) {
          const ends = new TwoEnds(ground.house, from, to);
          const byTurns = shared.way(row, ends);
          const afresh = new WaysInto().way(rowFrom(ground, from), ends);
          expect(byTurns).not.toBeNull();
          expect(byTurns?.weight).toBe(afresh?.weight);
          expect(byTurns?.steps.map(({ from: node }) => node)).toEqual(
            afresh?.steps.map(({ from: node }) => node),
          );
        }
    },
  );
});
