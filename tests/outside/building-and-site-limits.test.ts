import { describe, expect, it } from 'vitest';
import { leastBondMm2 } from '#engine/connections/least-bond.ts';
import { planPoint } from '#engine/plan/plane.ts';
import { floorVoid } from '#engine/plan/voids.ts';
import { insulationLimit } from '#engine/proof/expected-limits.ts';
import { BATH_SOCKET_BEFORE_A2_MM, BATH_SOCKET_MM } from '#engine/rules/bath-socket-distance.ts';
import { ZONE_2_MM, ZONES_TOP_MM } from '#engine/rules/bathroom.ts';
import { leastProtectiveMm2 } from '#engine/rules/earthing-conductor.ts';
import { GAS_TO_ACCESSORY_MM } from '#engine/rules/gas-accessory.ts';
import { GAS_TO_CABLE_MM } from '#engine/rules/gas-cable.ts';
import { deepestChaseMm } from '#engine/ways/chase-cut.ts';
import { DEEP_IN_WALL_MM, JOIST_COVER_MM, THROUGH_WALL_MM, ZONE_MM } from '#engine/ways/concealed-cable.ts';
import { joistPlace } from '#engine/ways/joist-place.ts';
import {
  DEEPEST_JOIST_MM,
  deepestNotchMm,
  drillableMm,
  HOLE_TO_NOTCH_MM,
  HOLES_APART_DIAMETERS,
  joistHoleMm,
  judgeCrossing,
  largestJoistHoleMm,
  notchableMm,
} from '#engine/ways/joist-window.ts';
import type { Wall } from '#model/building.ts';
import type { Supply } from '#model/installation.ts';
import { fourWalls, planOf, room, storey, timberFloor, wall } from '#tests/engine/plan/small-house.ts';

const supplyOf = (partial: Partial<Supply>): Supply => ({
  nominalV: 230,
  bonding: [],
  otherSources: [],
  ...partial,
});

