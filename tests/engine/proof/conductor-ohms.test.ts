import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { conductorResistance } from '#data/standards/conductor-resistance.ts';
import {
  cableOhms,
  conductorMilliohmPerM,
  HOT_RATIO,
  temperatureRatio,
} from '#engine/proof/conductor-ohms.ts';
import type { Cable } from '#model/cable.ts';

const cable = (type: Cable['type'], lineMm2: number, cpcMm2: number): Cable => ({ type, lineMm2, cpcMm2 });

describe('the resistance of a conductor', () => {
  it('is held for listed areas only', () => {
    expect([1, 16].map((areaMm2) => conductorMilliohmPerM(areaMm2)?.milliohmPerM)).toEqual([18.1, 1.15]);
    expect([0.75, 2.4, 3, 25, 0].map(conductorMilliohmPerM)).toEqual([null, null, null, null, null]);
  });
});

describe('the resistances of a cable', () => {
  it('are its line’s and its protective conductor’s', () => {
    expect(cableOhms(cable('flat-twin', 2.5, 1.5))).toEqual({
      lineMilliohmPerM: 7.41,
      cpcMilliohmPerM: 12.1,
      grade: 'seen',
    });
  });

  it('have none for a protective conductor that is not there, or is of a size unheard of', () => {
    expect(cableOhms(cable('flat-twin', 2.5, 0))?.cpcMilliohmPerM).toBeNull();
    expect(cableOhms(cable('flat-twin', 2.5, 1.3))?.cpcMilliohmPerM).toBeNull();
  });

  it('are unknown for a metric cable of a size unheard of', () => {
    expect(cableOhms(cable('flat-twin', 3, 1.5))).toBeNull();
  });

  it('take flex as flexible, from memory, and a little above fixed cable', () => {
    const ofFlex = cableOhms(cable('flex', 1.5, 1.5));
    expect(ofFlex).toMatchObject({ lineMilliohmPerM: 13.3, grade: 'memory' });
    expect(ofFlex?.lineMilliohmPerM).toBeGreaterThan(conductorMilliohmPerM(1.5)?.milliohmPerM ?? Infinity);
  });

  it('do not take the armour of an armoured cable for copper', () => {
    expect(cableOhms(cable('steel-wire-armoured', 2.5, 2.5))?.cpcMilliohmPerM).toBe(7.41);
    expect(cableOhms(cable('steel-wire-armoured', 2.5, 16))?.cpcMilliohmPerM).toBeNull();
  });

  it('read a rounded imperial area as the size that it is nearest to', () => {
    const exact = cableOhms(cable('imperial', 2.98, 1.28));
    expect(cableOhms(cable('imperial', 3, 1.3))).toEqual(exact);
    expect(exact?.grade).toBe('derived');
  });

  it('are told for every imperial area, and fall as it grows from one size to the next', () => {
    const sizes = [0.98, 1.28, 1.97, 2.98, 4.6, 6.87].map(
      (areaMm2) => cableOhms(cable('imperial', areaMm2, 0))?.lineMilliohmPerM ?? Number.NaN,
    );
    expect(sizes).toEqual(sizes.toSorted((a, b) => b - a));
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 50, noNaN: true }), (areaMm2) => {
        const { lineMilliohmPerM = Number.NaN } = cableOhms(cable('imperial', areaMm2, 0)) ?? {};
        // Nearer than the tolerance of 5 % on the size, whichever it was taken for.
        expect((lineMilliohmPerM * areaMm2) / (7.41 * 2.5)).toBeGreaterThan(0.94);
        expect((lineMilliohmPerM * areaMm2) / (7.41 * 2.5)).toBeLessThan(1.06);
      }),
    );
  });

  it('are graded alike whatever the sizes', () => {
    // One grade serves both conductors of a cable only as long as this holds.
    const grades = (make: string) =>
      new Set(conductorResistance.rows.filter((row) => row.make === make).map(({ status }) => status));
    expect([...grades('fixed')]).toEqual(['seen']);
    expect([...grades('flexible')]).toEqual(['memory']);
  });
});

describe('temperature', () => {
  it('changes nothing at 20 °C and adds a fifth at 70 °C', () => {
    expect(temperatureRatio(20)).toBe(1);
    expect(temperatureRatio(70)).toBeCloseTo(HOT_RATIO, 12);
  });

  it('raises a resistance evenly', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -20, max: 100, noNaN: true }),
        fc.double({ min: 0, max: 60, noNaN: true }),
        (coolC, riseK) => {
          const raised = temperatureRatio(coolC + riseK) - temperatureRatio(coolC);
          expect(raised).toBeCloseTo(temperatureRatio(20 + riseK) - 1, 9);
          expect(raised).toBeGreaterThanOrEqual(0);
        },
      ),
    );
  });
});
