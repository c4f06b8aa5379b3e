import { describe, expect, it } from 'vitest';
import type { Job } from '#model/job.ts';
import { readJobText } from '#model/read-job.ts';
import { ownLibrary } from '#tests/engine/own-library.ts';
import { tinyPng, tinyWebp } from './photos.ts';
import { saltglass, saltglassId, testApp } from './test-app.ts';

const jobPath = `/api/jobs/${saltglassId}`;
const path = `${jobPath}/quotations`;
const date = '2026-11-25';
const customer = 'Wilhelmina Quillfeather';
const address = '3 Saltglass Row, Tidewater End';
const telling = 'Mrs Quillfeather’s spare key hangs in the shed.';

/** A firm of its own with a job that names its customer in every way. */
async function app() {
  const made = await testApp();
  const { send, get } = made;
  const etag = async (at: string): Promise<string> => (await get(at)).headers.get('etag') ?? '';
  await send('PUT', '/api/library', JSON.stringify(ownLibrary()), { 'if-match': await etag('/api/library') });
  const photo = async (bytes: Uint8Array<ArrayBuffer>): Promise<string> => {
    const answer = await made.app.request('/api/assets', {
      method: 'POST',
      headers: { 'content-type': 'application/octet-stream' },
      body: bytes,
    });
    return (await answer.json()).id;
  };
  const underlay = await photo(tinyWebp);
  const demo: Job = JSON.parse(saltglass);
  const job: Job = {
    ...demo,
    title: `Sockets for ${customer}`,
    site: { ...demo.site, customer, address: [address, 'Saltmarrow'], notes: telling },
    quoting: { schemes: ['spurs-rcbo'], remarks: telling },
    assets: [{ id: underlay, name: 'plan.webp', mediaType: 'image/webp', bytes: tinyWebp.length }],
  };
  await send('POST', '/api/jobs', JSON.stringify(job));
  const issue = async (id: string): Promise<Response> =>
    send('POST', path, JSON.stringify({ id, date, library: await etag('/api/library') }), {
      'if-match': await etag(jobPath),
    });
  const list = async () => (await (await get(path)).json()).quotations;
  const seen = async (id: string): Promise<string> =>
    (await list()).find((one: { id: string }) => one.id === id)?.etag ?? '';
  const note = async (id: string, body: object): Promise<Response> =>
    send('POST', `${path}/${id}/notes`, JSON.stringify(body), { 'if-match': await seen(id) });
  const erase = async (id: string): Promise<Response> =>
    send('DELETE', `${path}/${id}`, '', { 'if-match': await seen(id) });
  const forget = async (): Promise<Response> =>
    send('POST', `${jobPath}/forget-customer`, '', { 'if-match': await etag(jobPath) });
  return { ...made, job, underlay, photo, etag, issue, list, note, erase, forget };
}

const codeOf = async (answer: Response) => [answer.status, (await answer.json()).code];
const withdrawn = { kind: 'withdrawn', on: date, words: telling };
const accepted = {
  kind: 'accepted',
  schemeId: 'spurs-rcbo',
  by: customer,
  how: 'signed',
  on: date,
  words: telling,
};

describe('erasing a quotation', () => {
  it('takes out all that it said and keeps its number: the next one is not called by it again', async () => {
    const { issue, note, erase, list, get } = await app();
    await issue('q1');
    await note('q1', withdrawn);
    const answer = await erase('q1');
    expect(answer.status).toBe(200);
    expect(await answer.json()).toMatchObject({
      id: 'q1',
      revision: 1,
      date,
      status: 'withdrawn',
      offers: [],
      mayTakeBack: null,
      lessened: { what: 'whole' },
    });
    expect(JSON.stringify(await list())).not.toContain('Quillfeather');
    for (const text of ['document', 'drawings', 'job', 'library'])
      expect(await codeOf(await get(`${path}/q1/frozen/${text}`))).toEqual([410, 'quotation-erased']);
    expect(await codeOf(await get(`${path}/q1/quotation.pdf`))).toEqual([410, 'quotation-erased']);
    expect(await codeOf(await note('q1', { kind: 'taken-back', of: 2 }))).toEqual([410, 'quotation-erased']);
    expect((await erase('q1')).status).toBe(200);
    expect((await issue('q2')).status).toBe(201);
    expect((await list()).map(({ revision }: { revision: number }) => revision)).toEqual([1, 2]);
  });

  it('is refused while it is open, when it is accepted, and on a history that moved on', async () => {
    const { issue, note, erase, send, list } = await app();
    await issue('q1');
    expect(await codeOf(await erase('q1'))).toEqual([409, 'not-now']);
    const [{ etag }] = await list();
    await note('q1', { kind: 'declined', on: date });
    expect(await codeOf(await send('DELETE', `${path}/q1`, '', { 'if-match': etag }))).toEqual([
      412,
      'stale-revision',
    ]);
    await note('q1', accepted);
    expect(await codeOf(await erase('q1'))).toEqual([409, 'not-now']);
    expect(await codeOf(await send('DELETE', `${path}/q9`, '', { 'if-match': etag }))).toEqual([
      404,
      'no-such-quotation',
    ]);
    expect((await list())[0]).toMatchObject({ status: 'accepted', lessened: null });
  });
});

