import { connect } from 'node:net';
import { setTimeout as pause } from 'node:timers/promises';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { StoreTrouble } from '../../api/db/store-trouble.ts';
import { serverLog } from '../../api/http/log.ts';
import { type RunningServer, startServer } from '../../api/http/server.ts';
import { saltglass, saltglassId, testApp } from './test-app.ts';

const running: RunningServer[] = [];
afterAll(async () => {
  await Promise.all(running.map((server) => server.stop()));
});

let [out, err] = [[] as string[], [] as string[]];
beforeEach(() => {
  [out, err] = [[], []];
});
const log = serverLog({
  out: (text) => out.push(text),
  err: (text) => err.push(text),
  now: () => new Date('2026-11-27T20:00:00Z'),
});

async function start(changes: Parameters<typeof testApp>[0] = {}): Promise<string> {
  const { app } = await testApp({ ...changes, log });
  const server = await startServer({ app, host: '127.0.0.1', port: 0, tls: null, log });
  running.push(server);
  return server.url;
}

/** The lines that were logged, once there are so many. */
async function linesOf(count: number) {
  await expect.poll(() => out.length).toBe(count);
  return out.map((line) => {
    expect(line).toMatch(/^\{.*\}\n$/);
    return JSON.parse(line);
  });
}

describe('the log', () => {
  it('has a line for each request: when, how it went, what it was about, and no address', async () => {
    const url = await start();
    const made = await fetch(`${url}/api/jobs?secret=1`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', authorization: 'Bearer secret' },
      body: saltglass,
    });
    await (await fetch(`${url}/api/jobs/${saltglassId}/revisions/1?secret=2`)).text();
    await (await fetch(`${url}/api/health`)).text();
    await (await fetch(`${url}/api/secret`)).text();
    await (await fetch(`${url}/secret`)).text();
    await made.text();
    const lines = await linesOf(5);
    expect(lines).toMatchObject([
      { level: 'info', method: 'POST', route: '/api/jobs', status: 201, firm: 'own' },
      { level: 'info', method: 'GET', route: '/api/jobs/{id}/revisions/{revision}', status: 200 },
      { level: 'info', method: 'GET', route: '/api/health', status: 200, firm: null },
      { level: 'warn', method: 'GET', route: '(none)', status: 404 },
      { level: 'error', method: 'GET', route: '(screen)', status: 503 },
    ]);
    for (const line of lines) {
      expect(line).toMatchObject({ time: '2026-11-27T20:00:00.000Z', brokenOff: false });
      expect(line.ms).toBeGreaterThan(0);
      expect(line.requestId).toMatch(/^[0-9a-f-]{36}$/);
    }
    // The job's text and some headers.
    expect(lines[1].bytes).toBeGreaterThan(Buffer.byteLength(saltglass));
    expect(out.join('')).not.toMatch(/secret|saltglass/i);
  });

  it('takes a request’s own id where it is well formed, and gives every answer its id', async () => {
    const url = await start();
    for (const [given, kept] of [
      ['abc-123_x.Y', true],
      ['a'.repeat(64), true],
      ['a'.repeat(65), false],
      ['two words', false],
      ['{"level":"info"}', false],
    ] as const) {
      const answer = await fetch(`${url}/api/jobs/none`, { headers: { 'x-request-id': given } });
      const id = answer.headers.get('x-request-id') ?? '';
      expect([given, id === given]).toEqual([given, kept]);
      expect(await answer.json()).toMatchObject({ code: 'no-such-job', requestId: id });
      expect((await linesOf(1))[0].requestId).toBe(id);
      out = [];
    }
  });

  it('tells an error with its stack and its cause under the request’s id, and the client nothing of it', async () => {
    const { stores } = await testApp();
    const list = () => Promise.reject(new Error('outer', { cause: new Error('/secret/place broke') }));
    const url = await start({ stores: { ...stores, jobs: { ...stores.jobs, list } } });
    const answer = await fetch(`${url}/api/jobs`, { headers: { 'x-request-id': 'asked-1' } });
    expect([answer.status, await answer.text()]).toEqual([500, expect.not.stringContaining('secret')]);
    expect(JSON.parse(err.join(''))).toMatchObject({
      level: 'error',
      requestId: 'asked-1',
      message: 'GET /api/jobs failed.',
      error: expect.stringMatching(/outer\n +at [\s\S]*caused by Error: \/secret\/place broke\n +at /),
    });
    expect(await linesOf(1)).toMatchObject([{ level: 'error', requestId: 'asked-1', status: 500 }]);
  });

  it('tells of a client that went away before its answer', async () => {
    const { stores } = await testApp();
    const list = () => pause(300).then(() => []);
    const url = await start({ stores: { ...stores, jobs: { ...stores.jobs, list } } });
    const socket = connect(Number(new URL(url).port), '127.0.0.1');
    socket.on('error', () => {});
    socket.write('GET /api/jobs HTTP/1.1\r\nHost: localhost\r\n\r\n');
    await pause(100);
    socket.destroy();
    expect(await linesOf(1)).toMatchObject([{ level: 'warn', route: '/api/jobs', brokenOff: true }]);
  });
});

describe('the version', () => {
  it('is in the header of every answer, of problems and of the screen too', async () => {
    const { get, send } = await testApp();
    for (const answer of [
      await get('/api/health'),
      await get('/api/nowhere'),
      await get('/'),
      await send('POST', '/api/jobs', '{'),
    ])
      expect(answer.headers.get('ringwright-version')).toBe('1.2.3');
  });
});

describe('/api/ready', () => {
  it('says so, or passes on what the store says; health is as before', async () => {
    const ready = await testApp();
    expect(await (await ready.get('/api/ready')).json()).toEqual({ ok: true, version: '1.2.3' });
    const trouble = new StoreTrouble('The store /secret does not answer.', {
      kind: 'away',
      withoutPlace: 'The store does not answer.',
    });
    const away = await testApp({ probe: () => Promise.reject(trouble) });
    const answer = await away.get('/api/ready');
    expect([answer.status, answer.headers.get('retry-after')]).toEqual([503, '5']);
    expect(await answer.json()).toMatchObject({ code: 'store-away', retryAfterS: 5 });
    expect((await away.get('/api/health')).status).toBe(200);
  });
});
