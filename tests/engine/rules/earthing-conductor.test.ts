import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { earthingConductor, leastProtectiveMm2 } from '#engine/rules/earthing-conductor.ts';
import type { Supply } from '#model/installation.ts';
import { factsOf, jobOf, saidBy } from './facts-builder.ts';

const said = (partial: Partial<Supply>) =>
  saidBy(earthingConductor, factsOf({ job: { supply: { ...jobOf().supply, ...partial } } }));

describe('size of the earthing conductor', () => {
  it('[SU4] passes exactly 16 mm² for tails of 25 and leaves less to be decided', () => {
    expect(said({ tailsMm2: 25, earthingMm2: 16 })).toMatchObject([
      { outcome: 'passes', actual: 16, limit: 16 },
    ]);
    expect(said({ tailsMm2: 25, earthingMm2: 10 })).toMatchObject([
      { outcome: 'decide', messageId: 'small' },
    ]);
  });

  it('[SU4] is not proven where one of the two is unknown', () => {
    expect(said({ tailsMm2: 25 })).toMatchObject([{ outcome: 'not-proven', messageId: 'unknown' }]);
    expect(said({ earthingMm2: 16 })).toMatchObject([{ outcome: 'not-proven' }]);
  });

  it('[SU4] does not bind a TT supply', () => {
    expect(said({ earthing: 'TT', tailsMm2: 25, earthingMm2: 4 })).toEqual([]);
  });

  it('[SU4] never asks more than the line conductor', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 300, noNaN: true }), (lineMm2) => {
        expect(leastProtectiveMm2(lineMm2)).toBeLessThanOrEqual(lineMm2);
      }),
      { seed: 22 },
    );
  });
});
