import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import type { RcdChoice } from '#engine/schemes/rcd-choices.ts';
import type { Job } from '#model/job.ts';
import type { Remedy } from '#model/scheme.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { chooseProtection } from '../../../ui/edits/choose-protection.ts';
import type { JobEdit } from '../../../ui/job-events.ts';

const edited = (job: Job, ...edits: readonly JobEdit[]): Job =>
  edits.reduce((so, { change }) => produce(so, (draft) => change(draft)), job);

const job = demoJob('saltglass-row');
const choice = (...remedies: Remedy[]): RcdChoice => ({ remedies, pence: 0, isChosen: false, caveats: [] });
const rcbo = choice({ kind: 'rcbo', at: 'ring-house' });
const enclosure = choice({ kind: 'rcd-enclosure', at: 'ring-house' });
const outlets = choice({ kind: 'rcd-outlet', at: 'w1-living1' }, { kind: 'rcd-outlet', at: 'w2-bedroom' });
const all = [rcbo, enclosure, outlets];
const before = job.schemes.find(({ id }) => id === 'spurs-rcbo')?.remedies ?? [];
const remediesAfter = (...chosen: readonly RcdChoice[]): readonly Remedy[] => {
  const after = edited(job, ...chosen.map((one) => chooseProtection('spurs-rcbo', one, all)));
  return after.schemes.find(({ id }) => id === 'spurs-rcbo')?.remedies ?? [];
};
const others = before.filter(({ kind }) => kind !== 'rcbo');

describe('choosing a way to an RCD', () => {
  it('puts it in place of the one that the scheme has, and leaves its other remedies', () => {
    expect(before.some(({ kind }) => kind === 'rcbo')).toBe(true);
    expect(remediesAfter(enclosure)).toEqual([...others, ...enclosure.remedies]);
    expect(remediesAfter(outlets)).toEqual([...others, ...outlets.remedies]);
  });

  it('goes there and back', () => {
    const back = remediesAfter(outlets, enclosure, rcbo);
    expect(back.map(({ kind }) => kind).toSorted()).toEqual(before.map(({ kind }) => kind).toSorted());
  });

  it('changes nothing in a scheme that is gone', () => {
    expect(edited(job, chooseProtection('gone', rcbo, all))).toBe(job);
  });
});
