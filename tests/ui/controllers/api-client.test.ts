import { describe, expect, it } from 'vitest';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { testApp } from '#tests/http/test-app.ts';
import { ApiClient, ServerRefusal } from '../../../ui/controllers/api-client.ts';

const job = demoJob('fernlow-close');

async function begin() {
  const { app } = await testApp();
  return new ApiClient(async (input, init) => app.request(String(input), init));
}

/** What an attempt is refused with. */
async function refusalOf(attempt: Promise<unknown>): Promise<ServerRefusal> {
  const outcome = await attempt.then(
    () => null,
    (error: unknown) => error,
  );
  if (outcome instanceof ServerRefusal) return outcome;
  throw new Error(`not refused: ${String(outcome)}`);
}

describe('speaking to the server', () => {
  it('keeps, lists, reads, saves, removes and restores a job', async () => {
    const api = await begin();
    expect(await api.createJob(job)).toBe(1);
    const renamed = { ...job, title: 'Renamed' };
    expect(await api.saveJob(renamed, 1, 'autosave')).toBe(2);
    expect(await api.readJob(job.id)).toEqual({ value: renamed, revision: 2 });
    expect(await api.listJobs()).toMatchObject([{ id: job.id, title: 'Renamed', revision: 2 }]);
    await api.removeJob(job.id, 2);
    expect(await api.listJobs()).toEqual([]);
    await api.restoreJob(job.id);
    expect((await api.readJob(job.id)).value).toEqual(renamed);
  });

  it('puts the demo jobs back', async () => {
    const api = await begin();
    await api.putBackDemos();
    expect((await api.listJobs()).map(({ id }) => id)).toContain('saltglass3');
  });

  it('reads the library before its first save as revision 0, and saves it', async () => {
    const api = await begin();
    const { value, revision } = await api.readLibrary();
    expect(revision).toBe(0);
    const renamed = { ...value, firm: { ...value.firm, name: 'Another invented firm' } };
    expect(await api.saveLibrary(renamed, 0)).toBe(1);
    expect((await api.readLibrary()).value.firm.name).toBe('Another invented firm');
  });

  it('is refused a stale save with the revision that is there', async () => {
    const api = await begin();
    await api.createJob(job);
    await api.saveJob({ ...job, title: 'One' }, 1, 'by-hand');
    expect(await refusalOf(api.saveJob({ ...job, title: 'Two' }, 1, 'by-hand'))).toMatchObject({
      status: 412,
      code: 'stale-revision',
      currentRevision: 2,
    });
  });

  it('is refused a job that cannot be read with every fault', async () => {
    const api = await begin();
    const refusal = await refusalOf(api.createJob({ ...job, title: 7 as unknown as string }));
    expect(refusal).toMatchObject({ status: 422, code: 'job-unreadable' });
    expect(refusal.faults).toMatchObject([{ path: 'title' }]);
    expect(refusal.message).not.toBe('');
  });

  it('says that the server is not reached when there is no answer', async () => {
    const api = new ApiClient(async () => {
      throw new TypeError('Failed to fetch');
    });
    const refusal = await refusalOf(api.listJobs());
    expect(refusal).toMatchObject({ status: 0, code: 'not-reached', faults: [] });
    expect(refusal.message).toMatch(/server/i);
  });

  it('copes with an answer that is no problem of ours, such as a proxy’s page', async () => {
    const api = new ApiClient(async () => new Response('<h1>Bad gateway</h1>', { status: 502 }));
    expect(await refusalOf(api.listJobs())).toMatchObject({ status: 502, code: 'no-reason' });
  });

  it('says that a stored job is unreadable when it is', async () => {
    const api = new ApiClient(
      async () => new Response('{ "format": "ringwright-job" }', { headers: { etag: '"4"' } }),
    );
    const refusal = await refusalOf(api.readJob('x'));
    expect(refusal.code).toBe('job-unreadable');
    expect(refusal.faults.length).toBeGreaterThan(0);
  });
});
