import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { estimate } from '#engine/estimate.ts';
import { installedMethod } from '#engine/proof/installed-method.ts';
import { byPence } from '#engine/schemes/search/aim.ts';
import { buildSpace } from '#engine/schemes/search/build-space.ts';
import { schemeOf as schemeOfParts } from '#engine/schemes/search/gate.ts';
import { plainWays } from '#engine/schemes/search/plain-ways.ts';
import { searchGround } from '#engine/schemes/search/search-ground.ts';
import { worksApart } from '#engine/schemes/search/works-of-scheme.ts';
import { workshop } from '#engine/schemes/search/workshop.ts';
import { tariffFor, wallWorkOf } from '#engine/schemes/tariff.ts';
import { workHouse } from '#engine/schemes/work-scheme.ts';
import { defaultLengthAllowances } from '#engine/ways/length-allowances.ts';
import type { Chased } from '#engine/ways/way-tariff.ts';
import type { Job, Terms } from '#model/job.ts';
import { demoJob } from '../demo-jobs/demo-estimates.ts';
import { randomHouse } from './search/random-house.ts';

const library = demoLibrary();
const when = { date: '2026-11-25', revision: 1 };

/** The demo job in whose brick walls new cables are chased, with what they lie in. */
function chasing(chased: Chased | undefined): Job {
  const job = demoJob('saltglass-row');
  const { chased: _, ...terms } = job.terms;
  return { ...job, terms: chased === undefined ? terms : { ...terms, chased } };
}

/** What is counted for a job's first scheme that chases, and how its chased stretches lie. */
function countedFor(job: Job, firm: Terms = library.terms) {
  const result = estimate(job, { ...library, terms: firm }, when);
  const scheme = result.schemes.find(({ worked }) =>
    worked.runs.some(({ segments }) => segments.some(({ medium }) => medium === 'wall-chase')),
  );
  if (scheme === undefined) throw new Error('No scheme of the job chases a cable.');
  const { plan, runs } = scheme.worked;
  const chases = runs.flatMap(({ segments }) => segments.filter(({ medium }) => medium === 'wall-chase'));
  return {
    items: new Map(scheme.takeoff.map((line) => [line.item, line.measured])),
    containments: [...new Set(chases.map(({ containment }) => containment))],
    methods: [...new Set(chases.map((segment) => installedMethod(segment, plan)?.method))],
    routesMm: runs.map(({ routeMm }) => routeMm),
    grossPence: scheme.totals.grossPence,
  };
}

const itemsLike = (items: ReadonlyMap<string, number>, start: string): number =>
  [...items].reduce((sum, [item, measured]) => sum + (item.startsWith(start) ? measured : 0), 0);

describe('what chased cables lie in', () => {
  it('is the job’s choice, else the firm’s, else oval tube', () => {
    const { terms } = chasing(undefined);
    expect(wallWorkOf(terms, terms).chased).toBe('oval');
    expect(wallWorkOf(terms, { ...terms, chased: 'capping' }).chased).toBe('capping');
    expect(wallWorkOf({ ...terms, chased: 'none' }, { ...terms, chased: 'capping' }).chased).toBe('none');
    const byFirm = countedFor(chasing(undefined), { ...library.terms, chased: 'capping' });
    expect(byFirm).toEqual(countedFor(chasing('capping')));
    expect(countedFor(chasing(undefined))).toEqual(countedFor(chasing('oval')));
  });

  // Source of the methods: BS 7671 Table 4A2 (in conduit in masonry B; sheathed, direct in masonry C); that oval tube
  // counts as conduit and capping does not: common practice, no source.
  it.each([
    ['oval', 'B', 'oval-'],
    ['capping', 'C', 'capping-2'],
    ['none', 'C', 'clip-flat-'],
  ] as const)('counts %s, and what the cable carries by method %s', (chased, method, item) => {
    const { items, methods, containments } = countedFor(chasing(chased));
    expect(containments).toEqual([chased]);
    expect(methods).toEqual([method]);
    expect(itemsLike(items, item)).toBeGreaterThan(0);
    const others = ['oval-', 'capping-'].filter((start) => !item.startsWith(start));
    // One stretch of the job is pinned in tube, 110 mm of it.
    for (const other of others) expect(itemsLike(items, other)).toBeLessThanOrEqual(0.11);
  });

  it('leaves the same cable where it is told to run', () => {
    const [oval, capping, none] = (['oval', 'capping', 'none'] as const).map((chased) =>
      countedFor(chasing(chased)),
    );
    expect(capping?.routesMm).toEqual(oval?.routesMm);
    expect(none?.routesMm).toEqual(oval?.routesMm);
    expect(new Set([oval, capping, none].map((each) => each?.grossPence)).size).toBe(3);
  });

  it.each(['capping', 'none'] as const)(
    'is weighed by the search as a walk over the wiring says: %s',
    (chased) => {
      const drawn = randomHouse(5, { found: 4, wanted: 3 });
      const job = { ...drawn, terms: { ...drawn.terms, chased } };
      const house = workHouse(job, tariffFor(job, library), defaultLengthAllowances);
      const ground = searchGround(house, library, { ways: plainWays(house, library) });
      const shop = workshop(ground, byPence);
      const { space } = buildSpace(shop);
      // Those that touch a circuit: a new one takes nothing for being touched.
      const columns = space.layers.flatMap((layer) =>
        layer.columns.filter((column) => column.circuitIds.length > 0),
      );
      const more = columns.map((column) => {
        const base = ground.wanted.reduce(
          (sum, { point }, i) =>
            column.mask & (1 << i) ? sum + (shop.baseOf.get(point.id)?.millipence ?? 0) : sum,
          column.cost,
        );
        const parts = schemeOfParts(ground, 'walked', column.parts());
        return Math.round(worksApart(ground, parts).millipence - base);
      });
      // All else is what the one circuit takes for being touched.
      expect(columns.length).toBeGreaterThan(20);
      expect(new Set(more).size).toBe(1);
    },
  );
});
