import { describe, expect, it } from 'vitest';
import { etagFor, saltglass, saltglassId, testApp, variantOf } from './test-app.ts';

const at = `/api/jobs/${saltglassId}`;
const firstTag = etagFor(1, saltglass);

async function withJob() {
  const made = await testApp();
  expect((await made.send('POST', '/api/jobs', saltglass)).status).toBe(201);
  return made;
}

describe('jobs', () => {
  it('keeps a new job and tells its id, revision and address', async () => {
    const { send, get } = await testApp();
    const answer = await send('POST', '/api/jobs', saltglass);
    expect(answer.status).toBe(201);
    expect(await answer.json()).toEqual({ id: saltglassId, revision: 1 });
    expect(answer.headers.get('location')).toBe(at);
    expect(answer.headers.get('etag')).toBe(firstTag);
    const { jobs } = await (await get('/api/jobs')).json();
    expect(jobs).toHaveLength(1);
    expect(jobs[0]).toMatchObject({ id: saltglassId, revision: 1, wantedPoints: 4, schemes: 5 });
  });

  it('gives the text back to the byte, odd spaces, key order and byte-order mark included', async () => {
    const { send, get } = await testApp();
    const text = `\uFEFF  ${saltglass.replace('"title"', '  "title"\t')}\n\n`;
    await send('POST', '/api/jobs', text);
    const answer = await get(at);
    expect(answer.headers.get('content-type')).toBe('application/json');
    expect(Buffer.from(await answer.arrayBuffer()).equals(Buffer.from(text))).toBe(true);
  });

  it('refuses a second job with the same id', async () => {
    const { send } = await withJob();
    const answer = await send('POST', '/api/jobs', saltglass);
    expect(answer.status).toBe(409);
    expect(await answer.json()).toMatchObject({ code: 'job-id-taken', status: 409 });
  });

  it('answers 304 to whoever holds the newest revision, in any of the ways to say so', async () => {
    const { get } = await withJob();
    for (const held of [firstTag, `W/${firstTag}`, `"0", ${firstTag}`, '*']) {
      const answer = await get(at, { 'if-none-match': held });
      expect([answer.status, await answer.text(), answer.headers.get('etag')]).toEqual([304, '', firstTag]);
    }
    for (const other of ['"1"', etagFor(1, `${saltglass} `), etagFor(2, saltglass)])
      expect((await get(at, { 'if-none-match': other })).status).toBe(200);
  });

  it('saves over the revision that was read and refuses a stale save, changing nothing', async () => {
    const { send, get } = await withJob();
    const second = variantOf(saltglass, { title: 'Second' });
    const answer = await send('PUT', at, second, { 'if-match': firstTag });
    expect(answer.status).toBe(200);
    expect(answer.headers.get('etag')).toBe(etagFor(2, second));
    expect(await answer.json()).toMatchObject({ revision: 2 });
    const late = await send('PUT', at, variantOf(saltglass, { title: 'Late' }), { 'if-match': firstTag });
    expect(late.status).toBe(412);
    expect(late.headers.get('content-type')).toBe('application/problem+json');
    expect(await late.json()).toMatchObject({
      code: 'stale-revision',
      currentRevision: 2,
      currentEtag: etagFor(2, second),
    });
    expect(await (await get(at)).text()).toBe(second);
  });

  it('refuses a save made from another text of the same number, as after the store was put back', async () => {
    const { send, get } = await withJob();
    const elsewhere = variantOf(saltglass, { title: 'Of another store' });
    const next = variantOf(elsewhere, { title: 'Made from that' });
    for (const held of [etagFor(1, elsewhere), '"1"']) {
      for (const answer of [
        await send('PUT', at, next, { 'if-match': held }),
        await send('DELETE', at, undefined, { 'if-match': held }),
      ])
        expect([answer.status, (await answer.json()).currentEtag]).toEqual([412, firstTag]);
      expect((await get(at, { 'if-none-match': held })).status).toBe(200);
    }
    expect(await (await get(at)).text()).toBe(saltglass);
    expect((await (await get(`${at}/revisions`)).json()).revisions).toHaveLength(1);
  });

  it('takes a tag that was weakened on its way, and the one that the list tells', async () => {
    const { send, get } = await withJob();
    const weak = await send('PUT', at, saltglass, { 'if-match': `W/${firstTag}` });
    expect([weak.status, weak.headers.get('etag')]).toEqual([200, etagFor(2, saltglass)]);
    const { jobs } = await (await get('/api/jobs')).json();
    expect(jobs[0].etag).toBe(etagFor(2, saltglass));
    expect(jobs[0]).not.toHaveProperty('tag');
    expect((await send('DELETE', at, undefined, { 'if-match': jobs[0].etag })).status).toBe(204);
    expect((await send('POST', `${at}/restore`)).headers.get('etag')).toBe(jobs[0].etag);
  });

  it('wants to know which revision is to be replaced', async () => {
    const { send } = await withJob();
    const without = await send('PUT', at, saltglass);
    const faulty = await send('PUT', at, saltglass, { 'if-match': '"one"' });
    const any = await send('DELETE', at, undefined, { 'if-match': '*' });
    expect([without.status, faulty.status, any.status]).toEqual([428, 400, 400]);
    expect((await without.json()).code).toBe('if-match-missing');
  });

  it('refuses a job whose id is not the one in the address, and one that is not there', async () => {
    const { send, get } = await withJob();
    const other = variantOf(saltglass, { id: 'another' });
    const differs = await send('PUT', at, other, { 'if-match': firstTag });
    const missing = await send('PUT', '/api/jobs/another', other, { 'if-match': firstTag });
    expect([differs.status, (await differs.json()).code]).toEqual([422, 'id-differs']);
    expect([missing.status, (await missing.json()).code]).toEqual([404, 'no-such-job']);
    expect((await get('/api/jobs/another')).status).toBe(404);
  });

  it('saves as an autosave when asked, else by hand, and as nothing else', async () => {
    const { send, get } = await withJob();
    await send('PUT', `${at}?how=autosave`, saltglass, { 'if-match': firstTag });
    await send('PUT', at, saltglass, { 'if-match': etagFor(2, saltglass) });
    const { revisions } = await (await get(`${at}/revisions`)).json();
    expect(revisions.map(({ how }: { how: string }) => how)).toEqual(['by-hand', 'autosave', 'by-hand']);
    expect(revisions[0]).toMatchObject({ revision: 3, keptFor: null, bytes: Buffer.byteLength(saltglass) });
    const wrong = await send('PUT', `${at}?how=never`, saltglass, { 'if-match': etagFor(3, saltglass) });
    expect(wrong.status).toBe(400);
    expect((await wrong.json()).faults[0].path).toBe('query.how');
  });

  it('removes a job and brings it back as it was', async () => {
    const { send, get } = await withJob();
    const stale = await send('DELETE', at, undefined, { 'if-match': etagFor(7, saltglass) });
    expect(stale.status).toBe(412);
    expect((await send('DELETE', at, undefined, { 'if-match': firstTag })).status).toBe(204);
    expect((await get(at)).status).toBe(404);
    expect((await send('DELETE', at, undefined, { 'if-match': firstTag })).status).toBe(404);
    const back = await send('POST', `${at}/restore`);
    expect([back.status, (await back.json()).revision]).toEqual([200, 1]);
    expect(await (await get(at)).text()).toBe(saltglass);
    expect((await send('POST', '/api/jobs/nobody/restore')).status).toBe(404);
  });

  it('lists the removed jobs when asked for them, and no other value of that question', async () => {
    const { send, get } = await withJob();
    await send('POST', '/api/jobs', variantOf(saltglass, { id: 'other' }));
    await send('DELETE', at, undefined, { 'if-match': firstTag });
    const listed = async (query: string) => {
      const { jobs } = await (await get(`/api/jobs${query}`)).json();
      return jobs.map(({ id, removedAt }: { id: string; removedAt: string | null }) => [
        id,
        removedAt !== null,
      ]);
    };
    expect(await listed('?removed=true')).toEqual([[saltglassId, true]]);
    expect(await listed('')).toEqual([['other', false]]);
    expect(await listed('?removed=false')).toEqual([['other', false]]);
    const faulty = await get('/api/jobs?removed=perhaps');
    expect([faulty.status, (await faulty.json()).faults[0].path]).toEqual([400, 'query.removed']);
  });

  it('reads and keeps single revisions', async () => {
    const { send, get } = await withJob();
    await send('PUT', at, variantOf(saltglass, { title: 'Second' }), { 'if-match': firstTag });
    const first = await get(`${at}/revisions/1`);
    expect(await first.text()).toBe(saltglass);
    expect(first.headers.get('etag')).toBe(firstTag);
    expect((await get(`${at}/revisions/1`, { 'if-none-match': firstTag })).status).toBe(304);
    expect((await get(`${at}/revisions/9`)).status).toBe(404);
    expect((await get(`${at}/revisions/zero`)).status).toBe(400);
    expect((await get('/api/jobs/nobody/revisions')).status).toBe(404);
    const keep = `${at}/revisions/1/keep`;
    expect((await send('PUT', keep, '{"keptFor":"quoted"}')).status).toBe(204);
    const { revisions } = await (await get(`${at}/revisions`)).json();
    expect(revisions[1].keptFor).toBe('quoted');
    expect((await send('PUT', `${at}/revisions/9/keep`, '{"keptFor":"named"}')).status).toBe(404);
    const wrong = await send('PUT', keep, '{"keptFor":"ever"}');
    expect([wrong.status, (await wrong.json()).faults[0].path]).toEqual([422, 'keptFor']);
  });
});

