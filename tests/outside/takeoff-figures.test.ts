import { describe, expect, it } from 'vitest';
import { channelCapacity } from '#data/standards/channel-capacity.ts';
import type { NetworkEdge } from '#engine/circuit/network.ts';
import { boxDepths } from '#engine/connections/box-depth.ts';
import { buildThings } from '#engine/connections/build-things.ts';
import { clipSpacing } from '#engine/takeoff/clip-spacing.ts';
import { channelSize, conduitSizeMm } from '#engine/takeoff/containment-size.ts';
import { usualCounts } from '#engine/takeoff/kit-counts.ts';
import { BONDING_KG_PER_LITRE, FINISH_KG_PER_LITRE, oneCoatKgPerLitre } from '#engine/takeoff/plaster.ts';
import { flatCableSize } from '#engine/ways/flat-cable-size.ts';
import type { Cable } from '#model/cable.ts';
import { inputOf, legEdge, newEdge, pointOf } from '#tests/engine/connections/wiring-builder.ts';

const cables = (count: number, lineMm2: number): Cable[] =>
  Array.from({ length: count }, () => ({ type: 'flat-twin', lineMm2, cpcMm2: 1.5 }));

/** Source: IET On-Site Guide Table D1 as quoted at http://wiki.diyfaq.org.uk/index.php/Cable_clip. */
describe('clip spacing against the On-Site Guide, Table D1', () => {
  it.each([
    [9, 250, 400],
    [10, 300, 400],
    [15, 300, 400],
    [16, 350, 450],
    [20, 350, 450],
    [21, 400, 550],
    [40, 400, 550],
  ])('cable %i mm wide: %i mm level, %i mm upright', (widthMm, horizontalMm, verticalMm) => {
    expect(clipSpacing(widthMm)).toEqual({ horizontalMm, verticalMm });
  });
});

/** Source: https://www.diynot.com/wiki/Electrics%3Aflatpvccables, overall dimensions. */
describe('flat cable against published dimensions', () => {
  it.each([
    [1.5, 8.2, 5],
    [2.5, 10.3, 6],
    [4, 11.9, 6.25],
    [6, 13.5, 7],
    [10, 17.1, 10],
  ])('%f mm² is %f × %f mm', (areaMm2, widthMm, thicknessMm) => {
    expect(flatCableSize(areaMm2)).toMatchObject({ areaMm2, widthMm, thicknessMm });
  });

  // Second source: a maker's data quoted in a forum give 6 mm² as 13.1 mm and 10 mm² as 16.8 mm wide; we
  // follow the first. 0.4 mm is what the two differ by.
  it.each([
    [6, 13.1],
    [10, 16.8],
  ])('%f mm² is within 0.4 mm of a second source’s %f mm', (areaMm2, widthMm) => {
    expect(Math.abs(flatCableSize(areaMm2).widthMm - widthMm)).toBeLessThanOrEqual(0.4 + 1e-9);
  });
});

/**
 * Source: mini-trunking capacities at 45 % space factor, one maker's cable management brochure,
 * https://storage.electrika.com/flips/0290-mk-cbl-man-brochure/files/assets/basic-html/page-42.html.
 */
describe('mini-trunking against a maker’s 45 % capacities', () => {
  it.each([
    ['16x16', 67],
    ['25x16', 120],
    ['40x16', 209],
    ['40x25', 360],
    ['40x40', 585],
    ['50x50', 898],
  ])('%s holds %i mm²', (name, capacityMm2) => {
    expect(channelCapacity.rows.find((size) => size.name === name)?.capacityMm2).toBe(capacityMm2);
  });

  // 45 % of the inside of a 50 × 50 channel with 1.5 mm walls: the printed figure is of that kind.
  it('holds less than 45 % of its outside section', () => {
    for (const { name, capacityMm2 } of channelCapacity.rows) {
      const [wideMm = 0, deepMm = 0] = name.split('x').map(Number);
      expect(capacityMm2).toBeLessThan(0.45 * wideMm * deepMm);
    }
  });

  // Trade habit; common practice, no source.
  it.each([
    [1, '16x16'],
    [2, '25x16'],
    [3, '40x16'],
  ])('%i cables of 2.5 mm² go into %s', (count, name) => {
    expect(channelSize(cables(count, 2.5))).toBe(name);
  });

  it('does not squeeze a 17.1 mm wide cable into 16 mm', () => {
    expect(channelSize(cables(1, 10))).toBe('40x16');
  });
});

/**
 * Sources: https://www.shadowebike.com/how-do-you-calculate-trunking-size/ (35 % of the bore for cables that no table of
 * factors lists) against a capacity chart that prints 45 %; the bores, 16.9, 21.4 and 27.8 mm, are from memory.
 */
