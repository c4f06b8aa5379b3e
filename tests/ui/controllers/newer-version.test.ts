import { describe, expect, it } from 'vitest';
import { readJob } from '#model/read-job.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { saltglass, saltglassId, testApp } from '#tests/http/test-app.ts';
import { ApiClient, ServerRefusal } from '../../../ui/controllers/api-client.ts';
import { isNewer } from '../../../ui/controllers/newer-version.ts';

const job = demoJob('fernlow-close');

const faultsOf = (input: unknown) => {
  const read = readJob(input);
  return read.ok ? [] : read.faults;
};

describe('a job that cannot be read', () => {
  it('is a newer version’s by its version, by keys and by words that are not known', () => {
    expect(isNewer(faultsOf({ ...job, version: job.version + 1 }))).toBe(true);
    expect(isNewer(faultsOf({ ...job, moods: [] }))).toBe(true);
    expect(isNewer(faultsOf({ ...job, site: { ...job.site, nation: 'atlantis' } }))).toBe(true);
  });

  it('is no newer version’s where it is damaged, or can be read', () => {
    expect(isNewer(faultsOf({ ...job, title: 5 }))).toBe(false);
    expect(isNewer(faultsOf({ ...job, title: 5, moods: [] }))).toBe(false);
    expect(isNewer(faultsOf(job))).toBe(false);
  });

  it('is told apart where it comes from the server', async () => {
    const { app, send } = await testApp();
    await send('POST', '/api/jobs', saltglass);
    const refusalOf = async (change: Readonly<Record<string, unknown>>): Promise<ServerRefusal> => {
      const api = new ApiClient(async (input, init) => {
        const answer = await app.request(String(input), init);
        return new Response(JSON.stringify({ ...((await answer.json()) as object), ...change }), answer);
      });
      const refusal = await api.readJob(saltglassId).catch((error: unknown) => error);
      if (!(refusal instanceof ServerRefusal)) throw new Error('It was not refused.');
      return refusal;
    };
    expect((await refusalOf({ version: 99 })).code).toBe('job-newer');
    expect((await refusalOf({ title: 5 })).code).toBe('job-unreadable');
    expect((await refusalOf({ version: 99 })).message).not.toMatch(/damage/i);
  });
});
