import { describe, expect, it } from 'vitest';
import { findSchemes } from '#engine/find-schemes.ts';
import { searchGround } from '#engine/schemes/search/search-ground.ts';
import { waysInHouse } from '#engine/schemes/search/ways-in-house.ts';
import { worksOfScheme } from '#engine/schemes/search/works-of-scheme.ts';
import { tariffOf } from '#engine/schemes/tariff.ts';
import { workHouse } from '#engine/schemes/work-scheme.ts';
import { defaultLengthAllowances } from '#engine/ways/length-allowances.ts';
import type { Point } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import type { Connection, Scheme, Tap } from '#model/scheme.ts';
import { estimateOf } from '../../demo-jobs/demo-estimates.ts';
import { library } from './brute-trial.ts';
import { randomHouse } from './random-house.ts';

/**
 * A ring of five outlets of which a person takes the first out, replaces the second where it is and moves the third 400 mm
 * along its wall; one outlet is wanted besides. The board is full.
 */
function decided(seed: number): Job {
  const house = randomHouse(seed, { found: 5, wanted: 1 });
  const followed = (old: Point, byMm: number): Point => ({
    ...old,
    id: `n-${old.id}`,
    label: `N${old.id}`,
    status: 'wanted',
    replaces: old.id,
    ...(old.place !== undefined && 'wall' in old.place
      ? { place: { ...old.place, alongMm: old.place.alongMm + byMm } }
      : {}),
  });
  const status = { p1: 'removed', p2: 'replaced', p3: 'replaced' } as const;
  const points = house.points.flatMap((point): Point[] => {
    const { circuit: _, asFound: __, ...bare } = point;
    const changed = point.id in status ? status[point.id as keyof typeof status] : point.status;
    const gone: Point = { ...point, status: changed };
    if (point.id === 'p2') return [gone, followed(bare, 0)];
    return point.id === 'p3' ? [gone, followed(bare, 400)] : [gone];
  });
  return { ...house, points, boards: house.boards.map((board) => ({ ...board, spareWays: 0 })) };
}

const schemeOf = (connections: readonly Connection[], remedies: Scheme['remedies'] = []): Scheme => ({
  ...{ id: 'by-hand', name: 'By hand', locks: [] },
  connections: [...connections],
  remedies: [...remedies],
});

describe.each([7, 12, 21])(
  'points that a person moves, takes out and replaces, at once: house %i',
  (seed) => {
    const job = decided(seed);
    const found = findSchemes(job, library, { most: 20, aim: 'pence' });
    const house = workHouse(job, tariffOf(library), defaultLengthAllowances);
    const ground = searchGround(house, library, { ways: waysInHouse(house, library) });

    it('are no points to be joined on: the search joins the wanted one alone', () => {
      expect(found.optimal).toBe(true);
      expect(found.schemes.length).toBeGreaterThan(3);
      expect(found.leftOut).toContain('A further cable from the joint left where a point is taken out.');
      expect(ground.wanted.map(({ point }) => point.id)).toEqual(['w1']);
    });

    it('are as decided in every scheme: nothing starts from what is taken out or from what is replaced', () => {
      const named = found.schemes.map(({ scheme }) => JSON.stringify(scheme.connections));
      for (const words of named) expect(words).not.toMatch(/"(point|to)":"p[123]"/);
      // What stands in their place may be joined on to.
      expect(named.join()).toMatch(/"n-p2"/);
      expect(named.join()).toMatch(/"n-p3"/);
    });

    it('pass every rule from scratch, at the same price', () => {
      const schemes = found.schemes.map(({ scheme }) => ({ ...scheme, id: scheme.id.replace('/', '-') }));
      const again = estimateOf({ ...job, schemes });
      for (const [i, scheme] of again.schemes.entries()) {
        expect(scheme.complies, scheme.name).not.toBe('no');
        expect(scheme.totals, scheme.name).toEqual(found.schemes[i]?.estimate.totals);
      }
    });

    it('leave no spur that could be written down cheaper than the best of spurs', () => {
      const best = found.schemes.find(
        ({ scheme }) => scheme.id === found.bestOfKind.find(({ kind }) => kind === 'spurs')?.schemeId,
      );
      if (best === undefined) throw new Error(`seed ${seed}: no spur found`);
      const limit = worksOfScheme(ground, best.scheme).millipence;
      const taps: readonly Tap[] = [
        { origin: 'c' },
        // The joint left in the box of what is taken out is not searched; that is said.
        ...job.points.filter(({ id }) => id !== 'w1' && id !== 'p1').map(({ id }): Tap => ({ point: id })),
      ];
      const schemes = taps.map((from) =>
        schemeOf([{ id: 'x', kind: 'spur', from, to: 'w1' }], best.scheme.remedies),
      );
      const again = estimateOf({ ...job, schemes: schemes.map((each, i) => ({ ...each, id: `x${i}` })) });
      const passing = schemes.filter((_, i) => again.schemes[i]?.complies !== 'no');
      expect(passing.length).toBeGreaterThan(1);
      expect(Math.min(...passing.map((each) => worksOfScheme(ground, each).millipence))).toBe(limit);
    });
  },
);
