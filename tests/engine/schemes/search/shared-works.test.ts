import { describe, expect, it } from 'vitest';
import { findSchemes } from '#engine/find-schemes.ts';
import { mustCarry } from '#engine/proof/must-carry.ts';
import { slotGate } from '#engine/proof/slot-gate.ts';
import { byMess, byPence } from '#engine/schemes/search/aim.ts';
import { buildSpace } from '#engine/schemes/search/build-space.ts';
import { schemeOf } from '#engine/schemes/search/gate.ts';
import { searchGround } from '#engine/schemes/search/search-ground.ts';
import { withSharing } from '#engine/schemes/search/settled-columns.ts';
import { sharedWorks } from '#engine/schemes/search/shared-works.ts';
import { waysInHouse } from '#engine/schemes/search/ways-in-house.ts';
import { noWorks } from '#engine/schemes/search/works.ts';
import { worksApart, worksOfScheme } from '#engine/schemes/search/works-of-scheme.ts';
import { workshop } from '#engine/schemes/search/workshop.ts';
import { tariffFor } from '#engine/schemes/tariff.ts';
import { runsAlone, workHouse } from '#engine/schemes/work-scheme.ts';
import { stretchesOf } from '#engine/takeoff/wall-stretches.ts';
import { chaseCost } from '#engine/ways/chase-cost.ts';
import { floorOpening } from '#engine/ways/floor-opening.ts';
import { inOneChase } from '#engine/ways/in-one-chase.ts';
import { defaultLengthAllowances } from '#engine/ways/length-allowances.ts';
import { openedFloors } from '#engine/ways/opened-floors.ts';
import type { Run } from '#engine/ways/run.ts';
import type { Job } from '#model/job.ts';
import { segmentOf, spotAt } from '#tests/engine/connections/wiring-builder.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { library } from './brute-trial.ts';
import { variedHouse } from './varied-house.ts';

const houseOf = (job: Job) => workHouse(job, tariffFor(job, library), defaultLengthAllowances);

describe('what the cables of one connection share', () => {
  const house = houseOf(demoJob('saltglass-row'));
  const under = (x: number) => segmentOf(spotAt(x, 0, -110), spotAt(x, 1500, -110));
  const cable = (x: number, millipence = 1e7) => ({
    segments: [under(x)],
    mustCarryA: 20,
    works: { millipence, mess: 50 },
  });
  const board = house.tariff.board['lift-board'];

  it('is each board that comes up for both, within a hand’s reach', () => {
    expect(sharedWorks(house, [cable(0), cable(600)])).toEqual({
      millipence: 2 * Math.round(board.millipence),
      mess: 2 * board.mess,
    });
    expect(sharedWorks(house, [cable(0), cable(601)])).toEqual(noWorks);
    expect(sharedWorks(house, [cable(0)])).toEqual(noWorks);
  });

  it('is for three cables each board twice', () => {
    expect(sharedWorks(house, [cable(0), cable(0), cable(0)]).millipence).toBe(
      4 * Math.round(board.millipence),
    );
  });

  it('never leaves less than an equal share of all of them', () => {
    expect(sharedWorks(house, [cable(0, 1001), cable(0, 1001)]).millipence).toBe(1001);
  });
});

/** What the boards of runs come to together, or run by run. */
function boardsMillipence(job: Job, groups: readonly (readonly Run[])[]): number {
  const { plan, tariff } = houseOf(job);
  return groups
    .flatMap((runs) => openedFloors(runs, plan))
    .reduce(
      (sum, { floor }) =>
        sum + Math.round(tariff.board[floor === null ? 'lift-board' : floorOpening(floor)].millipence),
      0,
    );
}

/** What the chases of runs come to together, or run by run, at the tariff’s metre and as the take-off measures them. */
function chasesMillipence(job: Job, groups: readonly (readonly Run[])[]): number {
  const { plan, tariff } = houseOf(job);
  const [two, three] = tariff.severalInChase.more;
  return groups
    .flatMap((runs) => stretchesOf(runs, plan, ({ medium }) => medium === 'wall-chase'))
    .reduce((sum, { lengthMm, cables, straights: [first] }) => {
      const segment = first?.run.segments[first.first];
      const wall = plan.wallById.get(segment?.wallId ?? '');
      const metre =
        wall === undefined || segment === undefined
          ? tariff.chase.open
          : chaseCost(tariff, wall, segment.side);
      const more = [0, two.millipence, three.millipence][cables.length - 1] ?? Number.NaN;
      return sum + ((metre.millipence + more) * lengthMm) / 1000;
    }, 0);
}

