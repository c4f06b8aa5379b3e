import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import type { Job } from '#model/job.ts';
import { readJobText } from '#model/read-job.ts';
import { offerSchemes, setCharging, settleAgreement, writeToCustomer } from '../../../ui/edits/quoting.ts';
import { removeScheme } from '../../../ui/edits/schemes.ts';
import type { JobEdit } from '../../../ui/job-events.ts';
import { demoJob } from '../../engine/demo-jobs/demo-estimates.ts';

const { quoting: _ofDemo, ...job }: Job = demoJob('saltglass-row');
const withEdits = (before: Job, ...edits: readonly JobEdit[]): Job =>
  edits.reduce((now, { change }) => produce(now, (draft) => change(draft)), before);
const isReadable = (one: Job): boolean => readJobText(JSON.stringify(one)).ok;

describe('what is offered', () => {
  it('is three at the most, each once, and only what is there', () => {
    const offered = withEdits(
      job,
      offerSchemes(['fused-beds', 'nothing', 'fused-beds', 'spurs-rcbo', 'ring-to-w2', 'two-on-one']),
    );
    expect(offered.quoting?.schemes).toEqual(['fused-beds', 'spurs-rcbo', 'ring-to-w2']);
    expect(isReadable(offered)).toBe(true);
  });

  it('leaves no trace when all is taken back', () => {
    const full = withEdits(
      job,
      offerSchemes(['fused-beds']),
      settleAgreement('customer', 'consumer'),
      writeToCustomer('start', ' soon '),
    );
    expect(full.quoting).toEqual({ schemes: ['fused-beds'], customer: 'consumer', start: 'soon' });
    expect(
      withEdits(full, offerSchemes([]), settleAgreement('customer', null), writeToCustomer('start', '  ')),
    ).toEqual(job);
  });

  it('goes with its scheme', () => {
    const offered = withEdits(job, offerSchemes(['fused-beds', 'spurs-rcbo']));
    const [scheme] = job.schemes.filter(({ id }) => id === 'fused-beds');
    if (scheme === undefined) throw new Error('no such scheme');
    const without = withEdits(offered, removeScheme(scheme));
    expect(without.quoting?.schemes).toEqual(['spurs-rcbo']);
    expect(isReadable(without)).toBe(true);
  });
});

describe('the facts of an agreement', () => {
  it('are written into the job and can be read', () => {
    const full = withEdits(
      job,
      settleAgreement('agreedAt', 'customers-home'),
      writeToCustomer('remarks', 'Mind the cat.'),
      setCharging('hourly'),
    );
    expect([full.quoting, full.terms.charging]).toEqual([
      { agreedAt: 'customers-home', remarks: 'Mind the cat.' },
      'hourly',
    ]);
    expect(isReadable(full)).toBe(true);
    expect(withEdits(full, setCharging(null)).terms).toEqual(job.terms);
  });

  it('are refused where they name a scheme that is not there, or more than three', () => {
    for (const schemes of [['nothing'], ['spurs-rcbo', 'ring-to-w2', 'fused-beds', 'two-on-one']])
      expect(isReadable({ ...job, quoting: { schemes } })).toBe(false);
  });
});
