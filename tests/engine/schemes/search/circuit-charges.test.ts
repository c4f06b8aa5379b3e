import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { allRules } from '#engine/all-rules.ts';
import { factsOf } from '#engine/schemes/facts-of.ts';
import { byPence } from '#engine/schemes/search/aim.ts';
import { buildSpace } from '#engine/schemes/search/build-space.ts';
import { circuitCharges } from '#engine/schemes/search/circuit-charges.ts';
import { judge, schemeOf } from '#engine/schemes/search/gate.ts';
import { searchGround } from '#engine/schemes/search/search-ground.ts';
import { waysInHouse } from '#engine/schemes/search/ways-in-house.ts';
import { workshop } from '#engine/schemes/search/workshop.ts';
import { tariffFor } from '#engine/schemes/tariff.ts';
import { workHouse, workScheme } from '#engine/schemes/work-scheme.ts';
import { defaultLengthAllowances } from '#engine/ways/length-allowances.ts';
import type { Job } from '#model/job.ts';
import { houseOf } from '../../../houses/house-of.ts';
import { demoJob, demoNames } from '../../demo-jobs/demo-estimates.ts';
import { variedHouse } from './varied-house.ts';

const library = demoLibrary();

const jobs: readonly (readonly [string, Job])[] = [
  ...demoNames.map((name) => [name, demoJob(name)] as const),
  ['two rings without an RCD', houseOf({ seed: 1, rooms: 20, wanted: 4, rcd: false })],
  ['two rings behind an RCD', houseOf({ seed: 1, rooms: 20, wanted: 2 })],
  ...[1, 2, 3, 4, 5, 6, 7, 8].map((seed) => [`varied ${seed}`, variedHouse(seed, 3).job] as const),
];

describe.each(jobs)('what the circuits of %s charge once', (_, job) => {
  const house = workHouse(job, tariffFor(job, library), defaultLengthAllowances);
  const { proofs: proofsFound } = factsOf(workScheme(house, null), library, null);
  const ground = searchGround(house, library, { ways: waysInHouse(house, library) });
  const shop = workshop(ground, byPence);
  const { space } = buildSpace(shop);
  const columns = [...space.layers.flatMap((layer) => layer.columns), ...space.free];
  const charges = circuitCharges(shop, space, { rules: allRules, proofsFound });

  it('is what the same rules ask for in the whole house with every cable laid and proved, by any column', () => {
    expect(charges.map(({ circuitId }) => circuitId)).toEqual(
      [...new Set(columns.flatMap(({ circuitIds }) => circuitIds))].toSorted(),
    );
    const rules = allRules.filter(({ id }) => id === 'RC1');
    for (const { circuitId, needing, works } of charges)
      for (const i of ground.wanted.keys()) {
        const own = columns.filter(
          ({ mask, circuitIds }) => mask === 1 << i && circuitIds.includes(circuitId),
        );
        for (const column of [own.at(0), own.at(-1)]) {
          if (column === undefined) continue;
          const judged = judge(ground, schemeOf(ground, 'alone', column.parts()), { rules, proofsFound });
          const asks = judged.passes && judged.scheme.remedies.some(({ at }) => at === circuitId);
          expect(asks, `${circuitId} ${column.key}`).toBe((needing & (1 << i)) !== 0);
          if (judged.passes && asks) expect(judged.remedyWorks).toEqual(works.remedies);
        }
      }
  });
});
