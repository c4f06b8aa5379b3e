import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { channelCapacity } from '#data/standards/channel-capacity.ts';
import { flatCableDimensions } from '#data/standards/flat-cable-dimensions.ts';
import { containmentDemands, heldBy } from '#engine/takeoff/containment-lines.ts';
import { cappingSizeMm, channelSize, conduitSizeMm, ovalSizeMm } from '#engine/takeoff/containment-size.ts';
import { usualCounts } from '#engine/takeoff/kit-counts.ts';
import { flatCableSectionMm2, flatCableSize } from '#engine/ways/flat-cable-size.ts';
import type { Run, Segment } from '#engine/ways/run.ts';
import type { Cable } from '#model/cable.ts';
import { runOf, segmentOf, spotAt, twinAndEarth } from '#tests/engine/connections/wiring-builder.ts';
import { measuredByItem, workedOf } from './worked-builder.ts';

const cablesOf = (...areasMm2: readonly number[]): Cable[] =>
  areasMm2.map((lineMm2) => ({ ...twinAndEarth, lineMm2 }));

function measured(...runs: readonly Run[]) {
  return measuredByItem(containmentDemands(workedOf({ runs }), usualCounts));
}

function tube(fromMm: number, toMm: number, rest: Partial<Segment> = {}): Segment {
  const lay = { medium: 'wall-chase', containment: 'oval' } as const;
  return segmentOf(spotAt(0, 0, fromMm), spotAt(0, 0, toMm), { ...lay, ...rest });
}

const along = segmentOf(spotAt(0, 0, -110), spotAt(2000, 0, -110));

describe('oval tube', () => {
  it('goes 100 mm past the floor that it leads through', () => {
    expect(measured(runOf('n', 'a', 'w', [tube(300, 0), along]))).toEqual({ 'oval-20': 0.4 });
  });

  it('is not lengthened where it ends in the room', () => {
    expect(measured(runOf('n', 'a', 'w', [tube(300, 1100)]))).toEqual({ 'oval-20': 0.8 });
  });

  it('is measured once where it is drawn on into the void already', () => {
    const inVoid = segmentOf(spotAt(0, 0, 0), spotAt(0, 0, -110), {
      medium: 'void-open',
      containment: 'oval',
    });
    expect(measured(runOf('n', 'a', 'w', [tube(300, 0), inVoid, along]))['oval-20']).toBeCloseTo(0.41, 9);
  });

  it('counts above the floor only, plus 100 mm, where a chase is drawn down below it', () => {
    expect(measured(runOf('n', 'a', 'w', [tube(300, -250), along]))).toEqual({ 'oval-20': 0.4 });
  });

  it('is wider, and measured once, where two cables share it', () => {
    const shared = tube(300, 1100, { bundle: 'b' });
    expect(measured(runOf('n', 'a', 'w', [shared]), runOf('m', 'a', 'v', [shared]))).toEqual({
      'oval-32': 0.8,
    });
  });

  it('is measured by the longest of the cables that share it', () => {
    const long = runOf('n', 'a', 'w', [tube(300, 1300, { bundle: 'b' })]);
    const short = runOf('m', 'a', 'v', [tube(300, 800, { bundle: 'b' })]);
    expect(measured(long, short)).toEqual({ 'oval-32': 1 });
  });
});

describe('capping', () => {
  it('is pinned at both ends and every 300 mm', () => {
    const capped = tube(300, 1200, { containment: 'capping' });
    expect(measured(runOf('n', 'a', 'w', [capped]))).toEqual({ 'capping-25': 0.9, 'capping-pin': 4 });
  });
});

