import { describe, expect, it } from 'vitest';
import { asFoundTests } from '#drawing/work/as-found-words.ts';
import { demoEstimate, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';

describe('the tests before the work', () => {
  it('ask a ring for its conductors end to end, with what the survey has read of them', () => {
    const [ring, ...others] = asFoundTests(schemeOf(demoEstimate('saltglass-row'), 'spurs-rcbo').worked);
    expect(others).toEqual([]);
    expect(ring?.rows.map(({ what }) => what.split(',')[0])).toEqual([
      'Insulation',
      'Insulation',
      'r1',
      'rn',
      'r2',
      'Its neutral to those of other circuits',
    ]);
    // Source: BS 7671 Table 64, at least 1 MΩ.
    expect(ring?.rows[0]?.held).toBe('at least 1\u00a0MΩ');
    expect(ring?.rows.find(({ what }) => what.startsWith('r1'))?.read).toMatch(/^0\.4\d\u00a0Ω$/);
  });

  it('ask nothing of a circuit that is not there yet', () => {
    expect(asFoundTests(schemeOf(demoEstimate('fernlow-close'), 'new-radial').worked)).toEqual([]);
  });
});
