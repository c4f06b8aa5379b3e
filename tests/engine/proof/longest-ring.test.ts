import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cableOhms } from '#engine/proof/conductor-ohms.ts';
import { furthestLoadA, longestLength, type UniformCircuit } from '#engine/proof/longest-ring.ts';
import { voltDropPerMetre } from '#engine/proof/volt-drop-per-metre.ts';

const ring32: UniformCircuit = {
  shape: 'ring',
  cable: { type: 'flat-twin', lineMm2: 2.5, cpcMm2: 1.5 },
  currentA: 26,
  dropLimitV: 11.5,
  correctedByA: null,
  loopLimitOhm: 1.37,
  zeOhm: 0.35,
};

const circuits = fc.record({
  shape: fc.constantFrom('ring' as const, 'radial' as const),
  cable: fc
    .constantFrom([1.5, 1], [2.5, 1.5], [2.5, 1], [4, 1.5], [6, 2.5], [10, 4])
    .map(([line = 0, cpc = 0]) => ({
      type: 'flat-twin' as const,
      lineMm2: line,
      cpcMm2: cpc,
    })),
  currentA: fc.double({ min: 1, max: 40, noNaN: true }),
  dropLimitV: fc.double({ min: 1, max: 20, noNaN: true }),
  correctedByA: fc.constant(null),
  loopLimitOhm: fc.double({ min: 0.8, max: 10, noNaN: true }),
  zeOhm: fc.double({ min: 0, max: 0.8, noNaN: true }),
});

/** The two ways to a point of a ring at this part of its length, side by side; the one way of a radial. */
const toPoint = (shape: 'ring' | 'radial', whole: number, fraction: number): number =>
  shape === 'radial' ? whole * fraction : 1 / (1 / (whole * fraction) + 1 / (whole * (1 - fraction)));

describe('the longest length', () => {
  it('just keeps both limits at the point where each is worst', () => {
    fc.assert(
      fc.property(circuits, (circuit) => {
        const { byDropMm = 0, byLoopMm, lengthMm, by } = longestLength(circuit) ?? {};
        const fraction = circuit.shape === 'ring' ? 0.5 : 1;
        const perM = voltDropPerMetre(circuit.cable)?.millivoltPerAM ?? 0;
        const dropV = circuit.currentA * toPoint(circuit.shape, (perM * byDropMm) / 1e6, fraction);
        expect(dropV).toBeCloseTo(circuit.dropLimitV, 6);
        const ohms = cableOhms(circuit.cable);
        const both = ((ohms?.lineMilliohmPerM ?? 0) + (ohms?.cpcMilliohmPerM ?? 0)) * 1.2;
        const zsOhm = circuit.zeOhm + toPoint(circuit.shape, (both * (byLoopMm ?? 0)) / 1e6, fraction);
        expect(zsOhm).toBeCloseTo(circuit.loopLimitOhm, 6);
        expect(lengthMm).toBe(Math.min(byDropMm, byLoopMm ?? Infinity));
        expect(by === 'fault-loop').toBe((byLoopMm ?? Infinity) < byDropMm);
      }),
    );
  });

  it('of a ring is four times that of the radial with the same cable and load', () => {
    fc.assert(
      fc.property(circuits, (circuit) => {
        const [ring, radial] = (['ring', 'radial'] as const).map((shape) =>
          longestLength({ ...circuit, shape }),
        );
        expect((ring?.byDropMm ?? 0) / (radial?.byDropMm ?? 1)).toBeCloseTo(4, 9);
        expect(ring?.byLoopMm ?? 0).toBeCloseTo(4 * (radial?.byLoopMm ?? 0), 3);
      }),
    );
  });

  it('is set by the loop on TN-S and by the volt drop on TN-C-S without an RCD', () => {
    const tnS = longestLength({ ...ring32, zeOhm: 0.8 });
    expect(tnS?.by).toBe('fault-loop');
    expect((tnS?.lengthMm ?? 0) / 1000).toBeCloseTo(97.4, 1);
    expect(longestLength(ring32)?.by).toBe('volt-drop');
    expect((longestLength(ring32)?.byLoopMm ?? 0) / 1000).toBeCloseTo(174.3, 1);
  });

  it('is nought by the loop where the supply alone is over the limit', () => {
    expect(longestLength({ ...ring32, zeOhm: 1.5 })).toMatchObject({ lengthMm: 0, by: 'fault-loop' });
  });

  it('leaves the loop out where an RCD disconnects, or Ze or the protective conductor is unknown', () => {
    const open = [
      { ...ring32, loopLimitOhm: null },
      { ...ring32, zeOhm: null },
      { ...ring32, cable: { ...ring32.cable, cpcMm2: 0 } },
    ];
    for (const circuit of open)
      expect(longestLength(circuit)).toMatchObject({ by: 'volt-drop', byLoopMm: null });
  });

  it('is not told for a cable without figures', () => {
    expect(longestLength({ ...ring32, cable: { type: 'flat-twin', lineMm2: 3, cpcMm2: 1.5 } })).toBeNull();
  });

  it('grows when cooler conductors are counted, the more the less they are loaded', () => {
    const lengths = [null, 20, 27].map(
      (correctedByA) => longestLength({ ...ring32, correctedByA })?.byDropMm ?? Number.NaN,
    );
    expect(lengths).toEqual(lengths.toSorted((a, b) => a - b));
    expect(new Set(lengths).size).toBe(3);
  });
});

describe('the load at the furthest point', () => {
  it('is the whole rating up to 20 A and half of what is above', () => {
    expect([16, 20, 30, 32].map(furthestLoadA)).toEqual([16, 20, 25, 26]);
  });
});
