import { describe, expect, it } from 'vitest';
import { outdoorRun } from '#engine/rules/outdoor-run.ts';
import type { Cable } from '#model/cable.ts';
import { runOf, saidBy, segmentOf, twin25 } from './facts-builder.ts';
import { houseOf } from './house-builder.ts';

const said = (medium: 'outside' | 'buried' | 'surface-clipped', cable: Cable = twin25) =>
  saidBy(outdoorRun, houseOf({ runs: [runOf('r', [segmentOf({ medium })], { cable })] }));

describe('runs outside', () => {
  it('[RT11] leaves flat cable outside and in the ground to be decided', () => {
    expect(said('outside')).toMatchObject([{ outcome: 'decide', messageId: 'outside' }]);
    expect(said('buried')).toMatchObject([{ outcome: 'decide', messageId: 'buried' }]);
  });

  it('[RT11] passes armoured cable', () => {
    expect(said('buried', { type: 'steel-wire-armoured', lineMm2: 2.5, cpcMm2: 2.5 })).toMatchObject([
      { outcome: 'passes', messageId: 'armoured' },
    ]);
  });

  it('[RT11] is silent indoors', () => {
    expect(said('surface-clipped')).toEqual([]);
  });
});
