import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Job } from '#model/job.ts';
import { demoJob, estimateOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { setActuallyUsed, setActualStage, setActualTask, setTookInstead } from '../../../ui/edits/actuals.ts';
import type { JobEdit } from '../../../ui/job-events.ts';
import { edited, faultsOf, partsChanged } from './random-edits.ts';

const job = demoJob('saltglass-row');

describe('what the job took', () => {
  it('is recorded by stage, task and item, each once and in its place', () => {
    const once = edited(
      job,
      setActualStage('first-fix', 'First fix', 240),
      setActualStage('test', 'Test', 60),
      setActualStage('first-fix', 'First fix', 255),
      setActualTask('drill-joist', 'Drill a joist', 12),
      setActuallyUsed('cable-flat-2.5-1.5', 'Cable', 13),
    );
    expect(once.actuals).toEqual({
      stages: [
        { stage: 'first-fix', minutes: 255 },
        { stage: 'test', minutes: 60 },
      ],
      tasks: [{ task: 'drill-joist', minutes: 12 }],
      used: [{ item: 'cable-flat-2.5-1.5', quantity: 13 }],
    });
    expect(partsChanged(job, once)).toEqual([]);
    expect(faultsOf(once)).toEqual([]);
  });

  it('is gone from the file when nothing of it is left', () => {
    const none = edited(job, setActualTask('drill-joist', 'x', 12), setActualTask('drill-joist', 'x', null));
    expect(none).toEqual(job);
    expect(edited(job, setActuallyUsed('cable-flat-2.5-1.5', 'x', null))).toEqual(job);
  });

  it('holds what was taken instead, once a thing, and lets go of it', () => {
    const clips = setTookInstead('counter/clip-flat-2.5', 'Clips', { took: 'Clips, grey', pence: 250 });
    const box = setTookInstead('counter/box', 'Box', { took: 'A deeper one', item: 'box-steel-single-47' });
    const both = edited(job, clips, box, setTookInstead('counter/box', 'Box', { took: 'Another' }));
    expect(both.actuals?.instead).toEqual([
      { entry: 'counter/clip-flat-2.5', took: 'Clips, grey', pence: 250 },
      { entry: 'counter/box', took: 'Another' },
    ]);
    expect(faultsOf(both)).toEqual([]);
    const none = edited(both, setTookInstead('counter/box', 'Box', null));
    expect(edited(none, setTookInstead('counter/clip-flat-2.5', 'Clips', null))).toEqual(job);
  });

  it('moves no price', () => {
    const one: Job = { ...job, schemes: job.schemes.slice(0, 1) };
    const recorded = edited(
      one,
      setActualStage('first-fix', 'First fix', 999),
      setTookInstead('counter/socket-twin', 'Socket', { took: 'Dearer ones', pence: 99_900 }),
    );
    expect(estimateOf(recorded).schemes[0]?.totals).toEqual(estimateOf(one).schemes[0]?.totals);
  });

  it('stays readable whatever is put in', () => {
    const minutes = fc.option(fc.double({ min: 0, max: 1e6, noNaN: true }), { nil: null });
    const edit: fc.Arbitrary<JobEdit> = fc.oneof(
      fc
        .tuple(fc.constantFrom('before' as const, 'test' as const), minutes)
        .map(([stage, min]) => setActualStage(stage, stage, min)),
      fc.tuple(fc.constantFrom('a', 'b'), minutes).map(([task, min]) => setActualTask(task, task, min)),
      fc.tuple(fc.constantFrom('a', 'b'), minutes).map(([item, m]) => setActuallyUsed(item, item, m)),
    );
    fc.assert(
      fc.property(fc.array(edit, { maxLength: 8 }), (edits) => {
        expect(faultsOf(edited(job, ...edits))).toEqual([]);
      }),
      { numRuns: 30 },
    );
  });
});
