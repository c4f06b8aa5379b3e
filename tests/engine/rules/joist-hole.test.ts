import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { joistHole } from '#engine/rules/joist-hole.ts';
import { joistHoleMm } from '#engine/rules/joist-size.ts';
import { drillableMm, largestJoistHoleMm } from '#engine/ways/joist-window.ts';
import type { Cable } from '#model/cable.ts';
import { runOf, saidBy, twin25, twinOf } from './facts-builder.ts';
import { acrossOf, houseOf } from './house-builder.ts';

const said = (joistDepthMm: number, cable: Cable = twin25) =>
  saidBy(joistHole, houseOf({ floor: { joistDepthMm }, runs: [runOf('r', [acrossOf(-110)], { cable })] }));

describe('holes in joists', () => {
  it('[RT3] lets a hole be exactly a quarter of the depth', () => {
    expect(said(64)).toMatchObject([{ outcome: 'advice', actual: 16, limit: 16 }]);
  });

  it('[RT3] leaves a larger hole to be decided', () => {
    expect(said(63)).toMatchObject([{ outcome: 'decide', messageId: 'tooLarge', actual: 16 }]);
  });

  it('[RT3] sends joists deeper than 250 mm to an engineer, and not one of 250', () => {
    expect(said(250)).toMatchObject([{ messageId: 'zone' }]);
    expect(said(251)).toMatchObject([{ outcome: 'decide', messageId: 'engineer', limit: 250 }]);
  });

  it('[RT3] says where by the room’s own span, and advises without it', () => {
    expect(said(200)).toMatchObject([{ outcome: 'advice', messageId: 'zone' }]);
    const facts = houseOf({ room: { walls: [] }, runs: [runOf('r', [acrossOf(-110)])] });
    expect(saidBy(joistHole, facts)).toMatchObject([{ outcome: 'advice', messageId: 'spanUnknown' }]);
  });

  it('[RT3] names the zone of a 4000 mm span in its words', () => {
    const facts = houseOf({ runs: [runOf('r', [acrossOf(-110)])] });
    expect(joistHole.check(facts)[0]?.values).toMatchObject({ span: 4000, from: 1000, to: 1600 });
  });

  it('[RT3] asks a larger hole for thicker cable, never a smaller one', () => {
    fc.assert(
      fc.property(fc.constantFrom(1, 1.5, 2.5, 4, 6), fc.constantFrom(1.5, 2.5, 4, 6, 10), (a, b) => {
        if (a <= b) expect(joistHoleMm(a)).toBeLessThanOrEqual(joistHoleMm(b));
        else expect(joistHoleMm(a)).toBeGreaterThanOrEqual(joistHoleMm(b));
      }),
      { seed: 11 },
    );
    expect(said(200, twinOf(10, 4))).toMatchObject([{ actual: 25 }]);
  });

  it('[RT3] scales hole and zone with the joist', () => {
    fc.assert(
      fc.property(fc.integer({ min: 75, max: 300 }), fc.integer({ min: 1000, max: 6000 }), (depth, span) => {
        expect(largestJoistHoleMm(2 * depth)).toBeCloseTo(2 * largestJoistHoleMm(depth), 9);
        const [[fromMm, toMm]] = drillableMm({ fromMm: 0, toMm: span });
        expect(fromMm).toBeLessThan(toMm);
        expect(toMm).toBeLessThan(span / 2);
      }),
      { seed: 12 },
    );
  });
});