describe('channel', () => {
  const lay = { medium: 'surface-channel', containment: 'channel' } as const;
  const upright = segmentOf(spotAt(0, 0, 300), spotAt(0, 0, 100), lay);
  const level = (lengthMm: number) => segmentOf(spotAt(0, 0, 100), spotAt(lengthMm, 0, 100), lay);

  it('turns with a bend, and needs no caps between two boxes', () => {
    expect(measured(runOf('n', 'a', 'w', [upright, level(2000)]))).toEqual({
      'channel-16x16': 2.2,
      'channel-bend-16x16': 1,
      'screw-and-plug': 6,
    });
  });

  it('is held at both ends and no further apart than is usual; a short riser by one in its middle', () => {
    expect([200, 250, 251, 500, 501, 2000].map((lengthMm) => heldBy({ lengthMm }, 500))).toEqual([
      1, 1, 2, 2, 3, 5,
    ]);
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 20_000 }),
        fc.integer({ min: 50, max: 2000 }),
        (lengthMm, apartMm) => {
          const held = heldBy({ lengthMm }, apartMm);
          const furthestMm = held === 1 ? lengthMm / 2 : lengthMm / (held - 1);
          expect(furthestMm).toBeLessThanOrEqual(apartMm);
        },
      ),
      { seed: 20_261_127 },
    );
  });

  it.each([
    [3000, undefined],
    [3001, 1],
    [6001, 2],
  ])('of %i mm is coupled from lengths of 3 m: %s couplers', (lengthMm, couplers) => {
    expect(measured(runOf('n', 'a', 'w', [level(lengthMm)]))['channel-coupler-16x16']).toBe(couplers);
  });

  it('has a cap where it ends away from a box', () => {
    expect(measured(runOf('n', 'a', 'w', [level(1000), along]))['channel-end-16x16']).toBe(1);
  });

  it('shares its fittings among the cables in it', () => {
    const bundled = [upright, level(2000)].map((segment) => ({ ...segment, bundle: 'b' }));
    expect(measured(runOf('n', 'a', 'w', bundled), runOf('m', 'a', 'v', bundled))).toEqual({
      'channel-25x16': 2.2,
      'channel-bend-25x16': 1,
      'screw-and-plug': 6,
    });
  });

  it('is never filled beyond its capacity while a larger size is listed, nor larger than needed', () => {
    const areas = fc.array(fc.constantFrom(...flatCableDimensions.rows.map(({ areaMm2 }) => areaMm2)), {
      minLength: 1,
      maxLength: 12,
    });
    fc.assert(
      fc.property(areas, (areasMm2) => {
        const sectionMm2 = areasMm2.reduce((sum, mm2) => sum + flatCableSectionMm2(flatCableSize(mm2)), 0);
        const name = channelSize(cablesOf(...areasMm2));
        const index = channelCapacity.rows.findIndex((size) => size.name === name);
        const capacityMm2 = channelCapacity.rows[index]?.capacityMm2 ?? 0;
        expect(name === '50x50' || sectionMm2 <= capacityMm2).toBe(true);
        const more = channelSize(cablesOf(...areasMm2, 2.5));
        expect(channelCapacity.rows.findIndex((size) => size.name === more)).toBeGreaterThanOrEqual(index);
      }),
      { seed: 5 },
    );
  });
});

describe('conduit', () => {
  it('has saddles, a bend at each turn and an adaptor at each box', () => {
    const lay = { medium: 'surface-clipped', containment: 'conduit' } as const;
    const segments = [
      segmentOf(spotAt(0, 0, 1100), spotAt(0, 0, 100), lay),
      segmentOf(spotAt(0, 0, 100), spotAt(1600, 0, 100), lay),
    ];
    expect(measured(runOf('n', 'a', 'w', segments))).toEqual({
      'conduit-20': 2.6,
      'conduit-adaptor-20': 2,
      'conduit-bend-20': 1,
      'conduit-saddle-20': 3,
      'conduit-saddle-metal-20': 2,
    });
  });
});

describe('sizes by what lies in them', () => {
  it.each([
    [[1.5], 16, 13, 20],
    [[2.5], 20, 25, 20],
    [[6], 25, 25, 25],
    [[10], 25, 38, 32],
    [[2.5, 2.5], 32, 38, 25],
    [[1.5, 1.5], 32, 25, 20],
    [[4, 4], 38, 50, 32],
    [[2.5, 2.5, 2.5], 38, 50, 32],
  ])('of %j mm²: oval %i, capping %i, conduit %i', (areasMm2, oval, capping, conduit) => {
    const cables = cablesOf(...areasMm2);
    expect([
      ovalSizeMm(cables, usualCounts),
      cappingSizeMm(cables, usualCounts),
      conduitSizeMm(cables),
    ]).toEqual([oval, capping, conduit]);
  });

  it('are the firm’s own where it has them', () => {
    const own = { ...usualCounts, ovalOneMm: 25, ovalTwoMm: 38, cappingTwoMm: 50, cappingFineMm: 25 };
    expect([ovalSizeMm(cablesOf(2.5), own), ovalSizeMm(cablesOf(2.5, 2.5), own)]).toEqual([25, 38]);
    expect([cappingSizeMm(cablesOf(2.5, 2.5), own), cappingSizeMm(cablesOf(1.5), own)]).toEqual([50, 25]);
    expect([ovalSizeMm(cablesOf(6), own), cappingSizeMm(cablesOf(2.5), own)]).toEqual([25, 25]);
  });
});
