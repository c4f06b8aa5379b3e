import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { readDemoData } from '../../api/http/demo-data.ts';
import { putBackDemos } from '../../api/http/put-back-demos.ts';
import { demoText, etagFor, saltglass, saltglassId, testApp, variantOf } from './test-app.ts';
import { freshStores } from './test-stores.ts';

const fernlowId: string = JSON.parse(demoText('fernlow-close')).id;

describe('demo jobs', () => {
  it('are put on the list, and left alone when they are there, changed or not', async () => {
    const { send, get } = await testApp();
    expect(await (await send('POST', '/api/demos')).json()).toEqual({
      added: [saltglassId, fernlowId],
      kept: [],
    });
    const mine = variantOf(saltglass, { title: 'Mine now' });
    await send('PUT', `/api/jobs/${saltglassId}`, mine, { 'if-match': etagFor(1, saltglass) });
    expect(await (await send('POST', '/api/demos')).json()).toEqual({
      added: [],
      kept: [saltglassId, fernlowId],
    });
    expect(await (await get(`/api/jobs/${saltglassId}`)).text()).toBe(mine);
  });

  it('come back after they were removed with what was made of them', async () => {
    const { send, get } = await testApp();
    await send('POST', '/api/demos');
    const at = `/api/jobs/${saltglassId}`;
    const mine = variantOf(saltglass, { title: 'Mine now' });
    await send('PUT', at, mine, { 'if-match': etagFor(1, saltglass) });
    await send('DELETE', at, undefined, { 'if-match': etagFor(2, mine) });
    expect((await (await send('POST', '/api/demos')).json()).added).toEqual([saltglassId]);
    const back = await get(at);
    expect([back.headers.get('etag'), await back.text()]).toEqual([etagFor(2, mine), mine]);
    expect((await (await get('/api/jobs?removed=true')).json()).jobs).toEqual([]);
  });

  it('are noted as offered', async () => {
    const stores = await freshStores();
    expect(await stores.firm.demosOffered()).toBe(false);
    await putBackDemos(stores, [saltglass]);
    expect(await stores.firm.demosOffered()).toBe(true);
  });

  it('are read from the data folder, and so is the demo library', async () => {
    const data = await readDemoData(fileURLToPath(new URL('../../data', import.meta.url)));
    expect(data.demoJobs).toContain(saltglass);
    expect(data.demoJobs.length).toBeGreaterThan(2);
    expect(data.demoLibrary).toEqual(demoLibrary());
  });

  it('all have ids of their own', async () => {
    const data = await readDemoData(fileURLToPath(new URL('../../data', import.meta.url)));
    const ids = data.demoJobs.map((text) => JSON.parse(text).id);
    expect(new Set(ids).size).toBe(ids.length);
  });
});