describe('the works cost of a found scheme', () => {
  const jobs = [
    ...(['oval', 'capping', 'none'] as const).map((chased) => {
      const job = demoJob('saltglass-row');
      return {
        name: `saltglass-row, ${chased}`,
        job: { ...job, terms: { ...job.terms, chased } },
        ...{ allowAssumedLegs: [], chasedTogether: 1 },
      };
    }),
    ...[1, 2, 11, 16].map((seed) => ({
      ...{ name: `varied house ${seed}`, chasedTogether: seed === 2 ? 1 : 0 },
      ...variedHouse(seed, 3),
    })),
  ];
  it.each(jobs)(
    'counts a board and a chase once a connection, as its own runs in the estimate do: $name',
    ({ job, allowAssumedLegs, chasedTogether }) => {
      const house = houseOf(job);
      const ground = searchGround(house, library, { ways: waysInHouse(house, library), allowAssumedLegs });
      const { schemes } = findSchemes(job, library, { aim: 'pence', most: 12, allowAssumedLegs });
      let [shared, together] = [0, 0];
      for (const { scheme, estimate } of schemes) {
        const runs = runsAlone(house, scheme.connections);
        expect(estimate.worked.runs.map(({ id }) => id)).toEqual(runs.map(({ id }) => id));
        const needs = mustCarry(estimate.worked.proposed, estimate.worked.shapes);
        const gate = slotGate(house.plan, house.tariff);
        const ids = [...new Set(runs.map(({ connectionId }) => connectionId))];
        const own = ids.map((id) => runs.filter(({ connectionId }) => connectionId === id));
        const apart = boardsMillipence(
          job,
          runs.map((run) => [run]),
        );
        const saved = apart - boardsMillipence(job, own);
        const chased = chasesMillipence(
          job,
          own.map((each) => inOneChase(each, gate, needs)),
        );
        const alone = chasesMillipence(
          job,
          runs.map((run) => [run]),
        );
        const walked = worksApart(ground, scheme).millipence - worksOfScheme(ground, scheme).millipence;
        // Each stretch is rounded to a thousandth of a penny.
        expect(Math.abs(walked - saved - (alone - chased)), scheme.name).toBeLessThan(runs.length * 4);
        shared += saved > 0 ? 1 : 0;
        together += alone - chased > 0 ? 1 : 0;
      }
      expect(shared).toBeGreaterThan(0);
      expect(together).toBeGreaterThanOrEqual(chasedTogether);
    },
  );
});

describe('columns of several cables', () => {
  it.each([1, 2, 15, 16, 101, 203])(
    'cost no less once they are settled, whatever is sought: seed %i',
    (seed) => {
      const { job, allowAssumedLegs } = variedHouse(seed, 3);
      const house = houseOf(job);
      const ground = searchGround(house, library, { ways: waysInHouse(house, library), allowAssumedLegs });
      for (const aim of [byPence, byMess]) {
        const shop = workshop(ground, aim);
        const { space } = buildSpace(shop);
        const [apart, loose] = [space, withSharing(shop, space)].map(({ layers, free }) => [
          ...layers.flatMap(({ columns }) => columns),
          ...free,
        ]);
        expect(loose?.length).toBe(apart?.length);
        let settled = 0;
        for (const [i, column] of (loose ?? []).entries()) {
          const whole = apart?.[i];
          const { cost } = column.settled?.() ?? column;
          expect(column.cost).toBeLessThanOrEqual(cost);
          expect(cost, column.key).toBeLessThanOrEqual(whole?.cost ?? 0);
          if (cost < (whole?.cost ?? 0)) settled += 1;
        }
        expect(settled).toBeGreaterThan(0);
      }
    },
  );

  it.each([
    ['saltglass-row', { job: demoJob('saltglass-row'), allowAssumedLegs: [] }],
    ['saltglass-row, legs not recorded', { job: demoJob('saltglass-row-quoting'), allowAssumedLegs: [] }],
    ...[2, 15, 16].map((seed) => [`varied house ${seed}`, variedHouse(seed, 3)] as const),
  ] as const)(
    'save what a walk over the wiring says, whatever their cables must carry: %s',
    (_, { job: drawn, allowAssumedLegs }) => {
      for (const chased of ['oval', 'capping'] as const) {
        const job = { ...drawn, terms: { ...drawn.terms, chased } };
        const house = houseOf(job);
        const ground = searchGround(house, library, { ways: waysInHouse(house, library), allowAssumedLegs });
        const shop = workshop(ground, byPence);
        const { space } = buildSpace(shop);
        const [apart, loose] = [space, withSharing(shop, space)].map(({ layers, free }) => [
          ...layers.flatMap(({ columns }) => columns),
          ...free,
        ]);
        const wrong = (loose ?? []).flatMap(({ key, settled, parts }, i) => {
          if (settled === undefined) return [];
          const saved = (apart?.[i]?.cost ?? 0) - settled().cost;
          const scheme = schemeOf(ground, 'walked', parts());
          const walked = worksApart(ground, scheme).millipence - worksOfScheme(ground, scheme).millipence;
          return Math.abs(saved - walked) > 1 ? [[key, saved, walked]] : [];
        });
        expect(wrong).toEqual([]);
      }
    },
  );
});
