import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  deepestNotchMm,
  drillableMm,
  type JoistSpan,
  judgeCrossing,
  largestJoistHoleMm,
  notchableMm,
} from '#engine/ways/joist-window.ts';
import { solidFloor, timberFloor } from '#tests/engine/plan/small-house.ts';

const spans = fc
  .tuple(fc.integer({ min: -9000, max: 9000 }), fc.integer({ min: 500, max: 6000 }))
  .map(([fromMm, lengthMm]): JoistSpan => ({ fromMm, toMm: fromMm + lengthMm }));
const percents = fc.integer({ min: 0, max: 1000 }).map((tenths) => tenths / 10);

describe('where a joist may be cut', () => {
  it('lies within its span, in two stretches that mirror each other', () => {
    fc.assert(
      fc.property(spans, (span) => {
        for (const windows of [drillableMm(span), notchableMm(span)]) {
          const [[a, b], [c, d]] = windows;
          expect(a).toBeGreaterThan(span.fromMm);
          expect(a).toBeLessThan(b);
          expect(b).toBeLessThan(c);
          expect(c).toBeLessThan(d);
          expect(d).toBeLessThan(span.toMm);
          expect(a - span.fromMm).toBeCloseTo(span.toMm - d, 6);
          expect(b - span.fromMm).toBeCloseTo(span.toMm - c, 6);
        }
      }),
    );
  });

  it('is the same whichever support is named first', () => {
    fc.assert(
      fc.property(spans, ({ fromMm, toMm }) => {
        const turned = { fromMm: toMm, toMm: fromMm };
        expect(drillableMm(turned)).toEqual(drillableMm({ fromMm, toMm }));
        expect(notchableMm(turned)).toEqual(notchableMm({ fromMm, toMm }));
      }),
    );
  });

  it('grows with the joist: hole and notch by its depth', () => {
    fc.assert(
      fc.property(fc.integer({ min: 75, max: 250 }), (depthMm) => {
        expect(largestJoistHoleMm(2 * depthMm)).toBeCloseTo(2 * largestJoistHoleMm(depthMm), 9);
        expect(deepestNotchMm(depthMm)).toBeCloseTo(largestJoistHoleMm(depthMm) / 2, 9);
      }),
    );
  });
});

describe('judgeCrossing', () => {
  it('gives the same from either support', () => {
    fc.assert(
      fc.property(spans, percents, (span, percent) => {
        const offMm = ((span.toMm - span.fromMm) * percent) / 100;
        expect(judgeCrossing(timberFloor, span, span.toMm - offMm)).toBe(
          judgeCrossing(timberFloor, span, span.fromMm + offMm),
        );
      }),
    );
  });

  it('says what the windows say', () => {
    fc.assert(
      fc.property(spans, percents, (span, percent) => {
        const atMm = span.fromMm + ((span.toMm - span.fromMm) * percent) / 100;
        const cut = judgeCrossing(timberFloor, span, atMm);
        const near = Math.min(percent, 100 - percent);
        expect(cut).toBe(near >= 25 && near <= 40 ? 'hole' : near >= 7 && near < 25 ? 'notch' : 'neither');
      }),
    );
  });

  it('knows nothing without a span or a depth, of joists over 250 mm, and where there are no timber joists', () => {
    const span = { fromMm: 0, toMm: 4000 };
    const { joistDepthMm: _, ...noDepth } = timberFloor;
    expect(judgeCrossing(timberFloor, null, 1200)).toBe('unknown');
    expect(judgeCrossing(noDepth, span, 1200)).toBe('unknown');
    expect(judgeCrossing({ ...timberFloor, joistDepthMm: 250 }, span, 1200)).toBe('hole');
    expect(judgeCrossing({ ...timberFloor, joistDepthMm: 251 }, span, 1200)).toBe('unknown');
    expect(judgeCrossing(solidFloor, span, 1200)).toBe('unknown');
  });
});
