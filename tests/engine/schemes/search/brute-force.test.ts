import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { estimate } from '#engine/estimate.ts';
import { findSchemes } from '#engine/find-schemes.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { searchGround } from '#engine/schemes/search/search-ground.ts';
import { waysInHouse } from '#engine/schemes/search/ways-in-house.ts';
import { worksOfScheme } from '#engine/schemes/search/works-of-scheme.ts';
import { tariffOf } from '#engine/schemes/tariff.ts';
import { workHouse } from '#engine/schemes/work-scheme.ts';
import { defaultLengthAllowances } from '#engine/ways/length-allowances.ts';
import type { Connection, Remedy, Scheme } from '#model/scheme.ts';
import { everyScheme } from './brute-force.ts';
import { randomHouse } from './random-house.ts';

const library = demoLibrary();
const when = { date: '2026-11-25', revision: 1 };

/** A deeper box for a third cable, which an additive cost does not see, is worth some pence a point. */
const SLIP_PENCE = 80;

const schemeOf = (connections: readonly Connection[], remedies: readonly Remedy[] = []): Scheme => ({
  id: 'tried',
  name: '',
  connections: [...connections],
  remedies: [...remedies],
  locks: [],
});

const failsOf = ({ findings }: SchemeEstimate) =>
  findings.filter(({ outcome, origin, gates }) => outcome === 'fails' && origin === 'scheme' && gates);

describe('no scheme that anybody could write down is cheaper and passes', () => {
  const cases = [
    ...[1, 2, 3, 4, 5, 6, 7, 8].map((seed) => ({ seed, found: 3, wanted: 2 })),
    ...[22, 26].map((seed) => ({ seed, found: 2, wanted: 3 })),
  ];
  it.each(cases)(
    'seed $seed: $found found, $wanted wanted',
    ({ seed, ...size }) => {
      const job = randomHouse(seed, size);
      const house = workHouse(job, tariffOf(library), defaultLengthAllowances);
      const ground = searchGround(house, library, { ways: waysInHouse(house, library) });
      const worksPence = (scheme: Scheme): number => worksOfScheme(ground, scheme).millipence / 1000;
      const found = findSchemes(job, library, { aim: 'pence', most: 1, kinds: false });
      const [best] = found.schemes;
      expect(found.optimal).toBe(true);
      const least = best === undefined ? Number.POSITIVE_INFINITY : worksPence(best.scheme);
      const cheaper = everyScheme(job).filter((each) => worksPence(schemeOf(each)) < least - SLIP_PENCE);
      const passing = cheaper.filter((connections) => {
        const tried = (remedies: readonly Remedy[]) => {
          const scheme = schemeOf(connections, remedies);
          const [one] = estimate({ ...job, schemes: [scheme] }, library, when, { depth: 'live' }).schemes;
          return one === undefined ? [] : failsOf(one);
        };
        const fails = tried([]);
        if (fails.length === 0) return true;
        if (fails.some(({ fix }) => fix === null)) return false;
        const remedies: readonly Remedy[] = [{ kind: 'rcbo', at: 'c' }];
        return (
          tried(remedies).length === 0 && worksPence(schemeOf(connections, remedies)) < least - SLIP_PENCE
        );
      });
      expect(passing, `seed ${seed}: ${best?.scheme.name}`).toEqual([]);
    },
    240_000,
  );
});