describe('erasing a customer', () => {
  it('takes them out of the job, of all its kept states and of its papers; every figure stays', async () => {
    const { issue, note, forget, list, get, send, etag, job, underlay } = await app();
    await issue('q1');
    await note('q1', accepted);
    await send('PUT', jobPath, JSON.stringify({ ...job, reference: 'RW-7' }), {
      'if-match': await etag(jobPath),
    });
    const [before] = await list();
    const held = await etag(jobPath);
    const answer = await forget();
    expect(answer.status).toBe(200);
    const [after] = await list();
    expect(after).toMatchObject({
      status: 'accepted',
      contractPence: before.contractPence,
      offers: before.offers,
      lessened: { what: 'customer' },
      acceptance: { by: '(erased)', how: 'signed', on: date },
    });
    const papers = ['document', 'drawings', 'job', 'library'].map((text) => `${path}/q1/frozen/${text}`);
    const states = [1, 2].map((revision) => `${jobPath}/revisions/${revision}`);
    for (const place of [jobPath, ...states, ...papers, path, '/api/jobs']) {
      const text = await (await get(place)).text();
      expect(text.length).toBeGreaterThan(50);
      for (const word of ['Quillfeather', 'Tidewater', 'spare key', underlay])
        expect([place, word, text.includes(word)]).toEqual([place, word, false]);
    }
    const read = readJobText(await (await get(jobPath)).text());
    expect(read.ok && read.job.points.length).toBe(job.points.length);
    expect((await get(`${path}/q1/quotation.pdf`)).status).toBe(200);
    // Whoever still holds what was there cannot save it back unasked.
    expect(answer.headers.get('etag')).toBe(await etag(jobPath));
    expect(await codeOf(await send('PUT', jobPath, JSON.stringify(job), { 'if-match': held }))).toEqual([
      412,
      'stale-revision',
    ]);
    // The plan that they sent is nobody's now.
    expect((await get(`/api/assets/${underlay}`)).status).toBe(404);
  });

  it('waits until nothing is open, and for the job as it was seen', async () => {
    const { issue, forget, send, get } = await app();
    await issue('q1');
    expect(await codeOf(await forget())).toEqual([409, 'not-now']);
    expect(
      await codeOf(await send('POST', `${jobPath}/forget-customer`, '', { 'if-match': '"1-a"' })),
    ).toEqual([412, 'stale-revision']);
    expect(await (await get(jobPath)).text()).toContain(customer);
    expect(
      await codeOf(await send('POST', '/api/jobs/nobody/forget-customer', '', { 'if-match': '"1-a"' })),
    ).toEqual([404, 'no-such-job']);
  });

  it('of a variation takes what was found and its photos, and leaves its sums and what is agreed', async () => {
    const { issue, note, forget, list, get, send, etag, photo } = await app();
    await issue('q1');
    await note('q1', accepted);
    const answer = await get(jobPath);
    const job: Job = await answer.json();
    const dearer = { ...job, terms: { ...job.terms, filling: 'bonding-and-finish' } };
    await send('PUT', jobPath, JSON.stringify(dearer), { 'if-match': answer.headers.get('etag') ?? '' });
    const found = await photo(tinyPng);
    const offer = (differencePence: number) => async () =>
      send(
        'POST',
        `${path}/q1/variations`,
        JSON.stringify({
          id: 'v1',
          reason: telling,
          photos: [found],
          job: await etag(jobPath),
          differencePence,
        }),
        { 'if-match': (await list())[0].etag },
      );
    const moved = await get(`${path}/q1/moved`);
    const { parts } = await moved.json();
    const gross = parts.find(({ words }: { words: string }) => /[Pp]laster for cuts/.test(words))?.figures
      .grossPence;
    expect((await offer(gross)()).status).toBe(201);
    await note('q1', { kind: 'variation-agreed', variationId: 'v1', by: customer, how: 'message', on: date });
    const [before] = await list();
    expect(before.variations[0].work).toEqual({
      before: [expect.stringContaining('one coat')],
      now: [expect.stringContaining('two coats')],
    });
    expect((await forget()).status).toBe(200);
    const [after] = await list();
    expect(after.contractPence).toBe(before.contractPence);
    expect(after.variations[0]).toMatchObject({
      reason: '(erased)',
      work: null,
      photos: [],
      parts: before.variations[0].parts,
      status: 'agreed',
      decision: { by: '(erased)' },
    });
    expect((await get(`/api/assets/${found}`)).status).toBe(404);
    expect((await get(`${path}/q1/variations/v1/variation.pdf`)).status).toBe(200);
  });
});

describe('a removal of photos', () => {
  it('takes those that nothing refers to once they are a week old, and never one that something refers to', async () => {
    const { send, photo, get, underlay } = await app();
    const loose = await photo(tinyPng);
    expect(await (await send('POST', '/api/photo-sweeps', '')).json()).toEqual({ removed: 0, bytes: 0 });
    expect((await get(`/api/assets/${loose}`)).status).toBe(200);
    expect((await get(`/api/assets/${underlay}`)).status).toBe(200);
  });
});
