import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { ownLibrary } from '#tests/engine/own-library.ts';
import { tinyPng } from '#tests/http/photos.ts';
import { allKept, expectUsable, priceOn, type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

const jobId = 'saltglass3';
const papers = `/jobs/${jobId}/papers`;
const api = (path: string): string => `${stage.server.address}/api${path}`;
const listed = async () => (await (await fetch(api(`/jobs/${jobId}/quotations`))).json()).quotations;
const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).first().click();
const reasonOf = (page: Page) =>
  page.getByLabel('What was found and what is done about it, in words for the customer');
const photo = { name: 'joist.png', mimeType: 'image/png', buffer: Buffer.from(tinyPng) };

/** A firm with prices of its own, and a quotation that its customer has accepted. */
async function accepted(): Promise<void> {
  const etagOf = async (path: string): Promise<string> => (await fetch(api(path))).headers.get('etag') ?? '';
  const send = async (method: string, path: string, base: string, body: unknown): Promise<void> => {
    const headers = { 'content-type': 'application/json', 'if-match': base };
    const answer = await fetch(api(path), { method, headers, body: JSON.stringify(body) });
    expect([path, answer.ok]).toEqual([path, true]);
  };
  await send('PUT', '/library', await etagOf('/library'), ownLibrary());
  const issue = { id: 'q'.repeat(10), date: '2026-11-27', library: await etagOf('/library') };
  await send('POST', `/jobs/${jobId}/quotations`, await etagOf(`/jobs/${jobId}`), issue);
  const [{ id, etag, offers }] = await listed();
  const note = {
    kind: 'accepted',
    schemeId: offers[0].schemeId,
    by: 'W. Saltglass',
    how: 'signed',
    on: '2026-11-27',
    earlyStart: true,
  };
  await send('POST', `/jobs/${jobId}/quotations/${id}/notes`, etag, note);
}

describe('a surprise that no drawing shows', () => {
  it('is put in words and priced on site, outlasts a reload and a lost connection, and is agreed to', async () => {
    await accepted();
    const [{ contractPence }] = await listed();
    const { page, troubles } = await stage.open('phone', papers);
    page.setDefaultTimeout(30_000);
    await page.getByText('Nothing has changed so far.').waitFor();
    await page.locator('variation-form input[type=file]').setInputFiles(photo);
    await page.getByAltText('Photo 1 for this variation').waitFor();
    await reasonOf(page).fill('The joist beside the chimney is rotten at its end.');
    await reasonOf(page).blur();
    await page.reload({ waitUntil: 'networkidle' });
    await page.getByAltText('Photo 1 for this variation').waitFor();
    expect(await reasonOf(page).inputValue()).toBe('The joist beside the chimney is rotten at its end.');

    await press(page, 'Add work not on the drawing');
    await press(page, 'Add it to the price');
    await page.getByText('Give minutes of work, or what its materials cost.').waitFor();
    await page.getByLabel('What is done, in words for the customer').fill('Bolt a new joist beside it');
    await page.getByLabel('Minutes of work').fill('90');
    await page.getByLabel('Its materials cost').fill('24.50');
    await page.getByLabel('Its materials cost').blur();
    await expectUsable(page, 'work that is not on the drawing, being typed');
    await press(page, 'Add it to the price');
    await page.locator('money-moved').getByText('Bolt a new joist beside it').waitFor();
    await allKept(page);
    await expectUsable(page, 'a variation of work that is not on the drawing');

    // In the cellar there is no signal.
    await page.context().setOffline(true);
    await press(page, 'Put it to the customer');
    await page.getByText(/waits on this device with its words and its photos/).waitFor();
    await page.getByAltText('Photo 1 for this variation').waitFor();
    await page.context().setOffline(false);
    await press(page, 'Put it to the customer');
    await page.getByText('Waits for the customer’s answer: do not go on with it').waitFor();
    await press(page, 'The customer agrees');
    await page.getByLabel('How', { exact: true }).selectOption('signed');
    await press(page, 'Record: agreed');
    await page.locator('variation-card').getByText('Agreed', { exact: true }).waitFor();

    const [quotation] = await listed();
    const [variation] = quotation.variations;
    expect(variation.reason).toBe('The joist beside the chimney is rotten at its end.');
    expect(variation.photos.length).toBe(1);
    expect(variation.parts.map(({ words }: { words: string }) => words)).toEqual([
      'Bolt a new joist beside it',
    ]);
    expect(variation.afterPence - variation.beforePence).toBe(variation.parts[0].pence);
    expect(quotation.contractPence).toBe(contractPence + variation.parts[0].pence);
    await page.getByText('Nothing has changed so far.').waitFor();
    expect(await reasonOf(page).inputValue()).toBe('');
    expect(await page.getByAltText('Photo 1 for this variation').count()).toBe(0);
    expect(troubles.filter((words) => !/ERR_INTERNET_DISCONNECTED/.test(words))).toEqual([]);
    await page.close();
  }, 180_000);

  it('is in the price of a job before anybody is told of it, begun from the firm’s minutes for a fault, and undone', async () => {
    const { page, troubles } = await stage.open('desk', '/jobs/fernlow018/price');
    const before = await priceOn(page);
    await press(page, 'Add work not on the drawing');
    await page.getByLabel('Begin from').selectOption('fault-finding');
    const norm = demoLibrary().norms.tasks.find(({ task }) => task === 'fault-finding');
    const minutes = page.getByLabel('Minutes of work');
    expect(await minutes.inputValue()).toBe(String(norm?.typicalMin));
    await minutes.fill('120');
    await minutes.blur();
    await press(page, 'Add it to the price');
    await page
      .locator('extra-work summary', { hasText: 'Find the fault that the tests show, and mend it' })
      .waitFor();
    await page.getByText('120 min').first().waitFor();
    await expect.poll(() => priceOn(page)).toBeGreaterThan(before);
    await expectUsable(page, 'the price with work that is not on the drawing');
    await page.keyboard.press('Control+z');
    await expect.poll(() => priceOn(page)).toBe(before);
    await page.getByLabel('Parking is charged').selectOption('each-visit');
    await page.getByText(/^Parking, \d+ days? at £/).waitFor();
    expect(await priceOn(page)).toBeGreaterThan(before);
    expect(troubles).toEqual([]);
    await page.close();
  }, 120_000);
});
