import { describe, expect, it } from 'vitest';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import type { ListedJob } from '../../../ui/controllers/api-client.ts';
import { linesOf } from '../../../ui/controllers/job-list.ts';

const now = '2026-11-26T09:00:00.000Z';
const job = demoJob('fernlow-close');

const line = (id: string): ListedJob => ({
  id,
  reference: 'J-1',
  title: `As the server has ${id}`,
  customer: '',
  revision: 3,
  etag: '"3-a"',
  savedAt: now,
  removedAt: null,
  wantedPoints: 0,
  schemes: 0,
});

describe('the lines of the list', () => {
  it('are the server’s where it is reached and nothing waits', () => {
    expect(linesOf([line('a'), line('b')], [], null, now).map(({ id, stand }) => [id, stand])).toEqual([
      ['a', 'sent'],
      ['b', 'sent'],
    ]);
  });

  it('say what waits to be sent, as it is here, those that were never sent first', () => {
    const own = [
      { job: { ...job, id: 'a', title: 'As it is here' }, unkept: true },
      { job: { ...job, id: 'new', title: 'Never sent' }, unkept: true },
    ];
    const lines = linesOf([line('a'), line('b')], own, null, now);
    expect(lines.map(({ id, title, etag, stand }) => [id, title, etag, stand])).toEqual([
      ['new', 'Never sent', '', 'waits'],
      ['a', 'As it is here', '"3-a"', 'waits'],
      ['b', 'As the server has b', '"3-a"', 'sent'],
    ]);
    expect(lines[0]).toMatchObject({
      customer: job.site.customer,
      wantedPoints: job.points.filter(({ status }) => status === 'wanted').length,
      schemes: job.schemes.length,
    });
  });

  it('say without a connection which jobs are not on this device', () => {
    const own = [{ job: { ...job, id: 'a' }, unkept: false }];
    const lines = linesOf([line('a'), line('b'), line('c')], own, new Set(['b']), now);
    expect(lines.map(({ stand }) => stand)).toEqual(['sent', 'sent', 'absent']);
  });
});
