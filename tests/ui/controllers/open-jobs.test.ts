import { describe, expect, it } from 'vitest';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { testApp } from '#tests/http/test-app.ts';
import { ApiClient, ServerRefusal } from '../../../ui/controllers/api-client.ts';
import { OpenJobs } from '../../../ui/controllers/open-jobs.ts';
import { TestClock } from './test-clock.ts';

const job = demoJob('fernlow-close');

async function begin() {
  const { app } = await testApp();
  const api = new ApiClient(async (input, init) => app.request(String(input), init));
  await api.createJob(job);
  const clock = new TestClock();
  return { api, clock, jobs: new OpenJobs(api, clock.wait) };
}

const titled = (title: string) => ({
  label: title,
  change: (draft: { title: string }): void => {
    draft.title = title;
  },
});

describe('the jobs that are open', () => {
  it('are opened once, and keep their steps back while nobody else saves them', async () => {
    const { jobs } = await begin();
    const session = await jobs.open(job.id);
    session.edit(titled('One'));
    await jobs.keepAll();
    expect(await jobs.open(job.id)).toBe(session);
  });

  it('are read anew once somebody else has saved them', async () => {
    const { api, jobs } = await begin();
    const session = await jobs.open(job.id);
    await api.saveJob({ ...job, title: 'Theirs' }, 1, 'by-hand');
    const again = await jobs.open(job.id);
    expect(again).not.toBe(session);
    expect(again.now.title).toBe('Theirs');
  });

  it('are given again as they are while something of them is unkept, whatever others saved', async () => {
    const { api, jobs } = await begin();
    const session = await jobs.open(job.id);
    session.edit(titled('Mine'));
    await api.saveJob({ ...job, title: 'Theirs' }, 1, 'by-hand');
    expect(await jobs.open(job.id)).toBe(session);
    expect(jobs.unkept).toBe(true);
  });

  it('are all kept at once when asked, without waiting for their timers', async () => {
    const { api, jobs } = await begin();
    const session = await jobs.open(job.id);
    session.edit(titled('Mine'));
    await jobs.keepAll();
    expect(jobs.unkept).toBe(false);
    expect((await api.readJob(job.id)).value.title).toBe('Mine');
  });

  it('tell the one who listens, until that is over', async () => {
    const { jobs } = await begin();
    const session = await jobs.open(job.id);
    let told = 0;
    jobs.listen(job.id, () => {
      told++;
    });
    session.edit(titled('One'));
    expect(told).toBe(1);
    jobs.listen(job.id, null);
    session.edit(titled('Two'));
    expect(told).toBe(1);
  });

  it('are forgotten with what was unkept of them, and their timers', async () => {
    const { api, clock, jobs } = await begin();
    const session = await jobs.open(job.id);
    session.edit(titled('Mine'));
    jobs.forget(job.id);
    await clock.settle(5000);
    expect(jobs.unkept).toBe(false);
    expect((await api.readJob(job.id)).value.title).toBe(job.title);
  });

  it('are refused when there is no such job', async () => {
    const { jobs } = await begin();
    await expect(jobs.open('gone')).rejects.toBeInstanceOf(ServerRefusal);
  });
});
