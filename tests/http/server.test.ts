import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { Agent, request } from 'node:http';
import { request as tlsRequest } from 'node:https';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type RunningServer, startServer } from '../../api/http/server.ts';
import { saltglass, saltglassId, testApp } from './test-app.ts';
import { freshStores } from './test-stores.ts';

const running: RunningServer[] = [];
afterAll(async () => {
  await Promise.all(running.map((server) => server.stop()));
});

async function start(changes: Parameters<typeof testApp>[0] = {}) {
  const { app, complaints } = await testApp(changes);
  const server = await startServer({ app, host: '127.0.0.1', port: 0, tls: null });
  running.push(server);
  return { ...server, complaints };
}

describe('a listening server', () => {
  it('tells the port that it really has', async () => {
    const { url } = await start();
    expect(url).toMatch(/^http:\/\/127\.0\.0\.1:[1-9]\d+$/);
    expect(await (await fetch(`${url}/api/health`)).json()).toMatchObject({ ok: true });
  });

  it('is refused a port that is taken, by the system’s own code', async () => {
    const { url } = await start();
    const { app } = await testApp();
    const again = startServer({ app, host: '127.0.0.1', port: Number(new URL(url).port), tls: null });
    await expect(again).rejects.toMatchObject({ code: 'EADDRINUSE' });
  });

  it('keeps and gives back a job over the wire, to the byte', async () => {
    const { url } = await start();
    const headers = { 'content-type': 'application/json', origin: url };
    const made = await fetch(`${url}/api/jobs`, { method: 'POST', headers, body: saltglass });
    expect(made.status).toBe(201);
    expect(await (await fetch(`${url}/api/jobs/${saltglassId}`)).text()).toBe(saltglass);
    const foreign = await fetch(`${url}/api/jobs`, {
      method: 'POST',
      headers: { ...headers, origin: 'https://elsewhere.example' },
      body: saltglass,
    });
    expect(foreign.status).toBe(403);
  });

  it('refuses a body over the limit, with a stated length and without one', async () => {
    const { url } = await start();
    const bytes = new Uint8Array(9 * 1024 * 1024).fill(32);
    const headers = { 'content-type': 'application/json' };
    const stated = await fetch(`${url}/api/jobs`, { method: 'POST', headers, body: bytes });
    expect([stated.status, (await stated.json()).code]).toEqual([413, 'body-too-large']);
    const chunks = new ReadableStream({
      start(controller) {
        for (let at = 0; at < 9; at += 1) controller.enqueue(bytes.slice(0, 1024 * 1024));
        controller.close();
      },
    });
    const streamed = await fetch(`${url}/api/jobs`, {
      method: 'POST',
      headers,
      body: chunks,
      // Node's fetch wants it for a body that streams; the DOM's types do not know it.
      ...{ duplex: 'half' },
    });
    expect([streamed.status, (await streamed.json()).code]).toEqual([413, 'body-too-large']);
    expect((await fetch(`${url}/api/health`)).status).toBe(200);
  });

  it('survives requests that are no HTTP, and answers the next one', async () => {
    const { url, complaints } = await start();
    const port = Number(new URL(url).port);
    for (const raw of [
      'rubbish\r\n\r\n',
      'GET / HTTP/1.0\r\n\r\n',
      'GET http://[ HTTP/1.1\r\nHost: x\r\n\r\n',
      'GET /%zz HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n',
      'GET /api/jobs/%ff HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n',
      'POST /api/jobs HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nContent-Length: 50\r\n\r\n{"a"',
      'POST /api/jobs HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nTransfer-Encoding: chunked\r\n\r\n50\r\n{"a"',
    ]) {
      const said = await new Promise<string>((resolve) => {
        const socket = connect(port, '127.0.0.1', () => socket.end(raw));
        let text = '';
        socket.on('data', (data) => {
          text += data;
        });
        socket.on('close', () => resolve(text));
        socket.on('error', () => resolve(text));
      });
      expect([raw, /^HTTP\/1\.1 500/.test(said)]).toEqual([raw, false]);
    }
    expect((await fetch(`${url}/api/health`)).status).toBe(200);
    expect(complaints).toEqual([]);
  });
});

