import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { allKept, type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

const read = async (path: string): Promise<unknown> =>
  (await fetch(new URL(path, stage.server.address))).json();

describe('a page that is closed in the middle of a word', () => {
  it('asks first, and keeps what was typed even if it is closed all the same', async () => {
    const { page, context } = await stage.open('desk', '/jobs/saltglass3/price');
    const field = page.getByRole('textbox', { name: 'Travel, there and back' });
    await field.click();
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type('75');
    const asked = page.waitForEvent('dialog');
    await page.close({ runBeforeUnload: true });
    const dialog = await asked;
    expect(dialog.type()).toBe('beforeunload');
    const closed = page.waitForEvent('close');
    await dialog.accept();
    await closed;
    await expect.poll(() => read('/api/jobs/saltglass3')).toMatchObject({ terms: { travelMin: 75 } });
    await context.close();
  });
});

/**
 * From now on nothing that this window sends to be kept gets out. In the window itself: what its browser holds up on the way is
 * let go when the window is closed, and would arrive after all.
 */
const cutOff = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const send = globalThis.fetch.bind(globalThis);
    globalThis.fetch = (to, init) =>
      init?.method === 'PUT' ? Promise.reject(new TypeError('cut off')) : send(to, init);
  });

describe('a job whose changes the server could not be given', () => {
  it('is left without being asked, since the device has them, and is as it was when it is opened again', async () => {
    const { page, context } = await stage.open('desk', '/jobs/saltglass3/price');
    await cutOff(page);
    await page.getByRole('textbox', { name: 'Travel, there and back' }).fill('91');
    await page.keyboard.press('Enter');
    await page.locator('keeping-line[keeping=not-kept][here]').waitFor();
    const closed = page.waitForEvent('close');
    await page.close({ runBeforeUnload: true });
    await closed;
    expect(await read('/api/jobs/saltglass3')).not.toMatchObject({ terms: { travelMin: 91 } });
    const again = await context.newPage();
    await again.goto('/', { waitUntil: 'networkidle' });
    await expect.poll(() => read('/api/jobs/saltglass3')).toMatchObject({ terms: { travelMin: 91 } });
    await context.close();
  });
});

describe('the firm’s page left while the server is away', () => {
  it('loses nothing: every page says so, and it is kept once the server is back', async () => {
    const { page, context } = await stage.open('desk', '/firm');
    await page.route('**/api/library', (route) =>
      route.request().method() === 'PUT' ? route.abort() : route.continue(),
    );
    const name = page.getByRole('textbox', { name: 'Name' }).first();
    await name.fill('Typed in the cellar');
    await name.press('Enter');
    await page.locator('keeping-line[keeping=not-kept][here]').waitFor();
    await page.getByRole('link', { name: 'All jobs' }).click();
    await page.getByRole('heading', { name: 'Jobs', exact: true }).waitFor();
    await page
      .getByText('Your changes to the firm’s library are not sent yet: they are kept on this device.')
      .waitFor();
    await page.unroute('**/api/library');
    await page.getByRole('link', { name: 'Firm, prices and norms' }).first().click();
    expect(await name.inputValue()).toBe('Typed in the cellar');
    await page.getByRole('button', { name: 'Try now' }).click();
    await allKept(page);
    expect(await read('/api/library')).toMatchObject({ firm: { name: 'Typed in the cellar' } });
    await context.close();
  });
});

describe('a new job', () => {
  it('that is left untouched is not on the list; one with a point in it stays', async () => {
    const { page, context } = await stage.open('desk', '/');
    await page.locator('job-row').first().waitFor();
    const before = await page.locator('job-row').count();
    await page.getByRole('button', { name: 'New job', exact: true }).click();
    await page.waitForURL(/\/jobs\//);
    await page.getByRole('heading', { name: 'As found' }).waitFor();
    await page.goBack();
    await page.locator('job-row').first().waitFor();
    await page.getByText('Deleted jobs (1)').waitFor();
    expect(await page.locator('job-row').count()).toBe(before);
    await page.getByRole('button', { name: 'New job', exact: true }).click();
    await page.getByRole('link', { name: /^Wanted/ }).click();
    await page.getByRole('button', { name: 'Add it without a place' }).click();
    await page.getByRole('link', { name: 'All jobs' }).click();
    await page.locator('job-row').first().waitFor();
    await expect.poll(() => page.locator('job-row').count()).toBe(before + 1);
    await context.close();
  });
});
