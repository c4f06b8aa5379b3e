import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { brotliCompressSync, brotliDecompressSync, gunzipSync, gzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { testApp } from './test-app.ts';

const page = '<!doctype html><title>Ringwright</title>';
const script = `export const words = ${JSON.stringify('cable '.repeat(200))};`;
const customersPage = '<!doctype html><title>Quotation</title>';
let folder = '';
beforeAll(() => {
  const above = mkdtempSync(join(tmpdir(), 'ringwright-screen-'));
  writeFileSync(join(above, 'secret.txt'), 'nobody reads this');
  folder = join(above, 'screen');
  mkdirSync(join(folder, 'assets'), { recursive: true });
  for (const [name, text] of [
    ['index.html', page],
    ['q.html', customersPage],
    ['assets/app-1a2b3c.js', script],
  ] as const) {
    writeFileSync(join(folder, name), text);
    writeFileSync(join(folder, `${name}.gz`), gzipSync(text));
    writeFileSync(join(folder, `${name}.br`), brotliCompressSync(text));
  }
  writeFileSync(join(folder, 'manifest.webmanifest'), '{}');
});
afterAll(() => rmSync(join(folder, '..'), { recursive: true, force: true }));

const built = () => testApp({ settings: { screenFolder: folder } });

describe('the built screen', () => {
  it('has a page of its own for customers, which nobody keeps or lists', async () => {
    const { get } = await built();
    const answer = await get('/q');
    expect([answer.status, await answer.text()]).toEqual([200, customersPage]);
    expect(answer.headers.get('cache-control')).toBe('no-store');
    expect(answer.headers.get('x-robots-tag')).toBe('noindex, nofollow');
    expect(answer.headers.get('referrer-policy')).toBe('no-referrer');
    expect(await (await get('/q/more')).text()).toBe(page);
  });

  it('answers every place within it with its one page, that is asked after each time', async () => {
    const { get } = await built();
    for (const path of [
      '/',
      '/firm',
      '/jobs/house.2',
      '/jobs/a1/ways/compare?a=x&b=y',
      '/jobs/%C3%A9%20/wanted',
      '/jobs/50%/kit',
    ]) {
      const answer = await get(path);
      expect([path, answer.status, await answer.text()]).toEqual([path, 200, page]);
      expect(answer.headers.get('content-type')).toMatch(/^text\/html/);
      expect(answer.headers.get('cache-control')).toBe('no-cache');
    }
  });

  it('has files with a hash in their name kept for a year, and others not', async () => {
    const { get } = await built();
    const hashed = await get('/assets/app-1a2b3c.js');
    expect(await hashed.text()).toBe(script);
    expect(hashed.headers.get('cache-control')).toBe('public, max-age=31536000, immutable');
    expect(hashed.headers.get('content-type')).toMatch(/javascript/);
    expect((await get('/manifest.webmanifest')).headers.get('cache-control')).toBe('no-cache');
    expect((await get('/index.html')).headers.get('cache-control')).toBe('no-cache');
  });

  it('sends the compressed files to whoever takes them', async () => {
    const { get } = await built();
    const bytesOf = async (path: string, encoding: string) => {
      const answer = await get(path, { 'accept-encoding': encoding });
      return {
        encoding: answer.headers.get('content-encoding'),
        bytes: Buffer.from(await answer.arrayBuffer()),
      };
    };
    const br = await bytesOf('/assets/app-1a2b3c.js', 'gzip, deflate, br');
    expect([br.encoding, brotliDecompressSync(br.bytes).toString()]).toEqual(['br', script]);
    const gzip = await bytesOf('/assets/app-1a2b3c.js', 'gzip');
    expect([gzip.encoding, gunzipSync(gzip.bytes).toString()]).toEqual(['gzip', script]);
    const plain = await bytesOf('/assets/app-1a2b3c.js', 'identity');
    expect([plain.encoding, plain.bytes.toString()]).toEqual([null, script]);
    expect((await bytesOf('/jobs/x/kit', 'br')).encoding).toBe('br');
  });

  it('says 404 for a file that is not there, and for anything but reading', async () => {
    const { app, get } = await built();
    expect((await get('/assets/old-9z.js')).status).toBe(404);
    expect((await get('/favicon.ico')).status).toBe(404);
    expect((await app.request('/jobs/x/kit', { method: 'POST' })).status).toBe(404);
    expect((await app.request('/', { method: 'HEAD' })).status).toBe(200);
  });

  it('gives nothing from outside its folder', async () => {
    const { get } = await built();
    for (const path of [
      '/../secret.txt',
      '/%2e%2e/secret.txt',
      '/..%2fsecret.txt',
      '/..%5csecret.txt',
      '/assets/..%2f..%2fsecret.txt',
      '//secret.txt',
      '/assets/%00.js',
    ]) {
      const answer = await get(path);
      expect([path, (await answer.text()).includes('nobody')]).toEqual([path, false]);
      expect(answer.status).toBeLessThan(500);
    }
  });
});

describe('a screen that is not built', () => {
  it('says which command builds it, and the interface works all the same', async () => {
    const { get } = await testApp();
    const answer = await get('/jobs/x/wanted');
    expect(answer.status).toBe(503);
    expect(await answer.text()).toContain('npm run build');
    expect((await get('/assets/app.js')).status).toBe(404);
    expect((await get('/api/health')).status).toBe(200);
  });

  it('is there as soon as it is built', async () => {
    const late = join(folder, '..', 'late');
    const { get } = await testApp({ settings: { screenFolder: late } });
    expect((await get('/')).status).toBe(503);
    mkdirSync(late);
    writeFileSync(join(late, 'index.html'), page);
    expect((await get('/')).status).toBe(200);
  });
});
