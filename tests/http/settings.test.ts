import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { reachWarning, settingsFrom } from '../../api/http/settings.ts';

const surroundings = {
  root: '/home/a b/ringwright',
  hostName: 'Workbench',
  isReadable: (path: string) => path.startsWith('/readable/'),
};
const read = (env: Record<string, string | undefined>) => settingsFrom(env, surroundings);
const settings = (env: Record<string, string | undefined>) => {
  const made = read(env);
  if (!made.ok) throw new Error(made.faults.join(' '));
  return made.settings;
};
const faults = (env: Record<string, string | undefined>) => {
  const made = read(env);
  return made.ok ? [] : made.faults;
};

describe('settings', () => {
  it('keep to this machine when the environment says nothing', () => {
    for (const env of [
      {},
      { PORT: '', HOST: ' ', DATABASE_URL: '', TLS_CERT: '', TLS_KEY: '', PUBLIC_URL: '' },
    ])
      expect(settings(env)).toMatchObject({
        port: 4310,
        host: '127.0.0.1',
        tls: null,
        publicOrigin: null,
        hostNames: ['workbench', 'workbench.local'],
      });
  });

  it('keep the database in the project’s folder, spaces in its path and all', () => {
    const url = settings({}).databaseUrl;
    expect(url).toBe('file:///home/a%20b/ringwright/.ringwright/ringwright.db');
    expect(fileURLToPath(url)).toBe('/home/a b/ringwright/.ringwright/ringwright.db');
  });

  it('take what the environment gives', () => {
    expect(
      settings({
        PORT: '0',
        HOST: 'Bench.lan',
        DATABASE_URL: 'libsql://db.example?authToken=x',
        TLS_CERT: '/readable/cert.pem',
        TLS_KEY: '/readable/key.pem',
        PUBLIC_URL: 'https://jobs.example/',
      }),
    ).toMatchObject({
      port: 0,
      host: 'Bench.lan',
      databaseUrl: 'libsql://db.example?authToken=x',
      tls: { certPath: '/readable/cert.pem', keyPath: '/readable/key.pem' },
      publicOrigin: 'https://jobs.example',
      hostNames: ['workbench', 'workbench.local', 'bench.lan'],
    });
  });

  it.each([
    ['PORT', 'abc'],
    ['PORT', '65536'],
    ['PORT', '-1'],
    ['PORT', '1.5'],
    ['PORT', '0x10'],
    ['HOST', 'http://127.0.0.1'],
    ['HOST', '127.0.0.1:80'],
    ['DATABASE_URL', '/var/jobs.db'],
    ['DATABASE_URL', 'postgres://x'],
    ['PUBLIC_URL', 'http://jobs.example'],
    ['PUBLIC_URL', 'https://jobs.example/ringwright'],
    ['PUBLIC_URL', 'https://a:b@jobs.example'],
    ['PUBLIC_URL', 'jobs.example'],
  ])('refuse %s=%s by its name', (name, value) => {
    expect(faults({ [name]: value })).toEqual([expect.stringMatching(new RegExp(`^${name}`))]);
  });

  it('take the edges of the range of ports', () => {
    expect([settings({ PORT: '65535' }).port, settings({ PORT: '1' }).port]).toEqual([65535, 1]);
  });

  it('want both halves of TLS, readable', () => {
    expect(faults({ TLS_CERT: '/readable/c' })[0]).toContain('TLS_CERT is set without TLS_KEY');
    expect(faults({ TLS_KEY: '/readable/k' })[0]).toContain('TLS_KEY is set without TLS_CERT');
    expect(faults({ TLS_CERT: '/readable/c', TLS_KEY: '/hidden/k' })).toEqual([
      expect.stringContaining('/hidden/k'),
    ]);
  });

  it('tell every fault at once, and never the database’s password', () => {
    const told = faults({
      PORT: 'x',
      HOST: '?',
      DATABASE_URL: 'mysql://u:hunter2@x',
      TLS_KEY: 'k',
      PUBLIC_URL: 'y',
    });
    expect(told).toHaveLength(5);
    expect(told.join(' ')).not.toContain('hunter2');
  });
});

describe('who signs in', () => {
  it('is nobody on this machine alone, and everybody where others reach it', () => {
    for (const host of ['127.0.0.1', '127.9.9.9', '::1', 'localhost'])
      expect(settings({ HOST: host })).toMatchObject({ signIn: false });
    expect(settings({ PUBLIC_URL: 'https://jobs.example' })).toMatchObject({
      signIn: true,
      secureCookies: true,
    });
    const tls = { TLS_CERT: '/readable/cert.pem', TLS_KEY: '/readable/key.pem' };
    expect(settings({ HOST: '0.0.0.0', ...tls })).toMatchObject({ signIn: true, secureCookies: true });
  });

  it('sends no password in the open unless the network is trusted by name', () => {
    for (const host of ['0.0.0.0', '::', '192.168.1.7', 'bench.lan', '127.example'])
      expect(faults({ HOST: host })).toEqual([expect.stringContaining('TRUSTED_NETWORK=yes')]);
    expect(settings({ HOST: '0.0.0.0', TRUSTED_NETWORK: 'yes' })).toMatchObject({
      signIn: true,
      secureCookies: false,
    });
    expect(faults({ TRUSTED_NETWORK: 'true' })).toEqual([expect.stringMatching(/^TRUSTED_NETWORK/)]);
  });
});

describe('the warning that others can read along', () => {
  it('is given for plain HTTP beyond this machine, and for nothing else', () => {
    for (const host of ['127.0.0.1', '127.9.9.9', '::1', 'localhost'])
      expect(reachWarning(settings({ HOST: host }))).toBe(null);
    for (const host of ['0.0.0.0', '::', '192.168.1.7', 'bench.lan', '127.example'])
      expect(reachWarning(settings({ HOST: host, TRUSTED_NETWORK: 'yes' }))).toContain(host);
    expect(reachWarning(settings({ PUBLIC_URL: 'https://jobs.example' }))).toBe(null);
    const tls = { TLS_CERT: '/readable/cert.pem', TLS_KEY: '/readable/key.pem' };
    expect(reachWarning(settings({ HOST: '0.0.0.0', ...tls }))).toBe(null);
  });
});
