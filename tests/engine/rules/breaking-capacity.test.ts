import { describe, expect, it } from 'vitest';
import { breakingCapacity } from '#engine/rules/breaking-capacity.ts';
import type { Supply } from '#model/installation.ts';
import { circuitOf, factsOf, saidBy, shapeOf } from './facts-builder.ts';

const device = { standard: 'BS-EN-60898', curve: 'B', ratingA: 32 } as const;
const said = (supply: Partial<Supply>, breakingKA: number | null = 6) =>
  saidBy(
    breakingCapacity,
    factsOf({
      job: {
        supply: { earthing: 'TN-C-S', nominalV: 230, bonding: [], otherSources: [], ...supply },
        circuits: [circuitOf('c', { device: breakingKA === null ? device : { ...device, breakingKA } })],
      },
      shapes: [shapeOf('c')],
    }),
  );

describe('the fault current that a device breaks', () => {
  it('[BC1] passes at exactly what can flow, and is to be decided above', () => {
    expect(said({ pfcKA: 6 })).toMatchObject([{ outcome: 'passes', actual: 6, limit: 6, unit: 'kA' }]);
    expect(said({ pfcKA: 6.1 })).toMatchObject([{ outcome: 'decide', messageId: 'below' }]);
  });

  // 16 kA is what a consumer unit is tested for as a whole (BS EN 61439-3 Annex ZB, from memory).
  it('[BC1] fails above what a consumer unit bears as a whole', () => {
    expect(said({ pfcKA: 16 })).toMatchObject([{ outcome: 'decide' }]);
    expect(said({ pfcKA: 16.1 })).toMatchObject([{ outcome: 'fails', origin: 'found' }]);
  });

  it('[BC1] goes by the loop where no fault current was measured: 230 V by 0.23 Ω are 1 kA', () => {
    expect(said({ zeOhm: 0.23 })).toMatchObject([{ outcome: 'passes', actual: 1 }]);
  });

  it('[BC1] says so where either is not known', () => {
    expect(said({})).toMatchObject([{ outcome: 'advice', messageId: 'unknown' }]);
    expect(said({ pfcKA: 1 }, null)).toMatchObject([{ outcome: 'advice', messageId: 'unknown' }]);
  });
});