describe('conduit against the published share of its bore', () => {
  const shareOf = (boreMm: number, count: number) =>
    (count * (4.3 * 6 + Math.PI * 9)) / (Math.PI * (boreMm / 2) ** 2);

  it.each([
    [1, 20, 16.9],
    [2, 25, 21.4],
    [3, 32, 27.8],
  ])('%i cables of 2.5 mm² go into %i mm', (count, sizeMm, boreMm) => {
    expect(conduitSizeMm(cables(count, 2.5))).toBe(sizeMm);
    expect(shareOf(boreMm, count)).toBeLessThanOrEqual(0.35);
  });

  it('does not follow the chart of 45 %: three cables of 2.5 mm² would be half over in 25 mm', () => {
    expect(shareOf(21.4, 3)).toBeGreaterThan(0.45);
    expect(shareOf(21.4, 2)).toBeLessThanOrEqual(0.35);
    // Two of 4 mm², 132 mm², are between the two figures: 25 mm by the one, 32 mm by the other.
    expect(conduitSizeMm(cables(2, 4))).toBe(32);
  });
});

/**
 * Source: https://www.lets-do-diy.com/diy/know-your-materials/plastering-materials/: 10 kg of bonding cover
 * 1.5 m² at 8 mm.
 */
describe('plaster against published coverage', () => {
  it('covers 1.5 m² at 8 mm from 10 kg', () => {
    expect(BONDING_KG_PER_LITRE * 1.5 * 8).toBeCloseTo(10, 9);
  });

  // Second figure, from memory: 25 kg cover 2.75 m² at 11 mm.
  it('agrees with 25 kg for 2.75 m² at 11 mm to one in a hundred', () => {
    expect(Math.abs(BONDING_KG_PER_LITRE * 2.75 * 11 - 25) / 25).toBeLessThan(0.01);
  });
});

describe('finish and one-coat plaster against published coverage', () => {
  // Sources: https://kentplasterers.co.uk/bag-of-plaster (25 kg of finish, 10 to 12 m² at 2 mm);
  // https://civilsir.com/coverage-area-of-plaster-in-one-bag-cement/ (10 m² at 2 mm).
  it.each([10, 12])('a bag of finish covers within a fifth of %d m² at 2 mm', (m2) => {
    expect(Math.abs(25 / (FINISH_KG_PER_LITRE * 2) - m2) / m2).toBeLessThan(0.2);
  });

  // From memory: 25 kg of one-coat cover 2.25 m² at 11 mm.
  it('a bag of one-coat covers 2.25 m² at 11 mm', () => {
    expect(oneCoatKgPerLitre(usualCounts) * 2.25 * 11).toBeCloseTo(25, 9);
  });
});

/** Source: https://flameport.com/electric/installation_accessories/metal_backboxes.cs4. */
describe('box depths against a published guide to metal boxes', () => {
  const plain = { features: [], flexOutlet: false, cables: 2 } as const;
  it.each([
    ['ordinary outlets', { ...plain, kind: 'socket-twin' as const }, 25],
    ['flat plates', { ...plain, kind: 'socket-twin' as const, features: ['metal'] }, 35],
    ['USB outlets', { ...plain, kind: 'socket-twin' as const, features: ['usb'] }, 35],
    ['cooker switches', { ...plain, kind: 'cooker-control' as const }, 47],
  ])('%s', (_, contents, minimumMm) => {
    expect(boxDepths(contents).minimumMm).toBe(minimumMm);
  });
});

/**
 * Imperial sizes are named by strands and the strand's diameter in inches. Source: geometry; that two 7/.029
 * with a 2.5 mm² overfill a terminal of 8 mm²: common practice, no source.
 */
describe('old imperial cable in a terminal of any make', () => {
  const strandMm = 0.029 * 25.4;
  const imperial: Cable = { type: 'imperial', lineMm2: (7 * Math.PI * strandMm ** 2) / 4, cpcMm2: 1.28 };
  const old = ['l1', 'l2'].map((id) => legEdge(id, 'ring', 'a', { cable: imperial }));
  const fillWith = (newEdges: readonly NetworkEdge[]) =>
    buildThings(inputOf({ points: [pointOf('a')], foundEdges: old, newEdges })).terminals[0] ??
    expect.fail('no terminals');

  it('fits twice, and does not fit with one 2.5 mm² more, by area though not by count', () => {
    expect(fillWith([])).toMatchObject({ cables: 2, capacityCables: 3 });
    expect(fillWith([]).areaMm2).toBeCloseTo(2 * 2.98, 1);
    const filled = fillWith([newEdge('n', 'ring', 'a')]);
    expect(filled.cables).toBe(filled.capacityCables);
    expect(filled.areaMm2).toBeGreaterThan(filled.capacityMm2);
    expect(filled.areaMm2).toBeCloseTo(8.46, 1);
  });
});
