import { describe, expect, it } from 'vitest';
import { insulationLimit } from '#engine/proof/expected-limits.ts';
import { BATH_SOCKET_BEFORE_A2_MM, BATH_SOCKET_MM } from '#engine/rules/bath-socket-distance.ts';
import { ZONE_2_MM, ZONES_TOP_MM } from '#engine/rules/bathroom.ts';
import { leastBondMm2 } from '#engine/rules/bond-size.ts';
import { deepestChaseMm } from '#engine/rules/chase-depth.ts';
import { leastProtectiveMm2 } from '#engine/rules/earthing-conductor.ts';
import { GAS_TO_ACCESSORY_MM } from '#engine/rules/gas-accessory.ts';
import { GAS_TO_CABLE_MM } from '#engine/rules/gas-cable.ts';
import { COVER_MM, joistHoleMm, joistHoleZoneMm, largestJoistHoleMm } from '#engine/rules/joist-size.ts';
import { ZONE_MM } from '#engine/rules/safe-zones.ts';
import type { Supply } from '#model/installation.ts';

const supplyOf = (partial: Partial<Supply>): Supply => ({
  nominalV: 230,
  bonding: [],
  otherSources: [],
  ...partial,
});

describe('joists', () => {
  it('BS 7671 522.6.201: 50 mm between cable and the face that fixings enter', () => {
    expect(COVER_MM).toBe(50);
  });

  it('Approved Document A and BS 5268-2: a 200 mm joist of 4000 mm span takes a 50 mm hole at 1000 to 1600 mm', () => {
    expect(largestJoistHoleMm(200)).toBe(50);
    expect(joistHoleZoneMm(4000)).toEqual({ fromMm: 1000, toMm: 1600 });
  });
  it('common practice, no source: 2.5 mm² cable goes through a 16 mm hole, which a 100 mm joist cannot cover by 50 mm', () => {
    expect(joistHoleMm(2.5)).toBe(16);
    expect((100 - joistHoleMm(2.5)) / 2).toBeLessThan(COVER_MM);
  });
});

describe('walls', () => {
  it('Approved Document A: a leaf of 100 mm is chased 33 mm upright and 16 mm level', () => {
    expect(Math.floor(deepestChaseMm(100, 'vertical'))).toBe(33);
    expect(Math.floor(deepestChaseMm(100, 'horizontal'))).toBe(16);
  });

  it('BS 7671 522.6.202: zones of 150 mm at top and corner', () => {
    expect(ZONE_MM).toBe(150);
  });
});

describe('positions', () => {
  it('BS 7671 701.512.3: 2.5 m since Amendment 2 (seen in its draft, final text from memory), 3 m before', () => {
    expect(BATH_SOCKET_MM).toBe(2500);
    expect(BATH_SOCKET_BEFORE_A2_MM).toBe(3000);
  });

  it('BS 7671 701.32: zone 2 reaches 0.6 m beyond zone 1, and both 2.25 m up', () => {
    expect(ZONE_2_MM).toBe(600);
    expect(ZONES_TOP_MM).toBe(2250);
  });

  it('BS 6891: 150 mm from gas to accessories, 25 mm to cable', () => {
    expect(GAS_TO_ACCESSORY_MM).toBe(150);
    expect(GAS_TO_CABLE_MM).toBe(25);
  });
});

describe('earthing and bonding', () => {
  it('BS 7671 Table 54.8: a PME bond of 10 mm² with a supply neutral of up to 35 mm²', () => {
    expect(leastBondMm2(supplyOf({ earthing: 'TN-C-S', earthingMm2: 16 }))).toBe(10);
  });

  it('BS 7671 544.1.1: else half the earthing conductor, 6 mm² at least, 25 mm² at most (the cap from memory)', () => {
    expect(leastBondMm2(supplyOf({ earthing: 'TN-S', earthingMm2: 6 }))).toBe(6);
    expect(leastBondMm2(supplyOf({ earthing: 'TN-S', earthingMm2: 16 }))).toBe(8);
    expect(leastBondMm2(supplyOf({ earthing: 'TN-S', earthingMm2: 70 }))).toBe(25);
    expect(leastBondMm2(supplyOf({}))).toBeNull();
  });

  it('BS 7671 Table 54.7: tails of 16, 25, 35 and 50 mm² ask for 16, 16, 16 and 25 mm²', () => {
    expect([16, 25, 35, 50].map(leastProtectiveMm2)).toEqual([16, 16, 16, 25]);
  });

  it('BS 7671 Table 64: 1 MΩ at 500 V DC', () => {
    expect(insulationLimit().minimumMegohm).toBe(1);
  });
});
