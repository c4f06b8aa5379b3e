import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import type { OutcomeQuestion } from '#engine/schemes/outcomes/outcome-plan.ts';
import type { Job } from '#model/job.ts';
import { readJobText } from '#model/read-job.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { packForAll, packForOutcome } from '../../../ui/edits/pack-for.ts';
import type { JobEdit } from '../../../ui/job-events.ts';

const job = demoJob('saltglass-row');
const questionAt = (id: string): OutcomeQuestion => ({
  id,
  kind: 'box',
  subjects: [],
  words: 'Is the back box of R1 deep enough?',
  outcomes: ['deep', 'shallow'].map((outcome) => ({
    id: outcome,
    words: outcome,
    kit: [],
    isServed: outcome === 'deep',
    addsPence: 0,
  })),
});
const [r1, r6] = [questionAt('box/r1-hallway'), questionAt('box/r6-kitchen')];
const done = (of: Job, edit: JobEdit): Job => produce(of, edit.change);

describe('what is to be bought for', () => {
  it('is kept question by question, in the order of the outcomes, and leaves a job that can be read', () => {
    const both = done(job, packForOutcome(r6, ['shallow', 'deep']));
    const more = done(both, packForOutcome(r1, ['shallow']));
    expect(more.packFor).toEqual([
      { question: 'box/r1-hallway', outcomes: ['shallow'] },
      { question: 'box/r6-kitchen', outcomes: ['deep', 'shallow'] },
    ]);
    expect(readJobText(JSON.stringify(more)).ok).toBe(true);
  });

  it('is nothing for a question of which only what is counted by is left, or nothing known', () => {
    const both = done(job, packForAll([r1, r6], 'Both'));
    expect(both.packFor).toHaveLength(2);
    expect(done(both, packForOutcome(r1, ['deep'])).packFor).toHaveLength(1);
    const none = done(done(both, packForOutcome(r1, ['deep'])), packForOutcome(r6, ['unknown']));
    expect(none).toEqual(job);
    expect('packFor' in none).toBe(false);
  });
});
