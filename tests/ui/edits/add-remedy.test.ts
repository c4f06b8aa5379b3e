import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import type { Job } from '#model/job.ts';
import { readJob } from '#model/read-job.ts';
import { demoEstimate, demoJob, estimateOf, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { addRemedy } from '../../../ui/edits/add-remedy.ts';
import type { JobEdit } from '../../../ui/job-events.ts';

const edited = (job: Job, { change }: JobEdit): Job => produce(job, (draft) => change(draft));
const job = demoJob('saltglass-row');
const [scheme] = job.schemes;
if (scheme === undefined) throw new Error('the demo job has no scheme');

describe('adding the remedy of a finding', () => {
  const offered = schemeOf(demoEstimate('saltglass-row'), scheme.id).findings.filter(
    ({ fix, consequencePence }) => fix !== null && consequencePence !== null,
  );

  it('has some to add in the first scheme of the demo job', () => {
    expect(offered.length).toBeGreaterThan(0);
  });

  it.each(offered.map((finding) => [`${finding.rule} ${finding.subject}`, finding] as const))(
    'changes the price by what was said: %s',
    (_, { fix, consequencePence }) => {
      if (fix === null) throw new Error('no remedy');
      const after = edited(job, addRemedy(scheme.id, fix, 'x'));
      expect(readJob(after).ok).toBe(true);
      const before = schemeOf(demoEstimate('saltglass-row'), scheme.id).totals.grossPence;
      expect(schemeOf(estimateOf(after), scheme.id).totals.grossPence - before).toBe(consequencePence);
    },
  );

  it('has a remedy once, however often it is added, the newest counting', () => {
    const once = edited(job, addRemedy(scheme.id, { kind: 'bond-upgrade', at: 'water' }, 'x'));
    const twice = edited(once, addRemedy(scheme.id, { kind: 'bond-upgrade', at: 'water' }, 'x'));
    expect(twice.schemes[0]?.remedies).toEqual(once.schemes[0]?.remedies);
    expect(once.schemes[0]?.remedies).toHaveLength(scheme.remedies.length + 1);
  });

  it('touches no other scheme, and nothing when the scheme is gone', () => {
    const after = edited(job, addRemedy(scheme.id, { kind: 'bond-upgrade', at: 'water' }, 'x'));
    expect(after.schemes.slice(1)).toEqual(job.schemes.slice(1));
    expect(edited(job, addRemedy('gone', { kind: 'bond-upgrade', at: 'water' }, 'x'))).toBe(job);
  });
});
