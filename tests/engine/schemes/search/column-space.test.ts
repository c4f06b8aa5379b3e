import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { byPence } from '#engine/schemes/search/aim.ts';
import { spotsInLeg } from '#engine/schemes/search/attachments.ts';
import { buildSpace } from '#engine/schemes/search/build-space.ts';
import { schemeOf } from '#engine/schemes/search/gate.ts';
import type { SchemeColumn } from '#engine/schemes/search/scheme-column.ts';
import { endInLeg, searchGround } from '#engine/schemes/search/search-ground.ts';
import { waysInHouse } from '#engine/schemes/search/ways-in-house.ts';
import { worksApart } from '#engine/schemes/search/works-of-scheme.ts';
import { workshop } from '#engine/schemes/search/workshop.ts';
import { tariffFor } from '#engine/schemes/tariff.ts';
import { workHouse } from '#engine/schemes/work-scheme.ts';
import { defaultLengthAllowances } from '#engine/ways/length-allowances.ts';
import type { Connection } from '#model/scheme.ts';
import { variedHouse } from './varied-house.ts';

const library = demoLibrary();

function spaceOf(seed: number, wanted: number) {
  const { job, allowAssumedLegs } = variedHouse(seed, wanted);
  const house = workHouse(job, tariffFor(job, library), defaultLengthAllowances);
  const ground = searchGround(house, library, { ways: waysInHouse(house, library), allowAssumedLegs });
  const shop = workshop(ground, byPence);
  const { space, leftOut } = buildSpace(shop);
  const columns = [...space.layers.flatMap((layer) => layer.columns), ...space.free];
  return { job, ground, shop, columns, leftOut };
}

const partsOf = (columns: readonly SchemeColumn[]) => columns.flatMap((column) => column.parts());
const feedsFrom = (part: Omit<Connection, 'id'>, from: string): number =>
  'feeds' in part
    ? (part as { feeds: { from: string }[] }).feeds.filter((feed) => feed.from === from).length
    : 0;

describe('the columns that are chosen from', () => {
  // Small and unknown boxes, rings and radials, units with and without a load: what a third cable takes is in them.
  it.each([1, 5, 12, 20, 30, 101, 104, 203])('cost what a walk over their wiring says: seed %i', (seed) => {
    const { ground, shop, columns } = spaceOf(seed, 3);
    const charge = new Set<number>();
    for (const column of columns) {
      const base = ground.wanted.reduce(
        (sum, { point }, i) =>
          column.mask & (1 << i) ? sum + (shop.baseOf.get(point.id)?.millipence ?? 0) : sum,
        column.cost,
      );
      const walked = worksApart(ground, schemeOf(ground, 'walked', column.parts())).millipence;
      const more = Math.round(walked - base);
      if (column.circuitIds.length > 0) charge.add(more);
      else expect(more, `seed ${seed}: ${column.key}`).toBe(0);
    }
    // All else is what their one circuit takes for being touched.
    expect([...charge], `seed ${seed}`).toHaveLength(1);
  });

  it('branch off the origin of a radial and off joints in its legs', () => {
    const keys = [3, 5].flatMap((seed) => spaceOf(seed, 2).columns.map(({ key }) => key));
    expect(keys.some((key) => key.startsWith('branch/origin/c/'))).toBe(true);
    expect(keys.some((key) => key.startsWith('branch/joint/'))).toBe(true);
  });

  it('join an outlet and a wanted unit on at one point of a radial', () => {
    const { ground, columns } = spaceOf(3, 2);
    expect(ground.wanted.map(({ isUnit }) => isUnit)).toEqual([false, true]);
    const both = columns.filter(({ mask, key }) => mask === 3 && key.startsWith('branch/'));
    const kinds = both.map((column) => column.parts().map(({ kind }) => kind));
    expect(kinds).toContainEqual(['spur', 'fused-spur']);
  });

  it('let a wanted unit without a load feed others on a radial', () => {
    const { ground, columns } = spaceOf(443, 2);
    expect(ground.wanted.map(({ mayFeed, isUnit }) => isUnit && mayFeed)).toContain(true);
    const feeding = partsOf(columns.filter(({ key }) => key.startsWith('branch/'))).filter(
      (part) => part.kind === 'fused-spur' && feedsFrom(part, 'unit') > 0,
    );
    expect(feeding.length).toBeGreaterThan(0);
  });

  it('take up to three cables from a fused unit, and from the device of a new radial', () => {
    const parts = [...Array.from({ length: 12 }, (_, i) => 200 + i)].flatMap((seed) =>
      partsOf(spaceOf(seed, 4).columns),
    );
    const most = (kind: Connection['kind'], from: string) =>
      Math.max(...parts.map((part) => (part.kind === kind ? feedsFrom(part, from) : 0)));
    expect(most('fused-spur', 'unit')).toBe(3);
    expect(most('radial', 'origin')).toBeGreaterThan(1);
    expect(most('fuse-down', 'unit')).toBe(2);
  });

  it('carry an old spur on from its unit and from its end at once', () => {
    const { columns } = spaceOf(132, 3);
    const both = columns.filter(({ key }) => key.includes('/fused/both/'));
    expect(both.length).toBeGreaterThan(0);
    for (const part of partsOf(both)) {
      expect(feedsFrom(part, 'unit')).toBeGreaterThan(0);
      expect(feedsFrom(part, 's1') + feedsFrom(part, 's2')).toBeGreaterThan(0);
    }
  });

  it('put no fused unit where a joint lies', () => {
    const fused = [203, 208, 230].flatMap((seed) =>
      partsOf(spaceOf(seed, 4).columns).filter(({ kind }) => kind === 'fused-spur'),
    );
    const heights = fused.flatMap((part) =>
      part.kind === 'fused-spur' && 'leg' in part.from && typeof part.unit !== 'string'
        ? [part.unit.place && 'wall' in part.unit.place ? part.unit.place.heightMm : null]
        : [],
    );
    expect(heights.length).toBeGreaterThan(10);
    expect(new Set(heights)).toEqual(new Set([450]));
  });

  it('cut a leg in its void, at its corners to the millimetre, and not where it runs in a wall', () => {
    const heights = [101, 208, 230].flatMap((seed) => {
      const { job, ground } = spaceOf(seed, 1);
      return job.legs
        .filter(({ via }) => via !== undefined)
        .flatMap(({ id }) => spotsInLeg(ground, id).map((mm) => endInLeg(ground, id, mm)?.position));
    });
    expect(heights.length).toBeGreaterThan(10);
    for (const position of heights) {
      expect(position?.onWall).toBeUndefined();
      expect(position?.heightMm).toBeLessThan(0);
    }
  });

  it('say what is not among them', () => {
    const { leftOut } = spaceOf(3, 2);
    expect(leftOut).toEqual(
      expect.arrayContaining([
        'More than one new radial from one board.',
        'A leg opened for two extensions.',
        'Joints where a leg runs in a wall.',
        'More than three cables of one circuit at its device.',
        'A fused unit brought along on a radial: what branches off it needs none.',
        'On a radial, a further cable from where a fused unit that feeds others is joined on.',
        'Points fed from W2, whose fuse is for its own load.',
      ]),
    );
  });
});
