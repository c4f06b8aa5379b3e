import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { knownTasks } from '#engine/labour/known-tasks.ts';
import { knownItems } from '#engine/takeoff/items.ts';
import { estimateFile } from '#exports/estimate-file.ts';
import { papersOf } from '#exports/papers.ts';
import { readJobText } from '#model/read-job.ts';
import { etagFor, saltglass, saltglassId, testApp, variantOf } from './test-app.ts';

const at = `/api/jobs/${saltglassId}`;
const demoTag = etagFor(0, `${JSON.stringify(demoLibrary(), null, 2)}\n`);

async function withJob() {
  const made = await testApp();
  await made.send('POST', '/api/jobs', saltglass);
  return made;
}

function expectedJson(date: string, revision: number, library = demoLibrary()): string {
  const read = readJobText(saltglass);
  if (!read.ok) throw new Error('the demo job cannot be read');
  const papers = papersOf(read.job, library, { date, revision, schemeId: null });
  if (papers === null) throw new Error('no papers of the demo job');
  return estimateFile({ job: read.job, library, papers });
}

/** The demo library with labour that costs nothing. */
const freeLabour = () => {
  const library = demoLibrary();
  return { ...library, norms: { ...library.norms, ratePencePerHour: 0 } };
};

describe('the estimate of a kept job', () => {
  it('is what the engine says, today and of the newest revision unless asked otherwise', async () => {
    const { get } = await withJob();
    expect(await (await get(`${at}/estimate`)).text()).toBe(expectedJson('2026-11-25', 1));
    expect(await (await get(`${at}/estimate?date=2027-01-02`)).text()).toBe(expectedJson('2027-01-02', 1));
  });

  it('works out one scheme when asked', async () => {
    const { get } = await withJob();
    const { schemes } = await (await get(`${at}/estimate?scheme=two-on-one`)).json();
    expect(schemes.map(({ id, complies }: { id: string; complies: string }) => [id, complies])).toEqual([
      ['two-on-one', 'no'],
    ]);
  });

  it('tells what of the shown scheme is open, what to buy meanwhile and what goes back', async () => {
    const inCase = variantOf(saltglass, {
      packFor: [{ question: 'box/r1-hallway', outcomes: ['deep', 'shallow'] }],
    });
    const { send } = await testApp();
    const { packing } = await (await send('POST', '/api/estimate', inCase)).json();
    expect(packing.extraPence).toBe(72);
    expect(packing.takeBack.map(({ question }: { question: string | null }) => question)).toEqual([
      null,
      'box/r1-hallway',
    ]);
  });

  it('names the schemes there are when asked for another', async () => {
    const { get } = await withJob();
    const answer = await get(`${at}/estimate?scheme=nothing`);
    const body = await answer.json();
    expect([answer.status, body.code]).toEqual([404, 'no-such-scheme']);
    expect(body.choices).toContain('spurs-rcbo');
    expect((await get('/api/jobs/nobody/estimate')).status).toBe(404);
    expect((await get(`${at}/estimate?date=2026-02-30`)).status).toBe(400);
  });

  it('is priced with the firm’s own library once it has one', async () => {
    const { get, send } = await withJob();
    await send('PUT', '/api/library', JSON.stringify(freeLabour()), { 'if-match': demoTag });
    expect(await (await get(`${at}/estimate`)).text()).toBe(expectedJson('2026-11-25', 1, freeLabour()));
  });

  it('tells every fault of a kept text that this version cannot read', async () => {
    const made = await testApp();
    const heading = { id: 'odd', reference: '', title: '', customer: '', wantedPoints: 0, schemes: 0 };
    await made.stores.jobs.create(heading, variantOf(saltglass, { id: 'odd', version: 99 }));
    const answer = await made.get('/api/jobs/odd/estimate');
    expect([answer.status, (await answer.json()).code]).toEqual([422, 'job-unreadable']);
    expect((await made.get('/api/jobs/odd')).status).toBe(200);
  });
});

describe('the estimate of a posted job', () => {
  it('takes the job file itself', async () => {
    const answer = await (await testApp()).send('POST', '/api/estimate?packing=true', saltglass);
    expect(answer.status).toBe(200);
    expect(await answer.text()).toBe(expectedJson('2026-11-25', 1));
  });

  it('leaves out what is open unless it is asked for, and nothing else', async () => {
    const answer = await (await testApp()).send('POST', '/api/estimate', saltglass);
    const { packing, ...whole } = JSON.parse(expectedJson('2026-11-25', 1));
    expect(packing).toBeDefined();
    expect(await answer.text()).toBe(`${JSON.stringify(whole, null, 2)}\n`);
  });

  it('takes a job with library, date and revision, and keeps nothing', async () => {
    const { send, get } = await testApp();
    const body = JSON.stringify({
      job: JSON.parse(saltglass),
      library: freeLabour(),
      date: '2027-01-02',
      revision: 9,
    });
    expect(await (await send('POST', '/api/estimate?packing=true', body)).text()).toBe(
      expectedJson('2027-01-02', 9, freeLabour()),
    );
    expect((await (await get('/api/jobs')).json()).jobs).toEqual([]);
  });

  it('tells faults by their place in the body', async () => {
    const { send } = await testApp();
    const post = async (body: unknown) => {
      const answer = await send('POST', '/api/estimate', JSON.stringify(body));
      const { code, faults } = await answer.json();
      return [answer.status, code, faults[0]?.path];
    };
    const job = JSON.parse(saltglass);
    expect(await post({ ...job, title: 1 })).toEqual([422, 'job-unreadable', 'title']);
    expect(await post({ job: { ...job, title: 1 } })).toEqual([422, 'job-unreadable', 'job.title']);
    expect(await post({ job: 5 })).toEqual([422, 'job-unreadable', 'job']);
    expect(await post({ job, library: { firm: 1 } })).toEqual([422, 'library-unreadable', 'library.firm']);
    expect(await post({ job, date: 'tomorrow' })).toEqual([422, 'body-unreadable', 'date']);
    expect(await post({ job, colour: 1 })).toEqual([422, 'body-unreadable', 'colour']);
    expect(await post([])).toEqual([422, 'job-unreadable', 'file']);
  });
});

