import { describe, expect, it } from 'vitest';
import { ambientFactor } from '#engine/proof/ambient-factor.ts';
import { declaredImpedance, steadyElectrodeOhm } from '#engine/proof/declared-impedance.ts';
import { disconnectionTimeS } from '#engine/proof/disconnection-time.ts';
import { insulationLimit, rcdTestLimit } from '#engine/proof/expected-limits.ts';

describe('the factor for warm air', () => {
  it('is that of the next listed temperature above', () => {
    expect([30, 30.1, 35, 36].map(ambientFactor)).toEqual([1, 0.94, 0.94, 0.87]);
  });

  it('does not grow below 25 °C and is not told above 60 °C', () => {
    expect([-10, 20, 25, 60, 61].map(ambientFactor)).toEqual([1.03, 1.03, 1.03, 0.5, null]);
  });
});

describe('the time to disconnect', () => {
  it.each([
    ['TN-S', 32, true, 0.4],
    ['TN-C-S', 63, true, 0.4],
    ['TN-C-S', 80, true, 5],
    ['TN-C-S', 32, false, 0.4],
    ['TN-C-S', 40, false, 5],
    ['TT', 32, true, 0.2],
    ['TT', 40, false, 1],
  ] as const)(
    'on %s behind %d A (with socket-outlets: %s) is %d s',
    (earthing, ratingA, hasSocketOutlets, timeS) => {
      expect(disconnectionTimeS({ earthing, ratingA, hasSocketOutlets })).toBe(timeS);
    },
  );
});

describe('what is usual at the origin', () => {
  it('is declared where the distributor gives the earth, and only read where the house has an electrode', () => {
    expect(declaredImpedance('TN-C-S')).toEqual({ ohm: 0.35, grade: 'seen' });
    expect(declaredImpedance('TN-S')).toEqual({ ohm: 0.8, grade: 'seen' });
    expect(declaredImpedance('TT')).toBeNull();
    expect(steadyElectrodeOhm()).toBe(200);
  });
});

describe('limits for the tester', () => {
  it('are 1 MΩ at 500 V for insulation', () => {
    expect(insulationLimit()).toEqual({ testV: 500, minimumMegohm: 1, grade: 'memory' });
  });

  it('are 300 ms at the rated residual current for an RCD, and a window for a delayed one', () => {
    expect(rcdTestLimit('general')).toEqual({
      testMultiple: 1,
      minimumMs: 0,
      maximumMs: 300,
      grade: 'memory',
    });
    expect(rcdTestLimit('time-delayed')).toMatchObject({ testMultiple: 1, minimumMs: 130, maximumMs: 500 });
    // An RCD in an accessory, as handbooks of testing had it for BS 7288 (from memory).
    expect(rcdTestLimit('in-accessory')).toMatchObject({ testMultiple: 1, minimumMs: 0, maximumMs: 200 });
  });
});
