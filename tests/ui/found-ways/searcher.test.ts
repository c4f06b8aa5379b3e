import { describe, expect, it } from 'vitest';
import { demoEstimate } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { foundOf } from '../../../ui/found-ways/searcher.ts';
import { foundAmong } from './made-searcher.ts';

describe('the best of each kind', () => {
  it('is told only where it is of that kind: what is left of a house with every outlet held fast is not the best of each', () => {
    const among = foundAmong(demoEstimate('saltglass-row'));
    const schemes = among.schemes.map((one) => ({ ...one, kind: 'spurs' as const }));
    const schemeId = schemes[0]?.scheme.id ?? '';
    const looked = { examined: 0, boundPence: null };
    const kinds = ['spurs', 'fused-branch', 'ring-extension'] as const;
    const bestOfKind = [
      ...kinds.map((kind) => ({ kind, schemeId, why: null, reason: null, ...looked })),
      {
        kind: 'mend' as const,
        schemeId: null,
        why: 'impossible' as const,
        reason: 'There is no spur.',
        ...looked,
      },
    ];
    const none = 'No outlet is left to be joined so.';
    expect(foundOf({ ...among, schemes, bestOfKind }).bestOfKind).toEqual([
      { kind: 'spurs', schemeId, why: null, reason: null, ...looked },
      { kind: 'fused-branch', schemeId: null, why: 'impossible', reason: none, ...looked },
      { kind: 'ring-extension', schemeId: null, why: 'impossible', reason: none, ...looked },
      { kind: 'mend', schemeId: null, why: 'impossible', reason: 'There is no spur.', ...looked },
    ]);
  });
});
