import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { estimate } from '#engine/estimate.ts';
import { findSchemes } from '#engine/find-schemes.ts';
import { boardDemands, waysFor } from '#engine/takeoff/board-lines.ts';
import { bondDemands } from '#engine/takeoff/bonding-lines.ts';
import { sleevingBoreMm } from '#engine/takeoff/earth-lines.ts';
import { jointDemands, leversFor } from '#engine/takeoff/joint-lines.ts';
import { kitCountsOf, usualCounts, usualSold } from '#engine/takeoff/kit-counts.ts';
import { screwForFrameMm } from '#engine/takeoff/plate-screws.ts';
import type { Circuit, Supply } from '#model/installation.ts';
import { type Counts, type Library, SOLD_SIZES, type SoldSizes } from '#model/library.ts';
import { schemeOf } from '#tests/engine/connections/wiring-builder.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { measuredByItem, workedOf } from './worked-builder.ts';

const usual = demoLibrary();
/** Of which nobody knows the earthing. */
const supply: Supply = { nominalV: 230, bonding: [], otherSources: [] };
const libraryWith = (counts: Counts, sold?: SoldSizes): Library => ({
  ...usual,
  norms: { ...usual.norms, counts, ...(sold === undefined ? {} : { sold }) },
});
const countsWith = (counts: Counts, sold?: SoldSizes) => kitCountsOf(libraryWith(counts, sold));

describe('the sizes that a firm buys', () => {
  it('are all that are sold where it says nothing, and each is an item with a price in the demo’s list', () => {
    expect(usualSold).toEqual(SOLD_SIZES);
    expect(kitCountsOf(usual).sold).toEqual(SOLD_SIZES);
    const priced = new Set(usual.prices.items.map(({ item }) => item));
    const items = [
      ...SOLD_SIZES.boardWays.map((ways) => `consumer-unit-${ways}`),
      ...SOLD_SIZES.bondsMm2.map((mm2) => `earth-single-${mm2}`),
      ...SOLD_SIZES.leverWays.flatMap((ways) => [`lever-${ways}`, `lever-6-${ways}`]),
      ...SOLD_SIZES.plateScrewsMm.map((mm) => `screw-m3.5-${mm}`),
    ];
    expect(items.filter((item) => !priced.has(item))).toEqual([]);
  });

  it('are taken in rising order, however the file has them', () => {
    expect(countsWith({}, { boardWays: [20, 8] }).sold).toEqual({ ...SOLD_SIZES, boardWays: [8, 20] });
  });

  it('make a board larger, a screw longer and a bond thicker where the one between is not bought', () => {
    const ways = (boardWays: SoldSizes['boardWays']) => waysFor(4, countsWith({}, { boardWays }));
    expect([ways([6, 8]), ways([8, 12]), ways([24])]).toEqual([6, 8, 24]);
    const screw = (plateScrewsMm: SoldSizes['plateScrewsMm']) =>
      screwForFrameMm(10, countsWith({}, { plateScrewsMm }));
    expect([screw([40, 75]), screw([75]), screw([50, 75])]).toEqual([40, 75, 50]);
    const bond = (bondsMm2: SoldSizes['bondsMm2']) =>
      bondDemands({ ...supply, earthing: 'TN-C-S' }, 'c', countsWith({}, { bondsMm2 }))[0]?.item;
    expect([bond([6, 10]), bond([6, 16]), bond([25])]).toEqual([
      'earth-single-10',
      'earth-single-16',
      'earth-single-25',
    ]);
    // What is bought does not serve: a thinner bond is never counted in its place.
    expect(bond([6])).toBe('earth-single-10');
  });

  it('of lever connectors hold every cable, and no connector too many', () => {
    const families = fc.subarray([2, 3, 5], { minLength: 1 });
    fc.assert(
      fc.property(families, fc.integer({ min: 1, max: 60 }), (leverWays, cables) => {
        const { ways, count } = leversFor(cables, { leverWays });
        const places = (connectors: number) => connectors * ways - 2 * (connectors - 1);
        expect(places(count)).toBeGreaterThanOrEqual(cables);
        expect(count === 1 || places(count - 1) < cables).toBe(true);
        // Of a size that is bought, unless that could not be linked.
        expect(leverWays.includes(ways) || (ways === 3 && Math.max(...leverWays) === 2)).toBe(true);
      }),
    );
    expect(leversFor(2, { leverWays: [3, 5] })).toEqual({ ways: 3, count: 1 });
    expect(leversFor(4, { leverWays: [2, 3] })).toEqual({ ways: 3, count: 2 });
  });
});

