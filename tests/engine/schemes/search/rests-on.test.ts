import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { findSchemes } from '#engine/find-schemes.ts';
import { isFollowed } from '#engine/plan/is-followed.ts';
import type { SearchOptions } from '#engine/schemes/search/search.ts';
import { estimateJson } from '#exports/estimate-json.ts';
import type { Leg } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { fallbackWords, provedWords, restsWords } from '../../../../ui/found-ways/search-words.ts';
import { foundOf } from '../../../../ui/found-ways/searcher.ts';
import { estimateOf } from '../../demo-jobs/demo-estimates.ts';
import { variedHouse } from './varied-house.ts';

const library = demoLibrary();

/** A house whose cheapest way is jointed into a leg, with every way of its legs as somebody thinks they run. */
function thoughtOf(as: 'route' | 'via'): { readonly job: Job; readonly allowAssumedLegs: readonly string[] } {
  const { job } = variedHouse(24, 1);
  const legs = job.legs.map((leg) =>
    leg.via === undefined
      ? leg
      : { ...leg, certainty: { length: 'measured' as const, [as]: 'assumed' as const } },
  );
  return { job: { ...job, legs }, allowAssumedLegs: legs.map(({ id }) => id) };
}

const found = (as: 'route' | 'via', options: SearchOptions = {}) => {
  const { job, allowAssumedLegs } = thoughtOf(as);
  return { job, result: findSchemes(job, library, { most: 5, kinds: false, allowAssumedLegs, ...options }) };
};

describe('a leg is followed', () => {
  const via: Leg['via'] = [{ storey: 'gf', at: [0, 0], heightMm: 0 }];
  const cases: readonly (readonly [Pick<Leg, 'via' | 'certainty'> | undefined, boolean])[] = [
    [{ via }, true],
    [{ via, certainty: { route: 'seen' } }, true],
    [{ via, certainty: { route: 'measured', via: 'assumed' } }, true],
    [{ via, certainty: { route: 'assumed' } }, false],
    [{ via, certainty: { via: 'assumed' } }, false],
    [{ via, certainty: { via: 'unknown' } }, false],
    [{ via: [] }, false],
    [{ certainty: { route: 'seen' } }, false],
    [undefined, false],
  ];
  it.each(cases)('%j: %s', (leg, is) => {
    expect(isFollowed(leg)).toBe(is);
  });
});

describe.each(['route', 'via'] as const)('a joint in a leg whose %s is only assumed', (as) => {
  const { job, result } = found(as);
  const cheapest = result.schemes.toSorted((a, b) => a.worksPence - b.worksPence)[0];

  it('is flagged on the scheme, and locating is priced', () => {
    expect(cheapest?.restsOn.length).toBeGreaterThan(0);
    for (const { restsOn, estimate } of result.schemes)
      expect(estimate.labour.filter(({ task }) => task === 'locate-leg').length > 0).toBe(restsOn.length > 0);
  });

  it('has the best without such a joint priced beside it: what is found where none is allowed', () => {
    const shut = findSchemes(job, library, { most: 1, kinds: false });
    const fallback = result.schemes.find(({ scheme }) => scheme.id === result.fallback?.schemeId);
    expect(result.fallback?.optimal).toBe(true);
    expect(fallback?.restsOn).toEqual([]);
    expect(fallback?.worksPence).toBe(shut.boundPence);
    expect(fallback?.estimate.totals.grossPence).toBeGreaterThan(0);
    expect(shut.fallback).toBeNull();
    expect(shut.schemes.every(({ restsOn }) => restsOn.length === 0)).toBe(true);
  });

  it('is in estimate.json, and is said wherever the way is called the cheapest', () => {
    const { search } = JSON.parse(estimateJson(estimateOf(job), { found: result }));
    expect(search.fallback).toEqual(result.fallback);
    expect(search.schemes.map((each: { restsOn: unknown }) => each.restsOn)).toEqual(
      result.schemes.map(({ restsOn }) => restsOn),
    );
    const told = foundOf(result);
    expect(provedWords(told)).toContain('as far as the old cable that it cuts is found');
    expect(fallbackWords(told)).toMatch(/without such a joint is way \d+, £[\d,]+\.\d\d\.$/);
    const card = told.candidates.find(({ scheme }) => scheme.id === cheapest?.scheme.id);
    expect(card && restsWords(card, (id) => `Leg ${id}`)).toMatch(/^Rests on finding the old cable l\d/);
  });
});

it('where every leg was followed nothing is said of it', () => {
  const { job } = variedHouse(24, 1);
  const legs = job.legs.map((leg) => ({ ...leg, certainty: { route: 'seen' as const } }));
  const result = findSchemes({ ...job, legs }, library, { most: 1, kinds: false });
  expect(JSON.stringify(result.schemes[0]?.scheme.connections)).toContain('alongMm');
  expect(result.fallback).toBeNull();
  expect(provedWords(foundOf(result))).not.toContain('old cable');
  expect(fallbackWords(foundOf(result))).toBeNull();
});
