import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { atPerPoint, byMess, byPence, weightOf } from '#engine/schemes/search/aim.ts';
import { buildSpace } from '#engine/schemes/search/build-space.ts';
import type { SchemeColumn } from '#engine/schemes/search/scheme-column.ts';
import { searchGround } from '#engine/schemes/search/search-ground.ts';
import { waysInHouse } from '#engine/schemes/search/ways-in-house.ts';
import { workshop } from '#engine/schemes/search/workshop.ts';
import { tariffFor } from '#engine/schemes/tariff.ts';
import { workHouse } from '#engine/schemes/work-scheme.ts';
import { defaultLengthAllowances } from '#engine/ways/length-allowances.ts';
import type { Job } from '#model/job.ts';
import { houseOf } from '../../../houses/house-of.ts';
import { demoJob, demoNames } from '../../demo-jobs/demo-estimates.ts';
import { randomHouse } from './random-house.ts';

const library = demoLibrary();

const jobs: readonly (readonly [string, Job])[] = [
  ...demoNames.map((name) => [name, demoJob(name)] as const),
  ...[3, 4, 5].map((seed) => [`one room, seed ${seed}`, randomHouse(seed, { found: 4, wanted: 3 })] as const),
  ...[1, 2].map(
    (seed) => [`two storeys, seed ${seed}`, houseOf({ seed, rooms: 8, wanted: 4, rcd: false })] as const,
  ),
];

describe.each(jobs)('what is weighed in %s', (_, job) => {
  const house = workHouse(job, tariffFor(job, library), defaultLengthAllowances);
  const ground = searchGround(house, library, { ways: waysInHouse(house, library) });
  const columnsBy = (aim: typeof byPence): readonly SchemeColumn[] => {
    const { space } = buildSpace(workshop(ground, aim));
    return [...space.layers.flatMap(({ columns }) => columns), ...space.free];
  };

  it.each([
    ['money', byPence],
    ['disturbance', byMess],
    ['£5 a point', atPerPoint(500_000)],
  ] as const)('is by %s what every column’s works weigh, to the last of it', (__, aim) => {
    const columns = columnsBy(aim);
    expect(columns.length).toBeGreaterThan(0);
    const wrong = columns.filter(
      ({ cost, works }) => !Number.isSafeInteger(cost) || cost !== weightOf(aim, works()),
    );
    expect(wrong.map(({ key, cost, works }) => [key, cost, works()])).toEqual([]);
  });

  it('has the same attachments by either aim, and disturbs by disturbance no more than by money', () => {
    const [money, mess] = [columnsBy(byPence), columnsBy(byMess)];
    const messByKey = new Map(mess.map((column) => [column.key, column.works().mess]));
    const both = money.filter(({ key }) => messByKey.has(key));
    expect(both.length).toBeGreaterThan(money.length / 2);
    for (const { key, works } of both) expect(messByKey.get(key), key).toBeLessThanOrEqual(works().mess);
  });
});