describe('the library', () => {
  it('is the demo library as revision 0 until the firm saves its own, to the byte', async () => {
    const { get, send } = await testApp();
    const demo = await get('/api/library');
    expect(demo.headers.get('etag')).toBe(demoTag);
    expect(await demo.json()).toEqual(demoLibrary());
    expect((await get('/api/library', { 'if-none-match': demoTag })).status).toBe(304);
    const own = `${JSON.stringify(freeLabour())}  \n`;
    const saved = await send('PUT', '/api/library', own, { 'if-match': demoTag });
    expect([saved.status, saved.headers.get('etag')]).toEqual([200, etagFor(1, own)]);
    const kept = await get('/api/library');
    expect([kept.headers.get('etag'), await kept.text()]).toEqual([etagFor(1, own), own]);
  });

  it('is not saved over a revision that was not read, nor when it cannot be read', async () => {
    const { get, send } = await testApp();
    const text = JSON.stringify(freeLabour());
    expect((await send('PUT', '/api/library', text)).status).toBe(428);
    await send('PUT', '/api/library', text, { 'if-match': demoTag });
    const stale = await send('PUT', '/api/library', text, { 'if-match': demoTag });
    expect([stale.status, (await stale.json()).currentRevision]).toEqual([412, 1]);
    const faulty = await send('PUT', '/api/library', '{"firm":{}}', { 'if-match': etagFor(1, text) });
    expect([faulty.status, (await faulty.json()).code]).toEqual([422, 'library-unreadable']);
    expect((await get('/api/library')).headers.get('etag')).toBe(etagFor(1, text));
  });
});

describe('a library made from another text of the same number', () => {
  const text = JSON.stringify(freeLabour());

  it('is refused before the first save, when the demo library is another by now', async () => {
    const { get, send } = await testApp();
    for (const held of [etagFor(0, 'an older demo library'), '"0"']) {
      const answer = await send('PUT', '/api/library', text, { 'if-match': held });
      expect([answer.status, (await answer.json()).currentEtag]).toEqual([412, demoTag]);
    }
    expect((await get('/api/library')).headers.get('etag')).toBe(demoTag);
  });

  it('is refused after it, and so is one of a number that is not there yet', async () => {
    const { get, send } = await testApp();
    const early = await send('PUT', '/api/library', text, { 'if-match': etagFor(1, text) });
    expect([early.status, (await early.json()).currentEtag]).toEqual([412, demoTag]);
    await send('PUT', '/api/library', text, { 'if-match': demoTag });
    const answer = await send('PUT', '/api/library', `${text} `, { 'if-match': etagFor(1, `${text}\n`) });
    expect([answer.status, (await answer.json()).currentEtag]).toEqual([412, etagFor(1, text)]);
    expect((await get('/api/library', { 'if-none-match': etagFor(1, `${text}\n`) })).status).toBe(200);
    expect(await (await get('/api/library')).text()).toBe(text);
  });
});

describe('the catalogue', () => {
  it('lists every item and task that an estimate can ask for, with the demo price or norm', async () => {
    const { items, tasks, libraryRevision } = await (await (await testApp()).get('/api/catalogue')).json();
    expect(libraryRevision).toBe(0);
    expect(items.map(({ id }: { id: string }) => id)).toEqual(knownItems.map(({ id }) => id));
    expect(tasks.map(({ id }: { id: string }) => id)).toEqual(knownTasks.map(({ id }) => id));
    for (const { id, price } of items) expect(price.item).toBe(id);
    for (const { id, norm } of tasks) expect(norm.task).toBe(id);
  });

  it('says null where the firm has no price or norm', async () => {
    const { get, send } = await testApp();
    const library = demoLibrary();
    const bare = {
      ...library,
      prices: { ...library.prices, items: [] },
      norms: { ...library.norms, tasks: [] },
    };
    await send('PUT', '/api/library', JSON.stringify(bare), { 'if-match': demoTag });
    const { items, tasks, libraryRevision } = await (await get('/api/catalogue')).json();
    expect(libraryRevision).toBe(1);
    expect(new Set(items.map(({ price }: { price: unknown }) => price))).toEqual(new Set([null]));
    expect(new Set(tasks.map(({ norm }: { norm: unknown }) => norm))).toEqual(new Set([null]));
  });
});