describe('sizes and shares by the firm’s habit', () => {
  it('sleeve and crimp by its bores and lengths', () => {
    const areas = [1, 1.5, 2.5, 4, 6, 16];
    expect(areas.map((mm2) => sleevingBoreMm(mm2, usualCounts))).toEqual([3, 3, 4, 4, 6, 6]);
    const own = countsWith({ sleeveFineBoreMm: 4, sleeveOneBoreMm: 6, sleeveThickBoreMm: 4 });
    expect(areas.map((mm2) => sleevingBoreMm(mm2, own))).toEqual([4, 4, 6, 6, 4, 4]);
  });

  it('put joints in connectors and enclosures by its limits', () => {
    const joint = {
      ...{ id: 'j', circuitId: 'ring', legId: 'l', accessible: false, isPlace: true, ratingA: 32 },
      ...{ cables: 3, conductorAreaMm2: 4, position: null, lies: 'floor-void', state: 'new' },
    } as const;
    const parts = (kind: 'lever' | 'crimp', counts: Counts) => {
      const worked = workedOf({});
      const things = { ...worked.things, joints: [{ ...joint, kind }] } as unknown as typeof worked.things;
      return measuredByItem(jointDemands({ ...worked, things }, countsWith(counts)));
    };
    expect(parts('lever', {})).toMatchObject({ 'lever-3': 3, 'joint-enclosure': 1 });
    expect(parts('lever', { leverMostMm2: 2.5 })).toMatchObject({ 'lever-6-3': 3 });
    expect(parts('lever', { enclosureCables: 2 })).toMatchObject({ 'joint-enclosure-large': 1 });
    // Two cables meet a third: six crimps.
    expect(parts('crimp', {})['heat-shrink']).toBeCloseTo(0.6, 9);
    expect(parts('crimp', { crimpSleeveMm: 50 })['heat-shrink']).toBeCloseTo(0.3, 9);
  });

  it('bond by its shares of the length, and by its size where none is told', () => {
    const bond = (counts: Counts) => bondDemands(supply, 'c', countsWith(counts))[0];
    expect(bond({})).toMatchObject({ item: 'earth-single-10', measured: 10, low: 4, high: 20 });
    expect(bond({ bondMm2: 16, bondLeastPercent: 50, bondMostPercent: 150 })).toMatchObject({
      ...{ item: 'earth-single-16', measured: 10, low: 5, high: 15 },
    });
  });

  it('take the device nobody looked at for what it says', () => {
    const bare = (use: Circuit['use']): Circuit => ({ id: use, name: use, board: 'board', use });
    const worked = workedOf({
      scheme: schemeOf({ remedies: [{ kind: 'new-board', at: 'board' }] }),
      job: {
        circuits: (['sockets', 'kitchen', 'cooker', 'heating', 'other'] as const).map(bare),
        boards: [{ id: 'board', label: 'Board', rcds: [], ways: 5, spareWays: 0 }],
      },
    });
    const bought = (counts: Counts) =>
      Object.fromEntries(
        Object.entries(measuredByItem(boardDemands(worked, countsWith(counts)))).filter(([item]) =>
          item.startsWith('rcbo'),
        ),
      );
    expect(bought({})).toEqual({ 'rcbo-b32-30-a': 3, 'rcbo-b16-30-a': 1, 'rcbo-b6-30-a': 1 });
    const own = { socketsDeviceA: 20, cookerDeviceA: 40, heatingDeviceA: 25, otherDeviceA: 10 } as const;
    expect(bought(own)).toEqual({
      ...{ 'rcbo-b20-30-a': 2, 'rcbo-b40-30-a': 1, 'rcbo-b25-30-a': 1, 'rcbo-b10-30-a': 1 },
    });
  });

  it('screw plates of boxes let in by its length', () => {
    const job = demoJob('saltglass-row');
    const screws = (counts: Counts) =>
      (estimate(job, libraryWith(counts), { date: '2026-11-25', revision: 1 }).schemes[0]?.takeoff ?? [])
        .filter(({ item, measured }) => item.startsWith('screw-m3.5-') && measured > 0)
        .map(({ item }) => item);
    expect(screws({})).toContain('screw-m3.5-50');
    expect(screws({ sunkScrewMm: 75 })).toContain('screw-m3.5-75');
    expect(screws({ sunkScrewMm: 75 })).not.toContain('screw-m3.5-50');
    expect([25, 40].map((suppliedScrewMm) => screwForFrameMm(10, countsWith({ suppliedScrewMm })))).toEqual([
      40, 50,
    ]);
  });

  it('are what the search reckons with too', () => {
    const job = demoJob('saltglass-row');
    const library = libraryWith(
      { sleeveFineBoreMm: 6, sunkScrewMm: 75, leverMostMm2: 2.5, enclosureCables: 2 },
      { leverWays: [5], plateScrewsMm: [75] },
    );
    const own = findSchemes(job, library, { aim: 'pence', kinds: false, most: 1 });
    expect([own?.optimal, own?.boundPence]).toEqual([true, own?.schemes[0]?.worksPence]);
  });
});
