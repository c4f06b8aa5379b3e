import { describe, expect, it } from 'vitest';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { testApp } from '#tests/http/test-app.ts';
import { ApiClient, ServerRefusal } from '../../../ui/controllers/api-client.ts';
import { OpenJobs } from '../../../ui/controllers/open-jobs.ts';
import { TestClock } from './test-clock.ts';

const job = demoJob('fernlow-close');

async function begin() {
  const { app } = await testApp();
  /** While it is set, answers to readings of a job are held back until it resolves. */
  const line: { held: Promise<void> | null } = { held: null };
  const api = new ApiClient(async (input, init) => {
    const answer = await app.request(String(input), init);
    if (init?.method === 'GET') await line.held;
    return answer;
  });
  const { etag } = await api.createJob(job);
  const clock = new TestClock();
  return { api, etag, line, clock, jobs: new OpenJobs(api, clock.wait) };
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

  it('are opened once when two ask for them at once', async () => {
    const { api, jobs } = await begin();
    const [first, second] = await Promise.all([jobs.open(job.id), jobs.open(job.id)]);
    expect(second).toBe(first);
    second.edit(titled('Mine'));
    expect(jobs.unkept).toBe(true);
    await jobs.keepAll();
    expect((await api.readJob(job.id)).value.title).toBe('Mine');
  });

  it('are asked for again after an opening that was refused', async () => {
    const { api, jobs } = await begin();
    await api.removeJob(job.id, (await api.readJob(job.id)).etag);
    const both = await Promise.allSettled([jobs.open(job.id), jobs.open(job.id)]);
    expect(both.map(({ status }) => status)).toEqual(['rejected', 'rejected']);
    await api.restoreJob(job.id);
    expect((await jobs.open(job.id)).now.title).toBe(job.title);
  });

  it('are not put back to what was read before a save that came in between', async () => {
    const { jobs, line } = await begin();
    const session = await jobs.open(job.id);
    let letGo = (): void => {};
    line.held = new Promise((resolve) => {
      letGo = resolve;
    });
    const again = jobs.open(job.id);
    await new Promise((resolve) => setTimeout(resolve, 50));
    session.edit(titled('Mine'));
    await jobs.keepAll();
    line.held = null;
    letGo();
    expect(await again).toBe(session);
    expect(await jobs.open(job.id)).toBe(session);
  });

  it('are tried again, when all are kept, though they were refused as gone', async () => {
    const { api, clock, jobs } = await begin();
    const session = await jobs.open(job.id);
    await api.removeJob(job.id, (await api.readJob(job.id)).etag);
    session.edit(titled('Mine'));
    await clock.settle(1000);
    expect(session.troubleCode).toBe('no-such-job');
    await api.restoreJob(job.id);
    await jobs.keepAll();
    expect((await api.readJob(job.id)).value.title).toBe('Mine');
  });

  it('are read anew once somebody else has saved them', async () => {
    const { api, etag, jobs } = await begin();
    const session = await jobs.open(job.id);
    await api.saveJob({ ...job, title: 'Theirs' }, etag, 'by-hand');
    const again = await jobs.open(job.id);
    expect(again).not.toBe(session);
    expect(again.now.title).toBe('Theirs');
  });

  it('are given again as they are while something of them is unkept, whatever others saved', async () => {
    const { api, etag, jobs } = await begin();
    const session = await jobs.open(job.id);
    session.edit(titled('Mine'));
    await api.saveJob({ ...job, title: 'Theirs' }, etag, 'by-hand');
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

describe('a job that was begun here', () => {
  const ids = async (api: ApiClient) => (await api.listJobs()).map(({ id }) => id);

  it('is off the list once it is left untouched, and can be brought back', async () => {
    const { api, etag, jobs } = await begin();
    jobs.begun(job.id, etag);
    await jobs.open(job.id);
    jobs.listen(job.id, () => {});
    await jobs.dropUntouched();
    expect(await ids(api)).toContain(job.id);
    jobs.listen(job.id, null);
    await jobs.dropUntouched();
    expect(await ids(api)).not.toContain(job.id);
    await api.restoreJob(job.id);
    await jobs.dropUntouched();
    expect(await ids(api)).toContain(job.id);
  });

  it('stays where anything was changed in it, here or elsewhere, kept or not', async () => {
    const changes = [
      async ({ jobs }: Awaited<ReturnType<typeof begin>>) => {
        (await jobs.open(job.id)).edit(titled('Mine'));
        await jobs.keepAll();
      },
      async ({ jobs }: Awaited<ReturnType<typeof begin>>) => (await jobs.open(job.id)).edit(titled('Mine')),
      ({ api, etag }: Awaited<ReturnType<typeof begin>>) =>
        api.saveJob({ ...job, title: 'Theirs' }, etag, 'autosave'),
    ];
    for (const change of changes) {
      const stage = await begin();
      stage.jobs.begun(job.id, stage.etag);
      await change(stage);
      await stage.jobs.dropUntouched();
      expect(await ids(stage.api)).toContain(job.id);
    }
  });

  it('stays where it was begun elsewhere', async () => {
    const { api, jobs } = await begin();
    await jobs.open(job.id);
    await jobs.dropUntouched();
    expect(await ids(api)).toContain(job.id);
  });
});
