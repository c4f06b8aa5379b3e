import { describe, expect, it } from 'vitest';
import { readingsJson } from '#exports/readings-json.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { saltglass, testApp } from './test-app.ts';

describe('the readings of a job that is sent', () => {
  it('say what the engine says of them, and nothing is kept', async () => {
    const { send, get } = await testApp();
    const answer = await send('POST', '/api/readings', saltglass);
    expect(answer.status).toBe(200);
    expect(await answer.text()).toBe(readingsJson(demoJob('saltglass-row')));
    const { jobs } = await (await get('/api/jobs')).json();
    expect(jobs).toEqual([]);
  });

  it('are none where nothing was read', async () => {
    const { send } = await testApp();
    const job = JSON.stringify({ ...demoJob('saltglass-row'), readings: [] });
    expect(await (await send('POST', '/api/readings', job)).json()).toMatchObject({ circuits: [] });
  });

  it('of a faulty job are refused, with its faults', async () => {
    const { send } = await testApp();
    const answer = await send(
      'POST',
      '/api/readings',
      JSON.stringify({ ...demoJob('saltglass-row'), title: 3 }),
    );
    expect(answer.status).toBe(422);
    expect(await answer.json()).toMatchObject({ code: 'job-unreadable', faults: [{ path: 'title' }] });
  });
});