describe('a job that cannot be read', () => {
  it('is refused with every fault, each with its path and a remedy', async () => {
    const { send, get } = await testApp();
    const answer = await send('POST', '/api/jobs', variantOf(saltglass, { title: 7, colour: 'red' }));
    expect(answer.status).toBe(422);
    const body = await answer.json();
    expect(body.code).toBe('job-unreadable');
    expect(body.faults.map(({ path }: { path: string }) => path)).toEqual(['title', 'colour']);
    for (const fault of body.faults) expect(fault.remedy).not.toBe('');
    expect((await (await get('/api/jobs')).json()).jobs).toEqual([]);
  });

  it('is refused with line and column when it is no JSON', async () => {
    const answer = await (await testApp()).send('POST', '/api/jobs', '{\n  "id": ,\n}');
    expect(answer.status).toBe(400);
    expect(await answer.json()).toMatchObject({
      code: 'not-json',
      faults: [{ path: 'line 2, column 9' }],
    });
  });

  it('is refused when it is not UTF-8', async () => {
    const { app } = await testApp();
    const answer = await app.request('/api/jobs', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: new Uint8Array([0x22, 0xff, 0xfe, 0x22]),
    });
    expect([answer.status, (await answer.json()).code]).toEqual([400, 'not-utf-8']);
  });

  it('lists a hundred faults at most and says how many more there are', async () => {
    const points = Array.from({ length: 200 }, () => ({}));
    const answer = await (await testApp()).send('POST', '/api/jobs', variantOf(saltglass, { points }));
    const body = await answer.json();
    expect(answer.status).toBe(422);
    expect(body.faults).toHaveLength(100);
    expect(body.moreFaults).toBeGreaterThan(100);
  });

  it.each([
    ['a hundred thousand lists in each other', `${'['.repeat(100_000)}${']'.repeat(100_000)}`],
    ['a hundred thousand groups in each other', `${'{"a":'.repeat(100_000)}1${'}'.repeat(100_000)}`],
    [
      'a depth bomb inside a job',
      saltglass.replace('"title":', `"deep":${'['.repeat(1e5)}${']'.repeat(1e5)},"title":`),
    ],
    ['a hundred thousand points', variantOf(saltglass, { points: Array.from({ length: 1e5 }, () => ({})) })],
    [
      'twenty thousand keys',
      JSON.stringify(Object.fromEntries(Array.from({ length: 2e4 }, (_, i) => [`k${i}`, i]))),
    ],
    ['a key of a million letters', JSON.stringify({ ['k'.repeat(1e6)]: 1 })],
    [
      'half a million values',
      JSON.stringify(Array.from({ length: 500 }, () => Array.from({ length: 1000 }, () => 0))),
    ],
  ])('is refused at once when it holds %s', async (_name, text) => {
    const started = performance.now();
    const answer = await (await testApp()).send('POST', '/api/jobs', text);
    expect([answer.status, (await answer.json()).code]).toEqual([422, 'beyond-bounds']);
    expect(performance.now() - started).toBeLessThan(3000);
  });

  it('is explained within seconds however much is wrong within bounds', async () => {
    const rows = Array.from({ length: 2000 }, () => ({ sparks: 1 }));
    const text = variantOf(saltglass, {
      points: rows,
      legs: rows,
      circuits: rows,
      readings: rows,
      schemes: rows,
    });
    const started = performance.now();
    const answer = await (await testApp()).send('POST', '/api/jobs', text);
    expect([answer.status, (await answer.json()).code]).toEqual([422, 'job-unreadable']);
    expect(performance.now() - started).toBeLessThan(15_000);
  });
});
