import { describe, expect, it } from 'vitest';
import { proofOf, ringOf, wiredJob } from './wired-job.ts';

describe('cable that no origin reaches', () => {
  it('claims no current under any load, not even none', () => {
    const { legs, otherScenarios } = proofOf(wiredJob([{ from: 'p1', to: 'p2', lengthM: 5 }]));
    for (const told of [legs, ...otherScenarios.map((one) => one.legs)])
      expect(told.map(({ currentA, share }) => ({ currentA, share }))).toEqual([
        { currentA: null, share: null },
      ]);
  });

  it('takes nothing from what is known of the rest', () => {
    const { legs } = proofOf(wiredJob([...ringOf([5, 5, 5]), { from: 'p8', to: 'p9', lengthM: 5 }]));
    expect(legs.map(({ currentA }) => currentA !== null)).toEqual([true, true, true, false]);
  });
});