describe('a stop', () => {
  it('finishes the answer that is under way, lets nobody else in, and does not wait for idle connections', async () => {
    let finish = (): void => {};
    const waiting = new Promise<void>((resolve) => {
      finish = resolve;
    });
    let entered = (): void => {};
    const inside = new Promise<void>((resolve) => {
      entered = resolve;
    });
    const stores = await freshStores();
    const list = async () => {
      entered();
      await waiting;
      return stores.jobs.list();
    };
    const { url, stop } = await start({ stores: { ...stores, jobs: { ...stores.jobs, list } } });
    const agent = new Agent({ keepAlive: true });
    const over = (path: string): Promise<string> =>
      new Promise((resolve, reject) => {
        request(`${url}${path}`, { agent }, (answer) => {
          let text = '';
          answer.on('data', (data) => {
            text += data;
          });
          answer.on('end', () => resolve(text));
        })
          .on('error', reject)
          .end();
      });
    await over('/api/health'); // leaves an idle connection behind
    const slow = over('/api/jobs');
    const other = new Agent({ keepAlive: true });
    await inside;
    const started = performance.now();
    const stopped = stop();
    await expect(fetch(`${url}/api/health`)).rejects.toThrow();
    finish();
    expect(JSON.parse(await slow)).toEqual({ jobs: [] });
    await stopped;
    expect(performance.now() - started).toBeLessThan(2000);
    agent.destroy();
    other.destroy();
  });
});

describe('a stop that a client would hold up for good', () => {
  it('cuts it off after a while', async () => {
    const { app } = await testApp();
    const { url, stop } = await startServer({ app, host: '127.0.0.1', port: 0, tls: null, stopMs: 300 });
    const socket = connect(Number(new URL(url).port), '127.0.0.1');
    socket.on('error', () => {});
    const closed = new Promise((resolve) => socket.once('close', resolve));
    // It says that nine bytes come, and sends none.
    socket.write(
      'POST /api/jobs HTTP/1.1\r\nHost: localhost\r\nContent-Length: 9\r\nContent-Type: application/json\r\n\r\n',
    );
    await fetch(`${url}/api/health`);
    const began = performance.now();
    await stop();
    await closed;
    expect(performance.now() - began).toBeLessThan(5000);
  });
});

describe('TLS', () => {
  let folder = '';
  let tls = { cert: '', key: '' };
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'ringwright-tls-'));
    const [cert, key] = [join(folder, 'cert.pem'), join(folder, 'key.pem')];
    execFileSync('openssl', [
      ...['req', '-x509', '-newkey', 'ec', '-pkeyopt', 'ec_paramgen_curve:prime256v1', '-nodes'],
      ...['-keyout', key, '-out', cert, '-days', '2', '-subj', '/CN=localhost'],
      ...['-addext', 'subjectAltName=DNS:localhost,IP:127.0.0.1'],
    ]);
    tls = { cert: readFileSync(cert, 'utf8'), key: readFileSync(key, 'utf8') };
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('is spoken by the server itself, trusted by its own certificate, and promised', async () => {
    const { app } = await testApp({ settings: { tls: { certPath: '', keyPath: '' } } });
    const server = await startServer({ app, host: '127.0.0.1', port: 0, tls });
    running.push(server);
    expect(server.url).toMatch(/^https:/);
    const call = (method: string, headers: Record<string, string>): Promise<[number | undefined, unknown]> =>
      new Promise((resolve, reject) => {
        tlsRequest(
          `${server.url}/api/${method === 'GET' ? 'health' : 'demos'}`,
          { method, ca: tls.cert, headers },
          (answer) => {
            answer.resume();
            resolve([answer.statusCode, answer.headers['strict-transport-security']]);
          },
        )
          .on('error', reject)
          .end();
      });
    expect(await call('GET', {})).toEqual([200, 'max-age=15552000']);
    expect((await call('POST', { origin: server.url }))[0]).toBe(200);
    expect((await call('POST', { origin: server.url.replace('https', 'http') }))[0]).toBe(403);
  });

  it('is refused with a key that is none', async () => {
    const { app } = await testApp();
    const faulty = async () => startServer({ app, host: '127.0.0.1', port: 0, tls: { cert: 'x', key: 'y' } });
    await expect(faulty()).rejects.toThrow();
  });
});
