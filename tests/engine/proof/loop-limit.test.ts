import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  coldLimit,
  LEAST_FAULT_V,
  loopLimit,
  plugFuseLimit,
  rcdLoopLimitOhm,
} from '#engine/proof/loop-limit.ts';
import type { Device } from '#model/installation.ts';

const breaker = (curve: Device['curve'], ratingA: number, standard: Device['standard'] = 'BS-EN-60898') =>
  ({ standard, ratingA, ...(curve === undefined ? {} : { curve }) }) satisfies Device;

describe('the loop limit of a breaker', () => {
  it('says how it comes about', () => {
    expect(loopLimit(breaker('B', 32))).toEqual({
      maximumOhm: 1.365625,
      operatingA: 160,
      grade: 'derived',
      by: 'B32: 218.5 V ÷ 160 A',
    });
    expect(loopLimit(breaker('2', 30, 'BS-3871'))?.by).toBe('type 2, 30 A: 218.5 V ÷ 210 A');
  });

  it('is that of a breaker for an RCBO of the same curve', () => {
    expect(loopLimit(breaker('C', 20, 'BS-EN-61009'))).toEqual(loopLimit(breaker('C', 20)));
  });

  it('is not told without a curve, nor with a curve that its standard does not have', () => {
    expect(loopLimit(breaker(undefined, 32))).toBeNull();
    expect(loopLimit(breaker('1', 32))).toBeNull();
    expect(loopLimit(breaker('B', 32, 'BS-3871'))).toBeNull();
    expect(loopLimit(breaker('B', 0))).toBeNull();
  });

  it('times its current is the least voltage, and B is twice C is four times D', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 125, noNaN: true }), (ratingA) => {
        const [b, c, d] = (['B', 'C', 'D'] as const).map((curve) => loopLimit(breaker(curve, ratingA)));
        expect((b?.maximumOhm ?? 0) * (b?.operatingA ?? 0)).toBeCloseTo(LEAST_FAULT_V, 9);
        expect(c?.maximumOhm).toBeCloseTo((b?.maximumOhm ?? 0) / 2, 12);
        expect(d?.maximumOhm).toBeCloseTo((b?.maximumOhm ?? 0) / 4, 12);
      }),
    );
  });
});

describe('the loop limit of a fuse', () => {
  it('has the current where it is known', () => {
    expect(loopLimit({ standard: 'BS-3036', ratingA: 30 })).toEqual({
      maximumOhm: 1.04,
      operatingA: 210,
      grade: 'derived',
      by: 'BS 3036 fuse, 30 A: 0.4 s',
    });
    expect(loopLimit({ standard: 'BS-88-3', ratingA: 32 })).toMatchObject({
      operatingA: null,
      grade: 'memory',
    });
  });

  it('keeps the old house-service fuse and the one that took its place apart', () => {
    expect(loopLimit({ standard: 'BS-1361', ratingA: 30 })?.maximumOhm).toBe(1.09);
    expect(loopLimit({ standard: 'BS-88-3', ratingA: 30 })).toBeNull();
  });

  it('is not told for ratings without a figure for 0.4 s', () => {
    expect(loopLimit({ standard: 'BS-3036', ratingA: 45 })).toBeNull();
    expect(loopLimit({ standard: 'BS-1361', ratingA: 45 })).toBeNull();
  });

  it('of plugs is held for 3 and 13 A', () => {
    expect([3, 5, 13].map((fuseA) => plugFuseLimit(fuseA)?.maximumOhm)).toEqual([15.6, undefined, 2.3]);
  });
});

describe('other limits', () => {
  it('are held for no device of which the rating alone was told', () => {
    expect(loopLimit({ ratingA: 32 })).toBeNull();
    expect(loopLimit({ ratingA: 32, curve: 'B' })).toBeNull();
  });

  it('an RCD’s keeps 50 V', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 1000, noNaN: true }), (residualMA) => {
        expect((rcdLoopLimitOhm(residualMA) * residualMA) / 1000).toBeCloseTo(50, 9);
      }),
    );
  });

  it('a cold reading is compared with less, by the 80 % rule with the least', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 2000, noNaN: true }), (maximumOhm) => {
        const [rule, guide] = [
          coldLimit(maximumOhm, 'eighty-percent'),
          coldLimit(maximumOhm, 'guide-divisor'),
        ];
        expect(rule).toBeLessThan(guide);
        expect(guide).toBeLessThan(maximumOhm);
        expect(guide / rule).toBeCloseTo(1.008, 3);
      }),
    );
  });
});
