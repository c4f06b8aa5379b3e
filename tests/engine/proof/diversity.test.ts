import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assessedDemandA, type HouseholdLoad } from '#engine/proof/diversity.ts';

const load = fc.record({
  use: fc.constantFrom(
    'standard-circuit' as const,
    'lighting' as const,
    'heating' as const,
    'cooker' as const,
    'instant-water' as const,
    'undiversified' as const,
  ),
  currentA: fc.double({ min: 0, max: 60, noNaN: true }),
});
const list = fc.array(load, { maxLength: 12 });
const sumA = (loads: readonly HouseholdLoad[]) => loads.reduce((sum, { currentA }) => sum + currentA, 0);

describe('the assessed demand of a household', () => {
  it('is nought without loads', () => {
    expect(assessedDemandA([])).toBe(0);
  });

  it.each<[string, readonly HouseholdLoad[], number]>([
    ['one ring counts whole', [{ use: 'standard-circuit', currentA: 32 }], 32],
    [
      'the largest standard circuit counts whole and 40 % of the others',
      [
        { use: 'standard-circuit', currentA: 20 },
        { use: 'standard-circuit', currentA: 32 },
        { use: 'standard-circuit', currentA: 16 },
      ],
      32 + 8 + 6.4,
    ],
    ['two thirds of the lighting, by 66 %', [{ use: 'lighting', currentA: 10 }], 6.6],
    [
      'heating whole up to 10 A together and half of the rest',
      [
        { use: 'heating', currentA: 8 },
        { use: 'heating', currentA: 12 },
      ],
      15,
    ],
    ['a cooker of less than 10 A counts whole', [{ use: 'cooker', currentA: 9 }], 9],
    [
      'a cooker with a socket-outlet: 10 A, 30 % of the rest, 5 A',
      [{ use: 'cooker', currentA: 50, hasSocket: true }],
      27,
    ],
    [
      'two instantaneous heaters whole and a quarter of the third',
      [
        { use: 'instant-water', currentA: 20 },
        { use: 'instant-water', currentA: 40 },
        { use: 'instant-water', currentA: 30 },
      ],
      75,
    ],
    ['storage heating counts whole', [{ use: 'undiversified', currentA: 26 }], 26],
  ])('%s', (_, loads, expectedA) => {
    expect(assessedDemandA(loads)).toBeCloseTo(expectedA, 9);
  });

  it('does not depend on the order of the list', () => {
    fc.assert(
      fc.property(list, (loads) => {
        expect(assessedDemandA(loads.toReversed())).toBeCloseTo(assessedDemandA(loads), 9);
      }),
    );
  });

  it('is never above the sum, and never below a quarter of it', () => {
    fc.assert(
      fc.property(list, (loads) => {
        expect(assessedDemandA(loads)).toBeLessThanOrEqual(sumA(loads) + 1e-9);
        expect(assessedDemandA(loads)).toBeGreaterThanOrEqual(sumA(loads) / 4 - 1e-9);
      }),
    );
  });

  it('never falls when a load is added', () => {
    fc.assert(
      fc.property(list, load, (loads, more) => {
        expect(assessedDemandA([...loads, more])).toBeGreaterThanOrEqual(assessedDemandA(loads) - 1e-9);
      }),
    );
  });
});
