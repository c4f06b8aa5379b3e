import { describe, expect, it } from 'vitest';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import type { Job } from '#model/job.ts';
import type { Connection, Remedy } from '#model/scheme.ts';
import { demoJob, demoNames, estimateOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { houseOf } from '#tests/houses/house-of.ts';
import { drawnThings } from '../../../ui/elements/plan/drawn-things.ts';
import { storeyOfThing } from '../../../ui/elements/plan/storey-of-thing.ts';

const services = ['water', 'gas', 'oil', 'steel', 'other'] as const;

/** Every kind of remedy at every place that it could be at in a house, and where no place is told. */
function everyRemedy(job: Job): readonly Remedy[] {
  const circuits = job.circuits.map(({ id }) => id);
  const boards = job.boards.map(({ id }) => id);
  const outlets = job.points.filter(({ kind }) => kind.startsWith('socket')).map(({ id }) => id);
  const at = (kind: Remedy['kind'], places: readonly string[]): Remedy[] =>
    places.map((place) => ({ kind, at: place }));
  return [
    { kind: 'bond-upgrade' },
    ...at('bond-upgrade', services),
    ...at('rcbo', circuits),
    ...at('lower-device', circuits),
    ...at('rcd-enclosure', [...boards, ...circuits]),
    ...at('new-board', boards),
    ...at('re-box', outlets),
    ...at('single-to-twin', outlets),
    ...at('rcd-outlet', outlets),
    ...at('rcd-unit', outlets),
  ];
}

/** A job with its first scheme alone, once for each remedy that could come with it. */
const withEveryRemedy = (job: Job): Job => ({
  ...job,
  schemes: job.schemes.slice(0, 1).flatMap((scheme) =>
    everyRemedy(job).map((remedy, index) => ({
      ...scheme,
      id: `${scheme.id}-${index}`,
      remedies: [...scheme.remedies, remedy],
    })),
  ),
});

/** An invented house with rings, and a spur to each wanted point. */
function inventedHouse(): Job {
  const job = houseOf({ seed: 5, rooms: 6, wanted: 2 });
  const [from] = job.points.filter(({ status }) => status === 'existing');
  const connections = job.points
    .filter(({ status }) => status === 'wanted')
    .map(({ id: to }, index): Connection => {
      return { kind: 'spur', id: `s${index}`, from: { point: from?.id ?? '' }, to };
    });
  return { ...job, schemes: [{ id: 's', name: 'Spurs', connections, remedies: [], locks: [] }] };
}

/** The causes of a bill that nothing on any plan is lit for: none, since all that is bought is fitted somewhere. */
function dark({ worked, takeoff }: SchemeEstimate): readonly string[] {
  const causes = [...new Set(takeoff.flatMap((line) => line.causes))];
  return causes.filter(
    (cause) => ![...drawnThings(worked, [cause])].some((id) => storeyOfThing(worked, id) !== null),
  );
}

describe('what a line of the bill lights up on the plan', () => {
  it.each(demoNames)('is something for every cause, in the demo job %s', (name) => {
    const { schemes } = estimateOf(demoJob(name));
    for (const scheme of schemes) expect([scheme.id, dark(scheme)]).toEqual([scheme.id, []]);
    expect(schemes.flatMap(({ takeoff }) => takeoff).length).toBeGreaterThan(20);
  });

  it('is something for every cause of every remedy', () => {
    const { schemes } = estimateOf(withEveryRemedy(demoJob('saltglass-row')));
    const causes = new Set(schemes.flatMap(({ takeoff }) => takeoff.flatMap((line) => line.causes)));
    expect(schemes.flatMap(dark)).toEqual([]);
    for (const kind of [
      'bond-upgrade',
      'bond-upgrade/water',
      'lower-device/ring-house',
      'new-board/board-hall',
    ])
      expect(causes).toContain(`remedy/${kind}`);
  });

  it('is something for every cause in an invented house', () => {
    const { schemes } = estimateOf(inventedHouse());
    expect(schemes.flatMap(dark)).toEqual([]);
    expect(schemes.flatMap(({ runs }) => runs).length).toBeGreaterThan(0);
  });

  it('is the board for a bond, whichever service it is to', () => {
    const [scheme] = estimateOf(demoJob('saltglass-row')).schemes;
    if (scheme === undefined) throw new Error('no scheme');
    for (const id of ['remedy/bond-upgrade', ...services.map((service) => `remedy/bond-upgrade/${service}`)])
      expect([...drawnThings(scheme.worked, [id])]).toEqual(['board-hall']);
  });
});
