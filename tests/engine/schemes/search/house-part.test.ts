import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { byPence } from '#engine/schemes/search/aim.ts';
import { buildSpace } from '#engine/schemes/search/build-space.ts';
import { housePart } from '#engine/schemes/search/house-part.ts';
import { endsByCause, type Part, searchGround, withIds } from '#engine/schemes/search/search-ground.ts';
import { waysInHouse } from '#engine/schemes/search/ways-in-house.ts';
import { thingsByCause } from '#engine/schemes/search/works-cost.ts';
import { workshop } from '#engine/schemes/search/workshop.ts';
import { tariffFor } from '#engine/schemes/tariff.ts';
import { type House, workHouse, workScheme } from '#engine/schemes/work-scheme.ts';
import { defaultLengthAllowances } from '#engine/ways/length-allowances.ts';
import type { Job } from '#model/job.ts';
import type { Connection, Remedy } from '#model/scheme.ts';
import { houseOf } from '../../../houses/house-of.ts';
import { demoJob, demoNames } from '../../demo-jobs/demo-estimates.ts';
import { randomHouse } from './random-house.ts';
import { variedHouse } from './varied-house.ts';

const library = demoLibrary();

/** Two points of another ring go, and one gets a successor. */
function withChanges(job: Job): Job {
  const last = job.points.filter(({ status }) => status === 'existing').slice(-3);
  const [gone, replaced, alsoGone] = last.map(({ id }) => id);
  const successor = job.points.find(({ id }) => id === replaced);
  return {
    ...job,
    points: [
      ...job.points.map((point) => {
        if (point.id === gone || point.id === alsoGone) return { ...point, status: 'removed' as const };
        return point.id === replaced ? { ...point, status: 'replaced' as const } : point;
      }),
      ...(successor === undefined
        ? []
        : [{ ...successor, id: 'successor', status: 'wanted' as const, replaces: successor.id }]),
    ],
  };
}

/** One leg of a ring leads to a point of another. */
function withBridge(job: Job): Job {
  const [leg] = job.legs.filter(({ circuit }) => circuit === 'ring-1');
  const other = job.points.find(({ circuit }) => circuit === 'ring-2');
  if (leg === undefined || other === undefined) throw new Error('Two rings are wanted.');
  return { ...job, legs: [...job.legs, { ...leg, id: 'bridge', from: { point: other.id } }] };
}

const jobs: readonly (readonly [string, Job])[] = [
  ...demoNames.map((name) => [name, demoJob(name)] as const),
  ['two rings', houseOf({ seed: 1, rooms: 20, wanted: 4, rcd: false })],
  ['three rings', houseOf({ seed: 2, rooms: 30, wanted: 3 })],
  ['two rings of which points go', withChanges(houseOf({ seed: 3, rooms: 20, wanted: 3 }))],
  ['two rings that one leg joins', withBridge(houseOf({ seed: 4, rooms: 20, wanted: 3 }))],
  ['one room', randomHouse(3, { found: 4, wanted: 3 })],
  ...[1, 2, 3, 4, 5, 6].map((seed) => [`varied ${seed}`, variedHouse(seed, 3).job] as const),
];

/** What a scheme causes in a house, by cause. */
const causedIn = (house: House, connections: readonly Connection[], remedies: readonly Remedy[]) => {
  const scheme = {
    ...{ id: 'probe', name: '', locks: [] },
    ...{ connections: [...connections], remedies: [...remedies] },
  };
  return [...thingsByCause(workScheme(house, scheme, []), library)].toSorted(([a], [b]) => (a < b ? -1 : 1));
};

describe.each(jobs)('the part of %s that a column has to do with', (_, job) => {
  const house = workHouse(job, tariffFor(job, library), defaultLengthAllowances);
  const ground = searchGround(house, library, { ways: waysInHouse(house, library) });
  const { space } = buildSpace(workshop(ground, byPence));
  const columns = [...space.layers.flatMap((layer) => layer.columns), ...space.free];

  it('takes all that the column causes in the whole house, its remedies too', () => {
    // Ends hang on what is joined to what, not on which points: of each attachment two columns.
    const some = columns.filter(({ mask }, i) => i % 5 === 0 || mask === 1);
    expect(some.length).toBeGreaterThan(3);
    for (const { key, parts, circuitIds } of some) {
      const connections = withIds(ground, parts());
      const [circuitId] = circuitIds;
      const rcbo: readonly Remedy[] = circuitId === undefined ? [] : [{ kind: 'rcbo', at: circuitId }];
      for (const remedies of [[], rcbo])
        expect(causedIn(housePart(house, connections, remedies), connections, remedies), key).toEqual(
          causedIn(house, connections, remedies),
        );
    }
  });

  it('has what is locked in it too', () => {
    const at = (i: number): readonly Part[] => columns[i * 7]?.parts() ?? [];
    const locked = withIds(ground, at(0));
    const own = withIds({ locked }, at(1));
    const before = new Map(causedIn(house, locked, []));
    const more = causedIn(house, [...locked, ...own], []).flatMap(([cause, { millipence, mess }]) => {
      const was = before.get(cause) ?? { millipence: 0, mess: 0 };
      const rise = { millipence: millipence - was.millipence, mess: mess - was.mess };
      return rise.millipence === 0 && rise.mess === 0 ? [] : [[cause, rise.millipence]];
    });
    const told = [...endsByCause({ house, library, locked }, at(1))].toSorted(([a], [b]) => (a < b ? -1 : 1));
    expect(told.map(([cause, works]) => [cause, works.millipence])).toEqual(more);
  });
});

describe('the part of a house of eight rings', () => {
  const job = houseOf({ seed: 1, rooms: 80, wanted: 4 });
  const house = workHouse(job, tariffFor(job, library), defaultLengthAllowances);
  const wanted = job.points.filter(({ status }) => status === 'wanted');
  const spurFrom = (circuit: string): Connection => ({
    ...{ id: 'way-1', kind: 'spur', from: { origin: circuit }, to: wanted[0]?.id ?? '' },
  });

  it('is one ring for what touches one, with every wanted point in it', () => {
    const part = housePart(house, [spurFrom('ring-3')], []);
    expect(part.job.circuits.map(({ id }) => id)).toEqual(['ring-3']);
    expect(part.found.circuits.map(({ id }) => id)).toEqual(['ring-3']);
    expect(part.job.points).toHaveLength(14);
    expect(new Set(part.job.legs.map(({ circuit }) => circuit))).toEqual(new Set(['ring-3']));
    expect(housePart(house, [spurFrom('ring-3')], [])).toBe(part);
  });

  it('is the whole house where a remedy names nothing that is wired', () => {
    const board = job.boards[0]?.id ?? '';
    expect(housePart(house, [spurFrom('ring-3')], [{ kind: 'new-board', at: board }])).toBe(house);
    expect(housePart(house, [spurFrom('ring-3')], [{ kind: 'rcbo' }])).toBe(house);
  });
});
