import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { findList } from '#engine/price/list/find-columns.ts';
import { importPlan } from '#engine/price/list/import-plan.ts';
import { ownReading } from '#engine/price/list/own-list.ts';
import type { Sheet } from '#engine/price/list/sheet.ts';
import { etagFor, testApp } from './test-app.ts';

type Made = Awaited<ReturnType<typeof testApp>>;

const post = ({ app }: Made, body: string | Uint8Array<ArrayBuffer>): Promise<Response> =>
  Promise.resolve(
    app.request('/api/sheets', {
      method: 'POST',
      headers: { 'content-type': 'application/octet-stream' },
      body,
    }),
  );

describe('a file that is sent to be read', () => {
  it('comes back as rows, and nothing is kept', async () => {
    const made = await testApp();
    const before = await (await made.get('/api/library')).text();
    const answer = await post(made, 'Code;Price\nA1;"1,50"\n\nB2;=1+1\n');
    expect(answer.status).toBe(200);
    expect(await answer.json()).toEqual({
      sheets: [
        {
          name: '',
          rows: [
            { number: 1, cells: ['Code', 'Price'] },
            { number: 2, cells: ['A1', '1,50'] },
            { number: 4, cells: ['B2', '=1+1'] },
          ],
        },
      ],
    });
    expect(await (await made.get('/api/library')).text()).toBe(before);
  });

  it('is refused with the row and the remedy where it cannot be read', async () => {
    const answer = await post(await testApp(), 'Code,Price\nA1,2\n"B2,3\nC3,4\n');
    expect(answer.status).toBe(422);
    const said = await answer.json();
    expect(said).toMatchObject({ code: 'sheet-unreadable', faults: [{ path: 'row 3' }] });
    expect(said.detail).toContain('quotation mark');
  });
});

describe('the firm’s price list as a file', () => {
  it.each([
    ['csv', 'text/csv; charset=utf-8'],
    ['xlsx', 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet'],
  ])('goes out as %s and comes in again as it was', async (ending, mediaType) => {
    const made = await testApp();
    const answer = await made.get(`/api/library/exports/price-list.${ending}`);
    expect(answer.headers.get('content-type')).toBe(mediaType);
    expect(answer.headers.get('content-disposition')).toBe(`attachment; filename="price-list.${ending}"`);
    const read = await post(made, new Uint8Array(await answer.arrayBuffer()));
    const { sheets } = (await read.json()) as { readonly sheets: readonly Sheet[] };
    const found = findList(sheets, []);
    const { prices } = demoLibrary();
    const answers = { date: '2026-11-26', leftOut: new Set<number>() };
    const plan = importPlan(found?.rows ?? [], prices, ownReading, answers);
    expect([found?.how, plan.faults, plan.changes]).toEqual(['own', [], []]);
    expect(plan.same).toBeGreaterThan(200);
  });

  it('is the firm’s own once it has saved one', async () => {
    const made = await testApp();
    const { prices, ...library } = demoLibrary();
    const held = await (await made.get('/api/library')).text();
    const own = { ...library, prices: { ...prices, items: prices.items.slice(0, 1) } };
    const saved = await made.send('PUT', '/api/library', JSON.stringify(own), {
      'if-match': etagFor(0, held),
    });
    expect(saved.status).toBe(200);
    const text = await (await made.get('/api/library/exports/price-list.csv')).text();
    expect(text.trimEnd().split('\r\n')).toHaveLength(2);
  });
});
