import { describe, expect, it } from 'vitest';
import { testApp } from './test-app.ts';

describe('hosts', () => {
  it('that this machine goes by, and addresses, are answered', async () => {
    const { get } = await testApp();
    for (const host of [
      'localhost',
      'LOCALHOST:4310',
      '127.0.0.1:4310',
      '192.168.1.7',
      '[::1]:4310',
      'workbench:1',
    ])
      expect([host, (await get('/api/health', { host })).status]).toEqual([host, 200]);
  });

  it('of anybody else are refused, whatever is asked for', async () => {
    const { get } = await testApp();
    for (const host of [
      'elsewhere.example',
      '127.0.0.1.elsewhere.example',
      'localhost.example:4310',
      'x',
      '',
    ])
      for (const path of ['/api/health', '/api/jobs', '/', '/assets/x.js']) {
        const answer = await get(path, { host });
        expect([host, answer.status, (await answer.json()).code]).toEqual([host, 421, 'wrong-host']);
      }
  });

  it('of the public address are answered when one is set', async () => {
    const { get } = await testApp({ settings: { publicOrigin: 'https://jobs.example' } });
    expect((await get('/api/health', { host: 'jobs.example' })).status).toBe(200);
    expect((await get('/api/health', { host: 'elsewhere.example' })).status).toBe(421);
  });
});

describe('origins', () => {
  const post = async (settings: object, headers: Record<string, string>) =>
    (await testApp({ settings })).send('POST', '/api/demos', undefined, headers);

  it('of the public address are let through behind a proxy, whatever name the proxy calls the server by', async () => {
    const settings = { publicOrigin: 'https://jobs.example' };
    const host = '127.0.0.1:4310';
    expect((await post(settings, { host, origin: 'https://jobs.example' })).status).toBe(200);
    expect((await post(settings, { host, origin: 'http://jobs.example' })).status).toBe(403);
    expect((await post(settings, { host, origin: 'https://elsewhere.example' })).status).toBe(403);
  });

  it('must be https when the server speaks TLS, and http when it does not', async () => {
    const host = '192.168.1.7:4310';
    const tls = { certPath: 'c', keyPath: 'k' };
    expect((await post({ tls }, { host, origin: 'https://192.168.1.7:4310' })).status).toBe(200);
    expect((await post({ tls }, { host, origin: 'http://192.168.1.7:4310' })).status).toBe(403);
    expect((await post({}, { host, origin: 'http://192.168.1.7:4310' })).status).toBe(200);
    expect((await post({}, { host, origin: 'https://192.168.1.7:4310' })).status).toBe(403);
  });

  it('do not matter to reading', async () => {
    const { get } = await testApp();
    const answer = await get('/api/health', { origin: 'https://elsewhere.example' });
    expect([answer.status, answer.headers.get('access-control-allow-origin')]).toEqual([200, null]);
  });
});

describe('headers', () => {
  const policy =
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob: data:; font-src 'self'; connect-src 'self'; manifest-src 'self'; worker-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

  it('are strict on every answer, errors included', async () => {
    const { get, send } = await testApp();
    const answers = [
      await get('/api/health'),
      await get('/api/nowhere'),
      await get('/'),
      await get('/api/health', { host: 'elsewhere.example' }),
      await send('POST', '/api/jobs', '{'),
    ];
    for (const { headers } of answers) {
      expect(headers.get('content-security-policy')).toBe(policy);
      expect(headers.get('x-content-type-options')).toBe('nosniff');
      expect(headers.get('x-frame-options')).toBe('DENY');
      expect(headers.get('referrer-policy')).toBe('no-referrer');
      expect(headers.get('cross-origin-resource-policy')).toBe('same-origin');
      expect(headers.get('strict-transport-security')).toBe(null);
    }
  });

  it('promise TLS only where the server speaks it', async () => {
    const { get } = await testApp({ settings: { tls: { certPath: 'c', keyPath: 'k' } } });
    expect((await get('/api/health')).headers.get('strict-transport-security')).toMatch(/^max-age=\d{7,}$/);
  });

  it('have every answer of the interface asked after each time', async () => {
    const { get } = await testApp();
    for (const path of ['/api/health', '/api/jobs', '/api/library', '/api/nowhere'])
      expect((await get(path)).headers.get('cache-control')).toBe('no-cache');
  });
});
