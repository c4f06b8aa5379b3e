import { describe, expect, it } from 'vitest';
import { conductorResistance } from '#data/standards/conductor-resistance.ts';
import { howToConnect } from '#engine/work/tests/how-to-connect.ts';

const ohmPerM = (areaMm2: number): number =>
  conductorResistance.rows.find((row) => row.areaMm2 === areaMm2)?.milliohmPerM ?? Number.NaN;

const ring = {
  hasUnits: false,
  hasElectronics: false,
  rcdMa: 30,
  isRcdDelayed: false,
  hasOwnRcds: false,
  isTt: false,
};

/**
 * What the test sheet says that a sound ring reads.
 * Sources: resistances of BS EN 60228 (12.10, 18.10 and 7.41 mΩ/m, https://www.uecables.com/471-power-copper-conductors-according-to-iec-60228.html);
 * r1 like rn, a quarter of the sum at each point: https://knowt.com/note/af2c6be5-74e1-4c91-a556-c185fb84c4a1/pg-11-15-Electrical-Inspection-Testing-.
 */
describe('what is said of a sound ring', () => {
  it('has the ratio of earth to line of 2.5 mm² cable, now and of before the mid-1980s', () => {
    const words = howToConnect('ends', ring).join(' ');
    expect(words).toContain(`${(ohmPerM(1.5) / ohmPerM(2.5)).toFixed(1)} times r1 with an earth of 1.5 mm²`);
    expect(words).toContain(`${(ohmPerM(1) / ohmPerM(2.5)).toFixed(1)} times with 1.0 mm²`);
  });

  it('has a quarter of the sum of two ends at its points', () => {
    expect(howToConnect('crossed-ln', ring).join(' ')).toContain('a quarter of r1 + rn');
    expect(howToConnect('crossed-le', ring).join(' ')).toContain('a quarter of r1 + r2');
  });
});
