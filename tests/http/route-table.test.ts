import { Validator } from '@seriousme/openapi-schema-validator';
import { describe, expect, it } from 'vitest';
import { StoreTrouble } from '../../api/db/store-trouble.ts';
import { problems } from '../../api/http/problems.ts';
import { methodsAt, type RouteName, routeTable } from '../../api/http/route-table.ts';
import { testApp } from './test-app.ts';

const names = Object.keys(routeTable) as RouteName[];
const unsafe = names.flatMap((name) => {
  const entry = routeTable[name];
  return 'body' in entry ? [{ name, ...entry }] : [];
});
const filled = (path: string): string =>
  path
    .replace('{id}', 'some-job')
    .replace('{revision}', '1')
    .replace('{quotation}', 'some-quotation')
    .replace(/\{(?:person|invitation|link)\}/, 'some-id');

describe('the table of routes', () => {
  it('holds exactly the routes that the app has', async () => {
    const { app } = await testApp();
    const registered = app.routes
      .filter(({ method, path }) => method !== 'ALL' && path.startsWith('/api'))
      .map(({ method, path }) => `${method} ${path.replace(/:(\w+)/g, '{$1}')}`);
    const listed = names.map((name) => `${routeTable[name].method.toUpperCase()} ${routeTable[name].path}`);
    expect(listed.length).toBeGreaterThan(15);
    expect([...new Set(registered)].sort()).toEqual([...listed].sort());
  });

  it('gives every unsafe method a body limit, and no safe one', () => {
    for (const name of names)
      expect([name, 'body' in routeTable[name]]).toEqual([name, routeTable[name].method !== 'get']);
  });

  it('gives every route an access, and lets nobody change anything by merely reading', () => {
    const keepNothing = new Set<RouteName>(['estimatePosted', 'readingsPosted', 'readSheets']);
    // Each proves by what it sends who may: a password, or a token that nobody guesses; or it is about the asker alone.
    const proven = new Set<RouteName>([
      'signIn',
      'signOut',
      'changePassword',
      'lookAtInvitation',
      'useInvitation',
      'sharedQuotation',
      'sharedQuotationPdf',
    ]);
    const changing = unsafe.filter(({ name }) => !keepNothing.has(name) && !proven.has(name));
    expect(changing.filter(({ access }) => access !== 'write' && access !== 'own')).toEqual([]);
    expect(changing.length).toBeGreaterThan(15);
    expect(names.filter((name) => routeTable[name].access === 'anyone').sort()).toEqual([
      'health',
      'lookAtInvitation',
      'openapi',
      'problems',
      'ready',
      'session',
      'sharedQuotation',
      'sharedQuotationPdf',
      'signIn',
      'signOut',
      'useInvitation',
    ]);
  });

  it('knows the methods of an address', () => {
    expect(methodsAt('/api/jobs/x')).toEqual(['GET', 'HEAD', 'PUT', 'DELETE']);
    expect(methodsAt('/api/openapi.json')).toEqual(['GET', 'HEAD']);
    expect(methodsAt('/api/openapiXjson')).toEqual([]);
    expect(methodsAt('/api/jobs/x/y')).toEqual([]);
  });
});

describe('the OpenAPI document', () => {
  it('is valid OpenAPI 3.1 by an independent validator', async () => {
    const answer = await (await testApp()).get('/api/openapi.json');
    const document = await answer.json();
    expect(document.openapi).toMatch(/^3\.1/);
    const { valid, errors } = await new Validator().validate(document);
    expect([valid, errors]).toEqual([true, undefined]);
  });

  it('describes every route, and nothing that is not there', async () => {
    const { paths } = await (await (await testApp()).get('/api/openapi.json')).json();
    const described = Object.entries(paths as Record<string, object>).flatMap(([path, methods]) =>
      Object.keys(methods).map((method) => `${method} ${path}`),
    );
    expect(described.sort()).toEqual(
      names.map((name) => `${routeTable[name].method} ${routeTable[name].path}`).sort(),
    );
  });

  it('has a schema for every reference, and no reference outside itself', async () => {
    const text = await (await (await testApp()).get('/api/openapi.json')).text();
    const { components } = JSON.parse(text);
    const references = [...text.matchAll(/"\$ref":"([^"]+)"/g)].map((match) => match[1]);
    expect(references.length).toBeGreaterThan(20);
    const known = new Set(Object.keys(components.schemas).map((name) => `#/components/schemas/${name}`));
    expect(references.filter((reference) => !known.has(reference ?? ''))).toEqual([]);
  });

  it('is called by name, with a summary, at every route', async () => {
    const { paths } = await (await (await testApp()).get('/api/openapi.json')).json();
    for (const methods of Object.values(paths as Record<string, Record<string, { summary?: string }>>))
      for (const operation of Object.values(methods)) expect(operation.summary).toMatch(/\w{3}/);
  });
});

