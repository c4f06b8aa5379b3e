import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { fileFor, type OfflineFiles, takeDown } from '../../../ui/offline/offline-files.ts';

const texts: Readonly<Record<string, string>> = {
  '/index.html': '<!doctype html>',
  '/assets/index-1a.js': 'export {}',
};

const files: OfflineFiles = {
  version: 'ringwright-1',
  files: Object.entries(texts).map(([path, text]) => ({
    path,
    sha256: createHash('sha256').update(text).digest('hex'),
  })),
};

/** As much of the browser's store as is used: caches by name, answers by path. */
function testCaches() {
  const caches = new Map<string, Map<string, Response>>();
  const store = {
    open: async (name: string) => {
      const cache = caches.get(name) ?? new Map<string, Response>();
      caches.set(name, cache);
      return { put: async (path: string, answer: Response) => void cache.set(path, answer) };
    },
    delete: async (name: string) => caches.delete(name),
  };
  return { caches, store: store as unknown as CacheStorage };
}

const serving = (served: Readonly<Record<string, string>>): typeof fetch =>
  (async (path: string) =>
    served[path] === undefined
      ? new Response('', { status: 404 })
      : new Response(served[path])) as typeof fetch;

describe('the files that open the product without a connection', () => {
  it('are taken down, all of them, each as it was built', async () => {
    const { caches, store } = testCaches();
    await takeDown(files, store, serving(texts));
    const kept = caches.get('ringwright-1');
    const texted = await Promise.all(
      [...(kept ?? [])].map(async ([path, answer]) => [path, await answer.text()]),
    );
    expect(Object.fromEntries(texted)).toEqual(texts);
  });

  it.each([
    ['one is of another version', { ...texts, '/index.html': '<!doctype html><p>newer' }],
    ['one is not there any more', { '/index.html': texts['/index.html'] ?? '' }],
  ])('are none where %s: old and new are never mixed', async (_, served) => {
    const { caches, store } = testCaches();
    await expect(takeDown(files, store, serving(served))).rejects.toThrow();
    expect([...caches.keys()]).toEqual([]);
  });
});

describe('what a request is answered with', () => {
  const here = 'https://desk.example';
  const asked = (path: string, mode: RequestMode = 'cors', method = 'GET') =>
    fileFor(files, { url: new URL(path, here).href, mode, method }, here);

  it('is the page for every place within the screen, and the file for a file', () => {
    for (const place of ['/', '/firm', '/jobs/house.2/kit?part=cuts'])
      expect(asked(place, 'navigate')).toBe('/index.html');
    expect(asked('/assets/index-1a.js', 'no-cors')).toBe('/assets/index-1a.js');
  });

  it('is a customer’s own page where a link leads there', () => {
    expect(asked('/q', 'navigate')).toBe('/q.html');
    expect(asked('/quotations', 'navigate')).toBe('/index.html');
  });

  it('is left to the server for all that it keeps and makes, for what is not of this build, and for other servers', () => {
    expect(asked('/api/jobs')).toBeNull();
    expect(asked('/api/library/exports/price-list.xlsx', 'navigate')).toBeNull();
    expect(asked('/assets/index-2b.js')).toBeNull();
    expect(asked('/index.html', 'cors', 'HEAD')).toBeNull();
    expect(asked('https://elsewhere.example/index.html')).toBeNull();
  });
});
