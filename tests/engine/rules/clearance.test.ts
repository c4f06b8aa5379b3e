import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distanceMm, planPoint } from '#engine/plan/plane.ts';
import { distanceToFixtureMm, lineDistanceMm, rangeGapMm } from '#engine/rules/clearance.ts';
import { fixtureOf } from './house-builder.ts';

const spot = fc
  .tuple(fc.integer({ min: -5000, max: 5000 }), fc.integer({ min: -5000, max: 5000 }))
  .map(([x, y]) => planPoint(x, y));
const line = fc.tuple(spot, spot).map(([from, to]) => ({ from, to }));

describe('clearances on plan', () => {
  it('measures lines alike both ways and never further than between their ends', () => {
    fc.assert(
      fc.property(line, line, (a, b) => {
        const gapMm = lineDistanceMm(a, b);
        expect(gapMm).toBeCloseTo(lineDistanceMm(b, a), 6);
        expect(gapMm).toBeLessThanOrEqual(distanceMm(a.from, b.from));
      }),
      { seed: 31 },
    );
  });

  it('never finds two sampled spots nearer than it says', () => {
    fc.assert(
      fc.property(
        line,
        line,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (a, b, s, t) => {
          const on = (l: typeof a, share: number) =>
            planPoint(l.from[0] + share * (l.to[0] - l.from[0]), l.from[1] + share * (l.to[1] - l.from[1]));
          expect(distanceMm(on(a, s), on(b, t))).toBeGreaterThanOrEqual(lineDistanceMm(a, b) - 1e-6);
        },
      ),
      { seed: 32 },
    );
  });

  it('is nought where lines cross, and within a fixture', () => {
    const across = { from: planPoint(-10, 0), to: planPoint(10, 0) };
    expect(lineDistanceMm(across, { from: planPoint(0, -10), to: planPoint(0, 10) })).toBe(0);
    const sink = fixtureOf('sink', [-500, -500], [500, 500]);
    expect(distanceToFixtureMm(across, sink)).toBe(0);
    expect(distanceToFixtureMm({ from: planPoint(800, 900), to: planPoint(800, 900) }, sink)).toBe(500);
  });

  it('measures a fixture that is a spot', () => {
    const pipe = { ...fixtureOf('gas-pipe', [0, 0], [0, 0]), outline: [[0, 0]] as [number, number][] };
    expect(distanceToFixtureMm({ from: planPoint(-50, 40), to: planPoint(50, 40) }, pipe)).toBe(40);
  });

  it('finds the gap between two ranges', () => {
    expect(rangeGapMm(0, 100, 250, 300)).toBe(150);
    expect(rangeGapMm(250, 300, 0, 100)).toBe(150);
    expect(rangeGapMm(0, 100, 50, 300)).toBe(0);
  });
});
