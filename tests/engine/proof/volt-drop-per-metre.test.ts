import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cableOhms } from '#engine/proof/conductor-ohms.ts';
import { voltDropCorrection, voltDropPerMetre } from '#engine/proof/volt-drop-per-metre.ts';

describe('the volt drop of a metre', () => {
  it('is the tabulated one of flat twin, whatever its protective conductor', () => {
    const drops = [1.5, 1, 0].map((cpcMm2) => voltDropPerMetre({ type: 'flat-twin', lineMm2: 2.5, cpcMm2 }));
    for (const drop of drops) expect(drop).toEqual({ millivoltPerAM: 18, grade: 'seen' });
  });

  it('is twice the hot resistance of the line for other cables', () => {
    const imperial = { type: 'imperial', lineMm2: 2.98, cpcMm2: 1.28 } as const;
    const { lineMilliohmPerM = Number.NaN } = cableOhms(imperial) ?? {};
    expect(voltDropPerMetre(imperial)?.millivoltPerAM).toBeCloseTo(2.4 * lineMilliohmPerM, 9);
    expect(voltDropPerMetre(imperial)?.grade).toBe('derived');
    expect(voltDropPerMetre({ type: 'flex', lineMm2: 1.5, cpcMm2: 1.5 })?.grade).toBe('memory');
  });

  it('is not lost for want of the protective conductor’s figure', () => {
    expect(voltDropPerMetre({ type: 'steel-wire-armoured', lineMm2: 2.5, cpcMm2: 17 })).toEqual({
      millivoltPerAM: 2 * 7.41 * 1.2,
      grade: 'derived',
    });
  });

  it('is unknown for a size that no figure is held for', () => {
    expect(voltDropPerMetre({ type: 'flat-twin', lineMm2: 3, cpcMm2: 1.5 })).toBeNull();
  });
});

const ratio = fc.double({ min: 0.3, max: 1, noNaN: true });
const loaded = fc.record({
  tabulatedA: fc.double({ min: 5, max: 100, noNaN: true }),
  ambientRatio: ratio,
  groupRatio: ratio,
});

describe('the correction for cooler conductors', () => {
  it('is one for a cable that carries all it may', () => {
    fc.assert(
      fc.property(loaded, (cable) => {
        const currentA = cable.tabulatedA * cable.ambientRatio * cable.groupRatio;
        expect(voltDropCorrection({ ...cable, currentA })).toBeCloseTo(1, 9);
      }),
    );
  });

  it('rises with the current, and passes one only in a cable that is overloaded', () => {
    fc.assert(
      fc.property(loaded, fc.double({ min: 0, max: 2, noNaN: true }), (cable, share) => {
        const fullA = cable.tabulatedA * cable.ambientRatio * cable.groupRatio;
        const at = (currentA: number): number => voltDropCorrection({ ...cable, currentA });
        expect(at(fullA * share)).toBeLessThanOrEqual(at(fullA * (share + 0.1)));
        expect(at(fullA * share) <= 1 + 1e-9).toBe(share <= 1 + 1e-9);
      }),
    );
  });

  it('is the ratio of copper’s resistance at 30 and 70 °C without load', () => {
    const idle = { currentA: 0, tabulatedA: 20, ambientRatio: 1, groupRatio: 1 };
    expect(voltDropCorrection(idle)).toBeCloseTo((230 + 30) / (230 + 70), 12);
  });

  it('takes no credit for air below 30 °C', () => {
    const cable = { currentA: 13, tabulatedA: 20, groupRatio: 1 };
    expect(voltDropCorrection({ ...cable, ambientRatio: 1.03 })).toBe(
      voltDropCorrection({ ...cable, ambientRatio: 1 }),
    );
  });
});
