import { describe, expect, it } from 'vitest';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { testApp } from '#tests/http/test-app.ts';
import { ApiClient, NO_CONNECTION, ServerRefusal } from '../../../ui/controllers/api-client.ts';

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
    const created = await api.createJob(job);
    expect(created.revision).toBe(1);
    const renamed = { ...job, title: 'Renamed' };
    const saved = await api.saveJob(renamed, created.etag, 'autosave');
    expect(saved.revision).toBe(2);
    expect(await api.readJob(job.id)).toEqual({ value: renamed, ...saved });
    expect(await api.listJobs()).toMatchObject([{ id: job.id, title: 'Renamed', revision: 2 }]);
    await api.removeJob(job.id, saved.etag);
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
    const { value, revision, etag } = await api.readLibrary();
    expect(revision).toBe(0);
    const renamed = { ...value, firm: { ...value.firm, name: 'Another invented firm' } };
    expect(await api.saveLibrary(renamed, etag)).toMatchObject({ revision: 1 });
    expect((await api.readLibrary()).value.firm.name).toBe('Another invented firm');
  });

  it('has a file read as rows, and is refused one that cannot be with its fault', async () => {
    const api = await begin();
    expect(await api.readSheets(new Blob(['a,b\n1,2\n']))).toEqual([
      {
        name: '',
        rows: [
          { number: 1, cells: ['a', 'b'] },
          { number: 2, cells: ['1', '2'] },
        ],
      },
    ]);
    const refusal = await refusalOf(api.readSheets(new Blob(['%PDF-1.7'])));
    expect([refusal.status, refusal.code]).toEqual([422, 'sheet-unreadable']);
    expect(refusal.faults[0]?.message).toContain('PDF');
  });

  it('is refused a stale save with the revision that is there', async () => {
    const api = await begin();
    const { etag } = await api.createJob(job);
    await api.saveJob({ ...job, title: 'One' }, etag, 'by-hand');
    expect(await refusalOf(api.saveJob({ ...job, title: 'Two' }, etag, 'by-hand'))).toMatchObject({
      status: 412,
      code: 'stale-revision',
      currentRevision: 2,
    });
  });

  it('does not remove a job that was saved since it was listed', async () => {
    const api = await begin();
    const { etag } = await api.createJob(job);
    await api.saveJob({ ...job, title: 'One' }, etag, 'by-hand');
    expect(await refusalOf(api.removeJob(job.id, etag))).toMatchObject({ status: 412, currentRevision: 2 });
    expect(await api.listJobs()).toHaveLength(1);
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
    expect(refusal.message).toBe(NO_CONNECTION);
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

/** A server of one job that answers with a tag as given, and what it was asked. */
function tagged(etag: string | null) {
  const asked: { method: string; ifMatch: string | null; keepalive: boolean }[] = [];
  const headers = etag === null ? {} : { etag };
  const api = new ApiClient(async (_input, init) => {
    const { method = 'GET', keepalive = false } = init ?? {};
    asked.push({ method, ifMatch: new Headers(init?.headers).get('if-match'), keepalive });
    return new Response(method === 'GET' ? JSON.stringify(job) : '{"revision":4}', { headers });
  });
  return { api, asked };
}

describe('the tag of a revision', () => {
  it.each([
    ['"3"', 3, '"3"'],
    ['"3-k7f2"', 3, '"3-k7f2"'],
    // A proxy that packs the answer makes a strong tag weak (RFC 9110, 8.8.1); If-Match takes strong ones only.
    ['W/"3-k7f2"', 3, '"3-k7f2"'],
  ])('%s is sent back whole, and without its weakness', async (etag, revision, sentBack) => {
    const { api, asked } = tagged(etag);
    const read = await api.readJob(job.id);
    expect(read).toMatchObject({ revision, etag: sentBack });
    await api.saveJob(read.value, read.etag, 'autosave');
    expect(asked.at(-1)).toMatchObject({ method: 'PUT', ifMatch: sentBack });
  });

  it.each([null, '', '"new"', 'W/""'])(
    'is missed where it is %s, and nothing is saved on a guess',
    async (etag) => {
      const { api } = tagged(etag);
      expect(await refusalOf(api.readJob(job.id))).toMatchObject({ code: 'revision-missing' });
      expect(await refusalOf(api.readLibrary())).toBeInstanceOf(ServerRefusal);
    },
  );
});

describe('a save that is under way when the page is closed', () => {
  it('goes on where the browser lets it: up to 64 KB of all such saves together', async () => {
    const { api, asked } = tagged('"3"');
    const small = { ...job, title: 'a' };
    const large = { ...job, title: 'a'.repeat(70_000) };
    await api.saveJob(small, '"3"', 'autosave');
    await api.saveJob(large, '"3"', 'autosave');
    await Promise.all([api.saveJob(small, '"3"', 'autosave'), api.saveJob(small, '"3"', 'autosave')]);
    await api.saveJob(small, '"3"', 'autosave');
    expect(asked.map(({ keepalive }) => keepalive)).toEqual([true, false, true, false, true]);
  });
});
