import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { estimate } from '#engine/estimate.ts';
import { readJobText } from '#model/read-job.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { copyOfJob, newJob } from '../../../ui/edits/new-job.ts';

const start = {
  reference: 'J-0001',
  title: 'New job',
  terms: { labour: 'typical', vat: 'reduced', markupPercent: 20 },
} as const;

describe('a new job', () => {
  it('can be read, and comes back as it was', () => {
    const job = newJob(start);
    expect(readJobText(JSON.stringify(job))).toEqual({ ok: true, job });
  });

  it('can be estimated, has nothing to price, and complains of nothing that fails', () => {
    const result = estimate(newJob(start), demoLibrary(), { date: '2026-11-25', revision: 1 });
    expect(result.schemes).toEqual([]);
    expect(result.asFound.findings.filter(({ outcome }) => outcome === 'fails')).toEqual([]);
  });

  it('can be estimated once it has a wanted point and an empty scheme', () => {
    const job = produce(newJob(start), (draft) => {
      draft.points.push({
        id: 'w1',
        label: 'W1',
        status: 'wanted',
        kind: 'socket-twin',
        features: [],
        photos: [],
      });
      draft.schemes.push({ id: 's1', name: 'First', connections: [], remedies: [], locks: [] });
    });
    expect(readJobText(JSON.stringify(job)).ok).toBe(true);
    const [scheme] = estimate(job, demoLibrary(), { date: '2026-11-25', revision: 1 }).schemes;
    expect(scheme?.complies).toBe('no');
  });

  it('takes the labour level and the VAT of the firm, and leaves its other terms to it', () => {
    expect(newJob(start).terms).toEqual({ labour: 'typical', vat: 'reduced' });
  });

  it('claims to have seen nothing that nobody has seen', () => {
    const { site, storeys, supply, boards, circuits } = newJob(start);
    // It may be begun from a telephone call: the day of the survey is whoever surveys to say.
    expect(site.surveyedOn).toBeUndefined();
    expect(supply).toEqual({
      nominalV: 230,
      bonding: [],
      otherSources: [],
      certainty: { otherSources: 'unknown' },
    });
    expect(boards.map(({ rcds, certainty }) => ({ rcds, certainty }))).toEqual([
      { rcds: [], certainty: { rcds: 'unknown' } },
    ]);
    expect(storeys[0]?.floor.certainty).toEqual({ build: 'assumed', voidMm: 'assumed', covering: 'assumed' });
    expect(circuits.map(({ certainty }) => certainty)).toEqual([{ use: 'assumed' }]);
  });

  it('has ids of its own each time', () => {
    expect(newJob(start).id).not.toBe(newJob(start).id);
  });
});

describe('a copy of a job', () => {
  it('is the job under another id and title', () => {
    const job = demoJob('saltglass-row');
    const { id, title, ...rest } = copyOfJob(job, 'Copy');
    const { id: was, title: _, ...restBefore } = job;
    expect(title).toBe('Copy');
    expect(id).not.toBe(was);
    expect(rest).toEqual(restBefore);
  });
});
