import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoJob, demoNames, estimateOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { afterEdits, editSequence as sequence } from './any-edits.ts';
import { faultsOf } from './random-edits.ts';

describe.each(demoNames)('any sequence of edits on %s', (name) => {
  it('leaves a job that can be read', () => {
    fc.assert(
      fc.property(sequence, (list) => {
        expect(faultsOf(afterEdits(demoJob(name), list))).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });

  it('leaves a job that can be estimated', () => {
    fc.assert(
      fc.property(sequence, (list) => {
        const job = afterEdits(demoJob(name), list);
        expect(estimateOf(job).schemes).toHaveLength(job.schemes.length);
      }),
      { numRuns: 6 },
    );
  }, 60_000);
});