describe.each(unsafe)('$method $path', ({ method, path, body }) => {
  const call = async (headers: Record<string, string>, content?: string) =>
    (await testApp()).app.request(filled(path), {
      method: method.toUpperCase(),
      headers,
      ...(content === undefined ? {} : { body: content }),
    });
  const codeOf = async (answer: Response) => [answer.status, (await answer.json()).code];
  const fitting = body.kind === 'bytes' ? 'application/octet-stream' : 'application/json';
  const typed = { 'content-type': fitting };

  it('refuses a foreign origin, one that is hidden, and a foreign site', async () => {
    for (const headers of [
      { origin: 'https://elsewhere.example' },
      { origin: 'null' },
      { origin: 'http://localhost:81' },
      { 'sec-fetch-site': 'cross-site' },
      { 'sec-fetch-site': 'same-site' },
    ])
      expect(await codeOf(await call({ ...typed, ...headers }, '{}'))).toEqual([403, 'foreign-origin']);
  });

  it('lets its own origin and programs that are no browsers through', async () => {
    for (const headers of [
      {},
      { origin: 'http://localhost' },
      { origin: 'http://localhost', 'sec-fetch-site': 'same-origin' },
    ])
      expect((await call({ ...typed, ...headers }, '{}')).status).not.toBe(403);
  });

  it('refuses a body over its limit and names the limit', async () => {
    const answer = await call(typed, ' '.repeat(body.limitBytes + 1));
    const said = await answer.json();
    expect([answer.status, said.code, said.limitBytes]).toEqual([413, 'body-too-large', body.limitBytes]);
    expect((await call(typed, ' '.repeat(body.limitBytes))).status).not.toBe(413);
  });

  it('refuses a content type of another kind than belongs there, or none where a body belongs', async () => {
    const others = ['text/plain', 'application/x-www-form-urlencoded', `${fitting}x`, ''];
    for (const type of [...others, `${fitting}; charset=utf-16`])
      expect(await codeOf(await call({ 'content-type': type }, '{}'))).toEqual([415, 'wrong-content-type']);
    const none = await call({});
    expect(none.status === 415).toBe(body.kind !== 'none');
  });
});

describe('problems', () => {
  it('are listed at the address that each problem’s type leads to', async () => {
    const { get } = await testApp();
    const missing = await (await get('/api/nowhere')).json();
    expect(missing.type).toBe('/api/problems#no-such-address');
    const { problems: listed } = await (await get('/api/problems')).json();
    expect(listed.map(({ code }: { code: string }) => code)).toEqual(Object.keys(problems));
  });

  it('answer anything unknown under /api as JSON, never with the screen', async () => {
    const { app } = await testApp();
    for (const path of ['/api', '/api/', '/api/nowhere', '/api/jobs/x/y', '/api/jobs/'])
      for (const method of ['GET', 'POST', 'PUT', 'PATCH', 'DELETE']) {
        const answer = await app.request(path, { method });
        expect([path, answer.status, answer.headers.get('content-type')]).toEqual([
          path,
          404,
          'application/problem+json',
        ]);
      }
  });

  it('say which methods an address takes', async () => {
    const answer = await (await testApp()).app.request('/api/jobs', { method: 'PATCH' });
    expect([answer.status, answer.headers.get('allow')]).toEqual([405, 'GET, HEAD, POST']);
    expect(await answer.json()).toMatchObject({ code: 'method-not-allowed' });
  });

  it('of the server’s own making are logged in full and told without detail', async () => {
    const made = await testApp();
    const broken = await testApp({
      stores: {
        ...made.stores,
        jobs: { ...made.stores.jobs, list: () => Promise.reject(new Error('disk /secret/place is full')) },
      },
    });
    const answer = await broken.get('/api/jobs');
    const text = await answer.text();
    expect([answer.status, JSON.parse(text).code]).toEqual([500, 'internal']);
    expect(text).not.toContain('secret');
    expect(broken.complaints).toHaveLength(1);
    expect(broken.complaints[0]?.line).toContain('GET /api/jobs');
    expect(String(broken.complaints[0]?.error)).toContain('disk /secret/place is full');
  });

  it.each([
    ['The store has no room left: the disk is full.', 'the disk is full'],
    [null, 'log says what is wrong'],
  ])('of the store are told as such with the remedy, without its place: %s', async (withoutPlace, told) => {
    const made = await testApp();
    const trouble = new StoreTrouble('The store /secret/place has no room left: the disk is full.', {
      withoutPlace,
    });
    const full = await testApp({
      stores: { ...made.stores, jobs: { ...made.stores.jobs, list: () => Promise.reject(trouble) } },
    });
    const answer = await full.get('/api/jobs');
    const text = await answer.text();
    expect([answer.status, JSON.parse(text).code]).toEqual([503, 'store-trouble']);
    expect(text).not.toContain('secret');
    expect(JSON.parse(text).detail).toContain(told);
    expect(String(full.complaints[0]?.error)).toContain('the disk is full');
  });
});
