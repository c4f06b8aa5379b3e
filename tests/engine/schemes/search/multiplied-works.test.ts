import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { findSchemes } from '#engine/find-schemes.ts';
import { libraryFor } from '#engine/labour/multipliers.ts';
import { searchGround } from '#engine/schemes/search/search-ground.ts';
import { waysInHouse } from '#engine/schemes/search/ways-in-house.ts';
import { worksOfScheme } from '#engine/schemes/search/works-of-scheme.ts';
import { tariffFor } from '#engine/schemes/tariff.ts';
import { workHouse } from '#engine/schemes/work-scheme.ts';
import { defaultLengthAllowances } from '#engine/ways/length-allowances.ts';
import { demoJob, estimateOf } from '../../demo-jobs/demo-estimates.ts';

const library = demoLibrary();

describe.each(['saltglass-row', 'quarrel-court'] as const)(
  'the search of %s with multipliers chosen',
  (name) => {
    const plain = demoJob(name);
    const job = { ...plain, terms: { ...plain.terms, multipliers: ['fragile-finishes', 'alone'] } };
    const found = findSchemes(job, library);
    const slower = libraryFor(job, library);
    const house = workHouse(job, tariffFor(job, slower), defaultLengthAllowances);
    const ground = searchGround(house, slower, { ways: waysInHouse(house, slower) });

    it('is proved, and weighs more than without', () => {
      expect(found.optimal).toBe(true);
      const before = findSchemes(plain, library, { most: 1, kinds: false });
      expect(found.boundPence).toBeGreaterThan(before.boundPence);
    });

    it('weighs schemes as a walk over their wiring at those minutes says', () => {
      const walked = found.schemes.map(({ scheme }) => worksOfScheme(ground, scheme).millipence / 1000);
      const offset = (walked[0] ?? 0) - (found.schemes[0]?.worksPence ?? 0);
      for (const [i, each] of found.schemes.entries())
        expect(Math.abs((walked[i] ?? 0) - offset - each.worksPence), each.scheme.name).toBeLessThan(30);
    });

    it('prices what it found as the job prices it', () => {
      const schemes = found.schemes.map(({ scheme }) => ({ ...scheme, id: scheme.id.replace('/', '-') }));
      const again = estimateOf({ ...job, schemes }).schemes;
      expect(again.map(({ totals }) => totals)).toEqual(found.schemes.map(({ estimate }) => estimate.totals));
      const gross = again.map(({ totals }) => totals.grossPence);
      expect(gross).toEqual(gross.toSorted((a, b) => a - b));
    });
  },
);
