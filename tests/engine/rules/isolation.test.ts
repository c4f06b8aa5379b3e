import { describe, expect, it } from 'vitest';
import { isolation } from '#engine/rules/isolation.ts';
import { factsOf, jobOf, saidBy } from './facts-builder.ts';

describe('isolation', () => {
  it('[SU6] names every other source', () => {
    const supply = { ...jobOf().supply, otherSources: ['pv' as const] };
    expect(saidBy(isolation, factsOf({ job: { supply } }))).toMatchObject([
      { outcome: 'advice', messageId: 'otherSources', actual: 'pv' },
    ]);
  });

  it('[SU6] advises where only the distributor can isolate', () => {
    const answers = [{ question: 'isolation', value: 'distributor', certainty: 'seen' as const }];
    expect(saidBy(isolation, factsOf({ job: { answers } }))).toMatchObject([{ messageId: 'distributor' }]);
  });

  it('[SU6] says one thing where there are other sources and only the distributor can isolate', () => {
    const supply = { ...jobOf().supply, otherSources: ['pv' as const, 'battery' as const] };
    const answers = [{ question: 'isolation', value: 'distributor', certainty: 'seen' as const }];
    expect(saidBy(isolation, factsOf({ job: { supply, answers } }))).toMatchObject([
      { outcome: 'advice', messageId: 'both', actual: 'battery, pv' },
    ]);
  });

  it('[SU6] is not proven where other sources are unknown, or none are assumed', () => {
    for (const certainty of ['unknown', 'assumed'] as const) {
      const supply = { ...jobOf().supply, certainty: { otherSources: certainty } };
      expect(saidBy(isolation, factsOf({ job: { supply } }))).toMatchObject([
        { outcome: 'not-proven', messageId: certainty },
      ]);
    }
  });

  it('[SU6] is silent otherwise', () => {
    expect(saidBy(isolation, factsOf())).toEqual([]);
  });
});
