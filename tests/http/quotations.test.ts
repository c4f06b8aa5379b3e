import { describe, expect, it } from 'vitest';
import { estimate } from '#engine/estimate.ts';
import { pounds } from '#engine/quotation/said.ts';
import { quotationOfJob } from '#exports/quotation-paper.ts';
import type { Job } from '#model/job.ts';
import { ownLibrary } from '#tests/engine/own-library.ts';
import { readPdf } from '#tests/exports/pdf-reader.ts';
import type { QuotationRecord } from '../../api/http/quotation-records.ts';
import { tinyPng, tinyWebp } from './photos.ts';
import { saltglass, saltglassId, testApp } from './test-app.ts';

const path = `/api/jobs/${saltglassId}/quotations`;
const schemeId = 'spurs-rcbo';
const date = '2026-11-25';

/** An app with a firm of its own and a job to quote. */
async function quotingApp() {
  const made = await testApp();
  const { send, get } = made;
  await send('PUT', '/api/library', JSON.stringify(ownLibrary()), {
    'if-match': (await get('/api/library')).headers.get('etag') ?? '',
  });
  const job: Job = { ...JSON.parse(saltglass), quoting: { schemes: [schemeId, 'ring-to-w2'] } };
  await send('POST', '/api/jobs', JSON.stringify(job));
  const etagAt = async (address: string): Promise<string> => (await get(address)).headers.get('etag') ?? '';
  const jobEtag = () => etagAt(`/api/jobs/${saltglassId}`);
  const issue = async (id: string, changes: { library?: string; job?: string; date?: string } = {}) =>
    send(
      'POST',
      path,
      JSON.stringify({
        id,
        date: changes.date ?? date,
        library: changes.library ?? (await etagAt('/api/library')),
      }),
      { 'if-match': changes.job ?? (await jobEtag()) },
    );
  const saveJob = async (change: (job: Job) => Job): Promise<void> => {
    const answer = await get(`/api/jobs/${saltglassId}`);
    const changed = change(await answer.json());
    const saved = await send('PUT', `/api/jobs/${saltglassId}`, JSON.stringify(changed), {
      'if-match': answer.headers.get('etag') ?? '',
    });
    expect(saved.status).toBe(200);
  };
  const list = async (): Promise<QuotationRecord[]> => (await (await get(path)).json()).quotations;
  const note = async (id: string, body: object, etag?: string) =>
    send('POST', `${path}/${id}/notes`, JSON.stringify(body), {
      'if-match': etag ?? (await list()).find((one) => one.id === id)?.etag ?? '',
    });
  const accept = (id: string) =>
    note(id, { kind: 'accepted', schemeId, by: 'A. Customer', how: 'signed', on: date, earlyStart: true });
  return { ...made, job, issue, saveJob, list, note, accept, jobEtag, etagAt };
}

const travelling =
  (minutes: number) =>
  (job: Job): Job => ({
    ...job,
    terms: { ...job.terms, travelMin: minutes },
  });

/** The walls of wanted points turn out to be concrete. */
const hardWalls = (job: Job): Job => {
  const walls = new Set(
    job.points.flatMap(({ status, place }) =>
      status === 'wanted' && place && 'wall' in place ? [place.wall] : [],
    ),
  );
  return {
    ...job,
    storeys: job.storeys.map((storey) => ({
      ...storey,
      walls: storey.walls.map((wall) => (walls.has(wall.id) ? { ...wall, core: 'concrete' as const } : wall)),
    })),
  };
};

const codeOf = async (answer: Response) => [answer.status, (await answer.json()).code];

