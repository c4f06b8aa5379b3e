import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { etagFor, projectRoot, saltglass, saltglassId } from './test-app.ts';

let folder = '';
const children = new Set<ChildProcess>();
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'ringwright server '));
});
afterAll(() => {
  for (const child of children) child.kill('SIGKILL');
  rmSync(folder, { recursive: true, force: true });
});

interface Run {
  readonly child: ChildProcess;
  readonly out: () => string;
  readonly err: () => string;
  /** The address that it printed. */
  readonly url: Promise<string>;
  /** The code it ended with; null when a signal ended it. */
  readonly ended: Promise<number | null>;
}

function run(env: Readonly<Record<string, string>> = {}): Run {
  const inherited = { PATH: process.env.PATH, HOME: process.env.HOME };
  const child = spawn(process.execPath, ['--import', 'tsx', 'api/http/server.ts'], {
    cwd: projectRoot,
    env: { ...inherited, PORT: '0', DATABASE_URL: `file:${join(folder, 'jobs.db')}`, ...env },
  });
  children.add(child);
  let out = '';
  let err = '';
  child.stderr.on('data', (data) => {
    err += data;
  });
  const ended = new Promise<number | null>((resolve) => {
    child.on('exit', (code) => {
      children.delete(child);
      resolve(code);
    });
  });
  const url = new Promise<string>((resolve, reject) => {
    child.stdout.on('data', (data) => {
      out += data;
      const found = /Ringwright is at (\S+?)(?:,|\n)/.exec(out)?.[1];
      if (found !== undefined) resolve(found);
    });
    ended.then(() => reject(new Error(`ended without an address: ${err}`)));
  });
  url.catch(() => {});
  return { child, out: () => out, err: () => err, url, ended };
}

const idsAt = async (url: string): Promise<readonly string[]> => {
  const { jobs } = await (await fetch(`${url}/api/jobs`)).json();
  return jobs.map(({ id }: { id: string }) => id);
};

describe('the server as a process', () => {
  it('prints one line, offers the demo jobs once, keeps what is saved, and ends with 0 when told to stop', async () => {
    const first = run();
    const url = await first.url;
    expect(first.out()).toBe(`Ringwright is at ${url}\n`);
    expect(await idsAt(url)).toContain(saltglassId);
    const at = `${url}/api/jobs/${saltglassId}`;
    const headers = { 'if-match': etagFor(1, saltglass), 'content-type': 'application/json' };
    const saved = await fetch(at, { method: 'PUT', headers, body: `${saltglass} ` });
    expect(saved.status).toBe(200);
    const [other] = (await idsAt(url)).filter((id) => id !== saltglassId);
    const etag = (await fetch(`${url}/api/jobs/${other}`)).headers.get('etag') ?? '';
    const removed = await fetch(`${url}/api/jobs/${other}`, {
      method: 'DELETE',
      headers: { 'if-match': etag },
    });
    expect(removed.status).toBe(204);
    first.child.kill('SIGTERM');
    expect([await first.ended, first.err()]).toEqual([0, '']);

    const second = run();
    const again = await second.url;
    expect(await (await fetch(`${again}/api/jobs/${saltglassId}`)).text()).toBe(`${saltglass} `);
    expect(await idsAt(again)).not.toContain(other);
    second.child.kill('SIGINT');
    expect([await second.ended, second.err()]).toEqual([0, '']);
  });

  it('ends at once at a second signal, whoever is still connected', async () => {
    const started = run({ DATABASE_URL: `file:${join(folder, 'second.db')}` });
    const { port } = new URL(await started.url);
    const socket = connect(Number(port), '127.0.0.1');
    socket.on('error', () => {});
    await new Promise((resolve) => socket.once('connect', resolve));
    // A request that never comes to its end holds an ordinary stop up.
    socket.write(
      'POST /api/jobs HTTP/1.1\r\nHost: localhost\r\nContent-Length: 9\r\nContent-Type: application/json\r\n\r\n',
    );
    await fetch(`${await started.url}/api/health`);
    started.child.kill('SIGTERM');
    const held = await Promise.race([
      started.ended,
      new Promise((resolve) => setTimeout(resolve, 500, 'held')),
    ]);
    expect(held).toBe('held');
    started.child.kill('SIGTERM');
    expect(await started.ended).toBe(1);
    socket.destroy();
  });

  it('says in a line what keeps it from starting, and ends with 1', async () => {
    const there = run({ DATABASE_URL: `file:${join(folder, 'there.db')}` });
    const { port } = new URL(await there.url);
    writeFileSync(join(folder, 'no.pem'), 'this is no certificate');
    const pem = join(folder, 'no.pem');
    const cases = [
      [{ PORT: port }, `Port ${port} is taken`],
      [{ HOST: '203.0.113.9' }, 'HOST=203.0.113.9 is no address of this machine'],
      [{ PORT: 'four', TLS_KEY: '/x' }, 'PORT is "four"'],
      [{ PORT: 'four', TLS_KEY: '/x' }, 'TLS_KEY is set without TLS_CERT'],
      [{ TLS_CERT: pem, TLS_KEY: pem }, 'TLS_CERT'],
      [{ DATABASE_URL: `file:${pem}` }, 'not a database'],
    ] as const;
    for (const [env, words] of cases) {
      const faulty = run({ DATABASE_URL: `file:${join(folder, 'cases.db')}`, ...env });
      expect([words, await faulty.ended, faulty.out()]).toEqual([words, 1, '']);
      expect(faulty.err()).toContain(words);
      expect(faulty.err()).not.toMatch(/\n\s+at /);
    }
    there.child.kill('SIGTERM');
    expect(await there.ended).toBe(0);
  });

  it('warns whoever opens it to others', async () => {
    const open = run({ HOST: '0.0.0.0', DATABASE_URL: `file:${join(folder, 'open.db')}` });
    expect(await open.url).toMatch(/^http:\/\/127\.0\.0\.1:\d+$/);
    await expect.poll(() => open.err()).toContain('no sign-in');
    open.child.kill('SIGTERM');
    expect(await open.ended).toBe(0);
  });
});