describe('joists', () => {
  // Source: BS 7671:2018 522.6.201 as https://www.tlc-direct.co.uk/Book/4.4.1.htm and a trade forum,
  // https://forums.diydoctor.org.uk/post41036.html, give it.
  it('BS 7671 522.6.201: 50 mm between cable and the face that fixings enter', () => {
    expect(JOIST_COVER_MM).toBe(50);
  });

  const span = { fromMm: 0, toMm: 4000 };
  const whole = (windows: readonly (readonly [number, number])[]) =>
    windows.map((each) => each.map(Math.round));

  // Sources: Approved Document A; BS 5268-2; the On-Site Guide's figure, as
  // https://www.tlc-direct.co.uk/Book/4.4.1.htm, http://www.diydoctor.org.uk/projects/Notching_joist.htm and
  // https://tomspriggs.com/timber-notching/ print them; the worked case is those shares of 200 and 4000 mm.
  it('Approved Document A and BS 5268-2: a 200 mm joist of 4000 mm span takes a 50 mm hole at 1000 to 1600 mm', () => {
    expect(largestJoistHoleMm(200)).toBe(50);
    expect(whole(drillableMm(span))).toEqual([
      [1000, 1600],
      [2400, 3000],
    ]);
    expect(HOLES_APART_DIAMETERS).toBe(3);
  });

  // Sources: https://www.diydoctor.org.uk/projects/Notching_joist.htm, https://tomspriggs.com/timber-notching/.
  it('Approved Document A and BS 5268-2: the same joist takes a 25 mm notch at 280 to 1000 mm', () => {
    expect(deepestNotchMm(200)).toBe(25);
    expect(whole(notchableMm(span))).toEqual([
      [280, 1000],
      [3000, 3720],
    ]);
  });

  it('judges the worked case place by place, from either support (the same sources)', () => {
    const floor = { build: 'suspended-timber', voidMm: 200, joistDepthMm: 200, covering: 'boards' } as const;
    const judged = (mm: number) => [mm, 4000 - mm].map((atMm) => judgeCrossing(floor, span, atMm));
    for (const [mm, cut] of [
      [0, 'neither'],
      [279, 'neither'],
      [280, 'notch'],
      [999, 'notch'],
      [1000, 'hole'],
      [1600, 'hole'],
      [1601, 'neither'],
      [2000, 'neither'],
    ] as const)
      expect(judged(mm)).toEqual([cut, cut]);
  });

  // Common practice, no source: a joist bears on masonry below, and goes on beneath a stud partition that stands on it; the
  // shares are those of the sources above.
  it('measures the worked case from the walls that carry, not from the room: a 4 m span cut in two by brick below', () => {
    const upper = fourWalls(4000, 3000);
    const under = fourWalls(4000, 3000, { prefix: 'g-' });
    const floor = { ...timberFloor, joistDepthMm: 200 };
    const judgedOver = (below: Wall[]) => {
      const plan = planOf([
        storey('gf', { walls: [...under.walls, ...below], rooms: [room('g', under.sides)] }),
        storey('ff', { floorLevelMm: 2700, floor, walls: upper.walls, rooms: [room('r', upper.sides)] }),
      ]);
      return [300, 600, 1300, 2000].map((mm) => joistPlace(plan, 'ff', floor, planPoint(mm, 800)).judged);
    };
    expect(judgedOver([])).toEqual(['notch', 'notch', 'hole', 'neither']);
    // Two spans of 1950 mm: holes at 488 to 780 and at 1170 to 1462 mm.
    expect(judgedOver([wall('mid', [2000, 0], [2000, 3000])])).toEqual(['notch', 'hole', 'hole', 'neither']);
    const stud = wall('mid', [2000, 0], [2000, 3000], { core: 'timber-stud', structural: false });
    expect(judgedOver([stud])).toEqual(['notch', 'notch', 'hole', 'neither']);
  });

  // Source: https://nhbc-standards.co.uk/2020/6-superstructure-excluding-roofs/6-4-timber-and-concrete-upper-floors/6-4-18-notching-and-drilling/.
  it('NHBC Standards 6.4.18: joists over 250 mm are an engineer’s; holes keep 100 mm from notches', () => {
    expect(DEEPEST_JOIST_MM).toBe(250);
    expect(HOLE_TO_NOTCH_MM).toBe(100);
  });

  // The same figures for the joists of older and smaller houses. Depths: BS EN 336 as timber merchants print its regularised
  // sizes (97, 122, 147, 170, 195, 220 mm), from memory. A 16 mm hole is a quarter of 64 mm (Approved Document A), and leaves
  // 50 mm over and under it (BS 7671 522.6.201) in 116 mm and more.
  it.each([
    { depthMm: 97, cuts: ['neither', 'notch', 'neither', 'neither'], notchMm: 12 },
    { depthMm: 100, cuts: ['neither', 'notch', 'neither', 'neither'], notchMm: 12 },
    { depthMm: 115, cuts: ['neither', 'notch', 'neither', 'neither'], notchMm: 14 },
    { depthMm: 116, cuts: ['neither', 'notch', 'hole', 'neither'], notchMm: 14 },
    { depthMm: 122, cuts: ['neither', 'notch', 'hole', 'neither'], notchMm: 15 },
    { depthMm: 147, cuts: ['neither', 'notch', 'hole', 'neither'], notchMm: 18 },
  ] as const)('a joist of $depthMm mm, 4000 mm span: at 200, 600, 1300 and 2000 mm $cuts', (one) => {
    const { depthMm, cuts, notchMm } = one;
    const floor = {
      build: 'suspended-timber',
      voidMm: 200,
      joistDepthMm: depthMm,
      covering: 'boards',
    } as const;
    expect([200, 600, 1300, 2000].map((atMm) => judgeCrossing(floor, span, atMm))).toEqual(cuts);
    expect(Math.floor(deepestNotchMm(depthMm))).toBe(notchMm);
    // The flat cable itself, 6 mm thick and 10.3 mm wide (BS 6004 as makers print it), lies in the notch under its plate.
    expect(deepestNotchMm(depthMm)).toBeGreaterThan(6);
    expect(joistHoleMm(2.5) <= depthMm / 4 && (depthMm - joistHoleMm(2.5)) / 2 >= 50).toBe(
      cuts[2] === 'hole',
    );
  });

  // BS 7671 522.6.201 again: both faces have fixings where a ceiling is below. 22 mm of boards: common practice, no source.
  it.each([97, 100, 114, 122, 137, 147, 170, 175, 195, 220])(
    'cable under a floor on joists of %d mm lies in their middle, so that it is 50 mm from both faces where that can be',
    (joistDepthMm) => {
      const floor = { ...timberFloor, voidMm: joistDepthMm + 30, joistDepthMm };
      const { walls, sides } = fourWalls(4000, 3000);
      const plan = planOf([storey('ff', { floorLevelMm: 2700, floor, walls, rooms: [room('r', sides)] })]);
      const belowTopMm = 2700 - 22 - (floorVoid(plan, 'ff', floor)?.levelMm ?? 0);
      expect(Math.abs(belowTopMm - joistDepthMm / 2)).toBeLessThanOrEqual(0.5);
      expect(Math.min(belowTopMm, joistDepthMm - belowTopMm) >= 50).toBe(joistDepthMm >= 100);
    },
  );

  it('common practice, no source: 2.5 mm² cable goes through a 16 mm hole, which a 100 mm joist cannot cover by 50 mm', () => {
    expect(joistHoleMm(2.5)).toBe(16);
    expect((100 - joistHoleMm(2.5)) / 2).toBeLessThan(JOIST_COVER_MM);
  });
});

describe('walls', () => {
  // Sources: http://carryduffdesigns.co.uk/contents/en-us/chases-in-walls.html;
  // https://professional-electrician.com/technical/chasing-placing-accessories-top-tips/.
  it('Approved Document A: a leaf of 100 mm is chased 33 mm upright and 16 mm level', () => {
    expect(Math.floor(deepestChaseMm(100, 'vertical'))).toBe(33);
    expect(Math.floor(deepestChaseMm(100, 'horizontal'))).toBe(16);
  });

  // Sources: https://owelectric.co.uk/posts/cable-installation-requirements-in-walls-and-partitions-according-to-bs7671-regulation
  // (quotes the On-Site Guide 7.3.2); https://the-regs.co.uk/blog/?p=586; https://forums.diydoctor.org.uk/post41036.html.
  it('BS 7671 522.6.202: zones of 150 mm at top and corner, through walls of up to 100 mm, or 50 mm deep', () => {
    expect(ZONE_MM).toBe(150);
    expect(THROUGH_WALL_MM).toBe(100);
    expect(DEEP_IN_WALL_MM).toBe(50);
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
