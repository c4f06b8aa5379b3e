import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { tariffOf } from '#engine/schemes/tariff.ts';
import { workHouse, workScheme } from '#engine/schemes/work-scheme.ts';
import { plainRoute } from '#engine/ways/find-run.ts';
import { defaultLengthAllowances } from '#engine/ways/length-allowances.ts';
import { rememberedRoutes } from '#engine/ways/remembered-routes.ts';
import type { FindRun, RouteRequest } from '#engine/ways/route.ts';
import { demoEstimate, demoJob, demoNames } from '#tests/engine/demo-jobs/demo-estimates.ts';

describe('remembered routes', () => {
  const counted = () => {
    const asked: RouteRequest[] = [];
    const findRun: FindRun = (request) => {
      asked.push(request);
      return { segments: [], steps: [`${request.fromMount}/${request.asFound?.knownMm ?? '-'}`] };
    };
    return { asked, findRun: rememberedRoutes(findRun) };
  };
  const { worked } = demoEstimate('fernlow-close').asFound;
  const [from, to] = [...worked.plan.positionOfPoint.values()];
  if (from === undefined || to === undefined) throw new Error('the demo house has points with places');
  const tariff = tariffOf(demoLibrary());
  const asking: RouteRequest = {
    plan: worked.plan,
    from,
    to,
    via: [],
    fromMount: null,
    toMount: null,
    tariff,
  };

  it('finds each path once', () => {
    const { asked, findRun } = counted();
    expect(findRun(asking)).toBe(findRun({ ...asking }));
    expect(asked).toHaveLength(1);
  });

  it.each<[string, Partial<RouteRequest>]>([
    ['its ends are the other way round', { from: to, to: from }],
    ['an accessory is mounted otherwise', { fromMount: 'surface' }],
    ['the other accessory is mounted otherwise', { toMount: 'surface' }],
    ['its length is known', { asFound: { knownMm: 4000 } }],
    ['it is pinned', { via: [{ storey: 'first', at: [0, 0], heightMm: 0 }] }],
    ['an end is moved', { to: { ...to, levelMm: to.levelMm + 1 } }],
  ])('finds another path where %s', (_, change) => {
    const { asked, findRun } = counted();
    findRun(asking);
    findRun({ ...asking, ...change });
    expect(asked).toHaveLength(2);
  });

  it.each(demoNames)('lays the runs of %s as they are laid without it', (name) => {
    const job = demoJob(name);
    const house = workHouse(job, tariffOf(demoLibrary()), defaultLengthAllowances);
    const afresh = { ...house, findRun: plainRoute };
    for (const scheme of job.schemes) {
      // Twice, so that the second time everything is remembered.
      workScheme(house, scheme);
      const { runs } = workScheme({ ...house }, scheme);
      expect(runs.length).toBeGreaterThan(0);
      expect(runs).toEqual(workScheme(afresh, scheme).runs);
    }
  });
});
