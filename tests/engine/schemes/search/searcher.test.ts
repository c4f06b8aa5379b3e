import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { findSchemes, searcher } from '#engine/find-schemes.ts';
import { byMess } from '#engine/schemes/search/aim.ts';
import { buildSpace } from '#engine/schemes/search/build-space.ts';
import type { SearchResult } from '#engine/schemes/search/found-schemes.ts';
import { type Kept, nothingKept } from '#engine/schemes/search/kept-costs.ts';
import type { SchemeColumn } from '#engine/schemes/search/scheme-column.ts';
import { searchGround } from '#engine/schemes/search/search-ground.ts';
import { waysInHouse } from '#engine/schemes/search/ways-in-house.ts';
import { workshop } from '#engine/schemes/search/workshop.ts';
import { tariffOf } from '#engine/schemes/tariff.ts';
import { movedHouse, workHouse } from '#engine/schemes/work-scheme.ts';
import { defaultLengthAllowances } from '#engine/ways/length-allowances.ts';
import { demoJob, demoNames } from '../../demo-jobs/demo-estimates.ts';
import { withLastMoved, withSixWanted } from './six-wanted.ts';

const library = demoLibrary();

const brief = ({ schemes, bestOfKind, leftOut, ...head }: SearchResult) => ({
  ...head,
  ...{ bestOfKind, leftOut },
  schemes: schemes.map(({ scheme, worksPence, worksPoints, estimate }) => [
    ...[scheme, worksPence, worksPoints],
    estimate.totals,
  ]),
});

describe.each(demoNames)('a searcher of %s', (name) => {
  const job = withSixWanted(demoJob(name));

  it('keeps what every column’s ends cost as they are worked out anew, wherever a point is moved', () => {
    const house = workHouse(job, tariffOf(library), defaultLengthAllowances);
    const ways = waysInHouse(house, library);
    const costs = (columns: readonly SchemeColumn[]) =>
      columns.map(({ key, cost, works }) => [key, cost, works()]);
    const columnsOf = (moved: typeof house, kept: Kept) => {
      const { space } = buildSpace(workshop(searchGround(moved, library, { ways, kept }), byMess));
      return costs([...space.layers.flatMap(({ columns }) => columns), ...space.free]);
    };
    const kept = nothingKept();
    for (const byMm of [0, 80, -150]) {
      const moved = movedHouse(house, withLastMoved(job, byMm));
      expect(columnsOf(moved, kept)).toEqual(columnsOf(moved, nothingKept()));
    }
  });

  it('answers as a search that remembers nothing, before and after a point is moved', () => {
    const options = { most: 3, kinds: false } as const;
    const again = searcher(library);
    for (const byMm of [0, 80])
      expect(brief(again.search(withLastMoved(job, byMm), options))).toEqual(
        brief(findSchemes(withLastMoved(job, byMm), library, options)),
      );
  });
});

describe('a searcher', () => {
  const job = demoJob('fernlow-close');

  it('says the cheapest first, as soon as it is proved, and prices nothing before', () => {
    const steps = searcher(library).steps(job, { most: 4 });
    const kinds: string[] = [];
    for (let next = steps.next(); ; next = steps.next()) {
      if (!next.done) {
        kinds.push(next.value.step);
        if (next.value.step !== 'first') continue;
        expect(next.value.first.optimal).toBe(true);
        expect(next.value.first.worksPence).toBe(next.value.first.boundPence);
        continue;
      }
      const { schemes } = next.value;
      expect(kinds.filter((kind) => kind === 'priced')).toHaveLength(schemes.length);
      break;
    }
    expect(kinds.filter((kind) => kind === 'first')).toHaveLength(1);
    expect(kinds.indexOf('first')).toBeLessThan(kinds.indexOf('priced'));
  });

  it('starts anew where anything but wanted points is said otherwise', () => {
    const again = searcher(library);
    const options = { most: 2, kinds: false } as const;
    again.search(job, options);
    const other = { ...job, boards: job.boards.map((board) => ({ ...board, spareWays: 0 })) };
    expect(brief(again.search(other, options))).toEqual(brief(findSchemes(other, library, options)));
    const locked = [{ id: 'kept', kind: 'spur', from: { point: 'r1-kitchen' }, to: 'b1-kitchen' }] as const;
    const tap = job.points.find(({ status, circuit }) => status === 'existing' && circuit !== undefined);
    const held = locked.map((one) => ({ ...one, from: { point: tap?.id ?? '' } }));
    expect(brief(again.search(job, { ...options, locked: held }))).toEqual(
      brief(findSchemes(job, library, { ...options, locked: held })),
    );
  });
});