describe('issuing a quotation', () => {
  it('freezes document, job and library as they were seen, and lists what is offered', async () => {
    const { issue, list, get, jobEtag } = await quotingApp();
    const answer = await issue('q1');
    expect(answer.status).toBe(201);
    const [record] = await list();
    expect(record).toMatchObject({ id: 'q1', revision: 1, date, status: 'issued', contractPence: null });
    expect(record?.offers.map((one) => one.schemeId)).toEqual([schemeId, 'ring-to-w2']);
    const document = await (await get(`${path}/q1/frozen/document`)).json();
    expect(document.schemes.map((one: { price: { grossPence: number } }) => one.price.grossPence)).toEqual(
      record?.offers.map(({ grossPence }) => grossPence),
    );
    expect(document.revision).toBe(1);
    expect([document.draft, document.notIssued]).toEqual([null, undefined]);
    expect(await (await get(`${path}/q1/frozen/job`)).text()).toBe(
      await (await get(`/api/jobs/${saltglassId}`)).text(),
    );
    expect(await (await get(`${path}/q1/frozen/library`)).text()).toBe(
      await (await get('/api/library')).text(),
    );
    const pdf = await get(`${path}/q1/quotation.pdf`);
    expect(pdf.headers.get('content-type')).toBe('application/pdf');
    expect(
      Buffer.from(await pdf.arrayBuffer())
        .subarray(0, 5)
        .toString(),
    ).toBe('%PDF-');
    expect(await jobEtag()).toMatch(/^"1-/);
  });

  it('leaves the job’s own paper with the next number', async () => {
    const { issue, get, job } = await quotingApp();
    const own = async () =>
      Buffer.from(
        await (await get(`/api/jobs/${saltglassId}/exports/quotation.pdf?date=${date}`)).arrayBuffer(),
      );
    const library = ownLibrary();
    const result = estimate(job, library, { date, revision: 1 });
    const numbered = async (revision: number) =>
      Buffer.from(await quotationOfJob({ job, library, estimate: result, revision }));
    expect((await own()).equals(await numbered(1))).toBe(true);
    await issue('q1');
    expect((await own()).equals(await numbered(2))).toBe(true);
    expect((await numbered(1)).equals(await numbered(2))).toBe(false);
  });

  it('makes one, however often it is asked for, and another under another id, which takes its place', async () => {
    const { issue, list } = await quotingApp();
    const first = await (await issue('q1')).json();
    const again = await issue('q1');
    expect([again.status, await again.json()]).toEqual([200, first]);
    expect(await list()).toHaveLength(1);
    expect((await issue('q2')).status).toBe(201);
    expect(
      (await list()).map(({ id, revision, status, replacedById }) => [id, revision, status, replacedById]),
    ).toEqual([
      ['q1', 1, 'replaced', 'q2'],
      ['q2', 2, 'issued', null],
    ]);
  });

  it('is refused on a job, prices or an id that moved on, and on what is not ready', async () => {
    const { issue, saveJob, jobEtag, etagAt, list, send } = await quotingApp();
    const [job, library] = [await jobEtag(), await etagAt('/api/library')];
    await saveJob(travelling(70));
    expect(await codeOf(await issue('q1', { job }))).toEqual([412, 'stale-revision']);
    await send('PUT', '/api/library', JSON.stringify(ownLibrary(), null, 1), { 'if-match': library });
    expect(await codeOf(await issue('q1', { library }))).toEqual([412, 'stale-library']);
    expect(await list()).toEqual([]);
    expect((await issue('q1')).status).toBe(201);
    expect(await codeOf(await issue('q1', { date: '2026-11-26' }))).toEqual([409, 'quotation-id-taken']);
    await saveJob((one) => ({ ...one, site: { ...one.site, customer: '' } }));
    const unready = await issue('q2');
    expect(unready.status).toBe(409);
    expect(await unready.json()).toMatchObject({ code: 'not-ready', faults: [{ path: 'as-found' }] });
    const without = await send('POST', path, '{}');
    expect(await codeOf(without)).toEqual([428, 'if-match-missing']);
  });

  it('leaves invented prices where they are', async () => {
    const { send, get } = await testApp();
    await send('POST', '/api/jobs', saltglass);
    const etag = (address: string) => get(address).then((answer) => answer.headers.get('etag') ?? '');
    const body = JSON.stringify({ id: 'q1', date, library: await etag('/api/library') });
    const answer = await send('POST', path, body, { 'if-match': await etag(`/api/jobs/${saltglassId}`) });
    expect(await codeOf(answer)).toEqual([409, 'not-ready']);
  });
});

describe('what was issued', () => {
  it('stays byte for byte, whatever is sent and whatever becomes of the job', async () => {
    const { issue, saveJob, accept, get, app, list, note } = await quotingApp();
    await issue('q1');
    const texts = ['document', 'drawings', 'job', 'library'];
    const frozen = () =>
      Promise.all(texts.map(async (text) => (await get(`${path}/q1/frozen/${text}`)).text()));
    const before = await frozen();
    await saveJob(travelling(90));
    await accept('q1');
    for (const method of ['PUT', 'PATCH', 'DELETE', 'POST'])
      for (const address of [`${path}/q1`, ...texts.map((text) => `${path}/q1/frozen/${text}`)]) {
        const answer = await app.request(address, {
          method,
          headers: { 'content-type': 'application/json', 'if-match': '*' },
          body: '{"document":{}}',
        });
        // Erasing goes by the history that was seen, and never of what is open.
        const refused = method === 'DELETE' && address === `${path}/q1` ? 400 : 405;
        expect([method, address, answer.status]).toEqual([method, address, refused]);
      }
    // A note that smuggles more in is no note.
    expect((await note('q1', { kind: 'declined', on: date, document: '{}' })).status).toBe(422);
    const [{ offers } = { offers: [] }] = await list();
    expect(offers).toHaveLength(2);
    expect(await frozen()).toEqual(before);
  });

  it('says what has moved since, to the penny', async () => {
    const { issue, saveJob, get } = await quotingApp();
    await issue('q1');
    await saveJob(travelling(95));
    const moved = await (await get(`${path}/q1/moved?scheme=${schemeId}`)).json();
    expect(moved.parts.map(({ words }: { words: string }) => words)).toEqual(['Travel']);
    const sum = moved.parts.reduce(
      (all: number, one: { figures: { grossPence: number } }) => all + one.figures.grossPence,
      0,
    );
    expect(sum).toBe(moved.afterPence - moved.beforePence);
    expect(await codeOf(await get(`${path}/q1/moved?scheme=fused-beds`))).toEqual([404, 'no-such-scheme']);
  });
});

describe('what became of a quotation', () => {
  it('is noted once, on the history that was seen, and may be taken back', async () => {
    const { issue, accept, list, note } = await quotingApp();
    await issue('q1');
    const seen = (await list())[0]?.etag;
    expect((await accept('q1')).status).toBe(200);
    const [record] = await list();
    expect(record).toMatchObject({ status: 'accepted', contractPence: record?.offers[0]?.grossPence });
    expect(record?.acceptance).toMatchObject({ by: 'A. Customer', how: 'signed', earlyStart: true });
    expect(await codeOf(await note('q1', { kind: 'declined', on: date }, seen))).toEqual([
      412,
      'stale-revision',
    ]);
    expect(await codeOf(await note('q1', { kind: 'declined', on: date }))).toEqual([409, 'not-now']);
    expect(await codeOf(await issue('q2'))).toEqual([409, 'not-now']);
    expect((await note('q1', { kind: 'taken-back', of: record?.mayTakeBack })).status).toBe(200);
    expect((await list())[0]).toMatchObject({ status: 'issued', acceptance: null, mayTakeBack: null });
    expect((await list())[0]?.events.map(({ note: { kind } }) => kind)).toEqual([
      'issued',
      'accepted',
      'taken-back',
    ]);
  });

  it('names somebody and a day', async () => {
    const { issue, note } = await quotingApp();
    await issue('q1');
    for (const wrong of [
      { kind: 'accepted', schemeId, by: ' ', how: 'signed', on: date },
      { kind: 'accepted', schemeId, by: 'A', how: 'signed', on: 'today' },
      { kind: 'accepted', schemeId, by: 'A', how: 'guessed', on: date },
      { kind: 'issued' },
      { kind: 'replaced', byId: 'q9' },
    ])
      expect(await codeOf(await note('q1', wrong))).toEqual([422, 'body-unreadable']);
    expect(await codeOf(await note('none', { kind: 'declined', on: date }, '"1-a"'))).toEqual([
      404,
      'no-such-quotation',
    ]);
  });
});

describe('a variation', () => {
  const offered = async (made: Awaited<ReturnType<typeof quotingApp>>, id: string, changes: object = {}) => {
    const { send, list, jobEtag } = made;
    const body = {
      id,
      reason: 'The wall is concrete.',
      photos: [],
      job: await jobEtag(),
      differencePence: 0,
      ...changes,
    };
    return send('POST', `${path}/q1/variations`, JSON.stringify(body), {
      'if-match': (await list())[0]?.etag ?? '',
    });
  };

  it('is priced with what was quoted, agreed, and added to the contract; the next one lies upon it', async () => {
    const made = await quotingApp();
    const { issue, accept, saveJob, list, note, app, send, get, etagAt } = made;
    await issue('q1');
    await accept('q1');
    expect(await codeOf(await offered(made, 'v1'))).toEqual([409, 'not-now']);
    await saveJob(hardWalls);
    // Dearer prices of today have no say in agreed work.
    const library = ownLibrary();
    const dearer = { ...library, norms: { ...library.norms, ratePencePerHour: 99_000 } };
    await send('PUT', '/api/library', JSON.stringify(dearer), { 'if-match': await etagAt('/api/library') });
    const kept = await app.request('/api/assets', {
      method: 'POST',
      headers: { 'content-type': 'application/octet-stream' },
      body: tinyPng,
    });
    const photo = (await kept.json()).id;
    expect(await codeOf(await offered(made, 'v1', { photos: ['0'.repeat(64)] }))).toEqual([
      404,
      'no-such-photo',
    ]);
    // A sum that was not shown is not offered; the true one is that of the walls.
    expect(await codeOf(await offered(made, 'v1', { photos: [photo], differencePence: 1 }))).toEqual([
      409,
      'not-now',
    ]);
    const contract = (await list())[0]?.contractPence ?? 0;
    const differencePence = await priceOfWalls(made);
    expect(differencePence).toBeGreaterThan(0);
    const answer = await offered(made, 'v1', { photos: [photo], differencePence });
    expect(answer.status).toBe(201);
    expect((await offered(made, 'v1', { photos: [photo], differencePence })).status).toBe(200);
    expect(await codeOf(await offered(made, 'v2', { differencePence }))).toEqual([409, 'not-now']);
    const agreed = {
      kind: 'variation-agreed',
      variationId: 'v1',
      by: 'A. Customer',
      how: 'in-person',
      on: date,
    };
    expect((await note('q1', agreed)).status).toBe(200);
    const [record] = await list();
    expect(record?.contractPence).toBe(contract + differencePence);
    const [variation] = record?.variations ?? [];
    expect(variation).toMatchObject({
      number: 1,
      status: 'agreed',
      beforePence: contract,
      afterPence: contract + differencePence,
      photos: [photo],
      beforeJobRevision: 1,
      jobRevision: 2,
    });
    expect(variation?.parts.reduce((sum, { pence }) => sum + pence, 0)).toBe(differencePence);
    expect(await (await get(`${path}/q1/variations/v1/job`)).json()).toEqual(
      await (await get(`/api/jobs/${saltglassId}`)).json(),
    );
    const pdf = await get(`${path}/q1/variations/v1/variation.pdf`);
    expect(pdf.headers.get('content-disposition')).toBe('attachment; filename="rw-0001-variation-1.pdf"');
    const read = await readPdf(new Uint8Array(await pdf.arrayBuffer()));
    const words = read.pages.join(' ').replace(/\s+/g, ' ');
    expect(words).toContain(`This change, VAT included +${pounds(differencePence)}`);
    expect(words).toContain(`The work with it, VAT included ${pounds(contract + differencePence)}`);
    for (const said of ['The wall is concrete.', 'Your answer: yes', 'A. Customer', 'Photo 1'])
      expect(words).toContain(said);
    // The picture and its mask.
    expect(read.images).toBe(2);
    expect(await codeOf(await get(`${path}/q1/variations/v9/variation.pdf`))).toEqual([
      404,
      'no-such-variation',
    ]);
    // Nothing has changed since it was agreed.
    expect(await codeOf(await offered(made, 'v2'))).toEqual([409, 'not-now']);
  });

  /** What the server says it comes to, by the engine’s own front door: both jobs with the quoted library. */
  async function priceOfWalls({ send, job }: Awaited<ReturnType<typeof quotingApp>>): Promise<number> {
    const grossOf = async (one: Job): Promise<number> => {
      const terms = { ...one.terms, contingencyPercent: one.terms.contingencyPercent ?? 0 };
      const body = JSON.stringify({ job: { ...one, terms }, library: ownLibrary(), date });
      const { schemes } = await (await send('POST', '/api/estimate', body)).json();
      return schemes.find(({ id }: { id: string }) => id === schemeId).totals.grossPence;
    };
    return (await grossOf(hardWalls(job))) - (await grossOf(job));
  }
});

describe('photos', () => {
  const send = async (bytes: Uint8Array<ArrayBuffer>) => {
    const { app, get } = await testApp();
    const answer = await app.request('/api/assets', {
      method: 'POST',
      headers: { 'content-type': 'application/octet-stream' },
      body: bytes,
    });
    return { answer, get };
  };

  it('come back as the picture that they are, as a file, and are not guessed at', async () => {
    const { answer, get } = await send(tinyPng);
    expect(answer.status).toBe(201);
    const { id } = await answer.json();
    const read = await get(`/api/assets/${id}`);
    expect(Buffer.from(await read.arrayBuffer()).equals(Buffer.from(tinyPng))).toBe(true);
    expect(read.headers.get('content-type')).toBe('image/png');
    expect(read.headers.get('x-content-type-options')).toBe('nosniff');
    expect(read.headers.get('content-disposition')).toMatch(
      /^attachment; filename="photo-[0-9a-f]{8}\.png"$/,
    );
    expect(read.headers.get('content-security-policy')).toContain("default-src 'none'");
    expect((await get(`/api/assets/${id}`, { 'if-none-match': `"${id}"` })).status).toBe(304);
    expect(await codeOf(await get(`/api/assets/${'f'.repeat(64)}`))).toEqual([404, 'no-such-photo']);
  });

  it('are WebP as well, by their own length', async () => {
    expect((await send(tinyWebp)).answer.status).toBe(201);
    const cut = await send(tinyWebp.slice(0, 30));
    expect(cut.answer.status).toBe(422);
  });

  it.each([
    ['a page', '<html><script>alert(1)</script></html>'],
    ['a drawing that can carry scripts', '<svg xmlns="http://www.w3.org/2000/svg"><script/></svg>'],
    ['a PDF', '%PDF-1.7\n'],
    ['half a JPEG', '\u00ff\u00d8\u00ff\u00e0 broken off'],
    ['a sound in the wrapping of WebP', 'RIFF\u0004\u0000\u0000\u0000WAVE'],
    ['nothing', ''],
  ])('are not %s', async (_, text) => {
    const { answer } = await send(new Uint8Array(Buffer.from(text, 'latin1')));
    expect(await codeOf(answer)).toEqual([422, 'photo-unreadable']);
  });
});

describe('the pack of finished work', () => {
  it('tells what was done otherwise than the accepted quotation says', async () => {
    const { issue, accept, saveJob, get } = await quotingApp();
    expect((await issue('q-built')).status).toBe(201);
    expect((await accept('q-built')).status).toBe(200);
    await saveJob((job) => ({
      ...job,
      built: { scheme: schemeId, on: '2026-12-03' },
      points: job.points.map((point) => (point.label === 'W3' ? { ...point, kind: 'socket-single' } : point)),
    }));
    const pack = await get(`/api/jobs/${saltglassId}/exports/papers.pdf?scheme=${schemeId}`);
    const text = (await readPdf(new Uint8Array(await pack.arrayBuffer()))).pages.join(' ');
    expect(text).toContain('Papers of the work as built');
    expect(text).toContain('As agreed, and no longer so');
    expect(text.replaceAll(/\s+/g, ' ')).toMatch(/As built, in its place or beside it: .*single/);
    const other = await get(`/api/jobs/${saltglassId}/exports/papers.pdf?scheme=two-on-one`);
    expect((await readPdf(new Uint8Array(await other.arrayBuffer()))).pages[0]).toContain(
      'Papers for the work',
    );
  });
});
