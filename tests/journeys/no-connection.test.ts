import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser, openWindow, type Size, type Window } from '../../scripts/product/browser.ts';
import { type RunningServer, startServer } from '../../scripts/product/running-server.ts';
import { allKept, expectUsable } from './stage.ts';

let browser: Browser;
let server: RunningServer;
let isUp = true;
beforeAll(async () => {
  [browser, server] = await Promise.all([openBrowser(), startServer()]);
});
afterAll(async () => {
  await browser.close();
  await server.close();
});

// A test that ends without a connection leaves none of its trouble to the next.
afterEach(async () => {
  if (!isUp) server = await server.again();
  isUp = true;
});

const read = async (path: string): Promise<unknown> => (await fetch(new URL(path, server.address))).json();

/** Opens a place of the product, and waits until the browser has all that it needs to do so alone. */
async function openKept(size: Size, path: string): Promise<Window> {
  const window = await openWindow(browser, server.address, size, true);
  await window.page.goto(path, { waitUntil: 'networkidle' });
  const isKept = (): boolean => navigator.serviceWorker.controller !== null;
  await expect.poll(() => window.page.evaluate(isKept), { timeout: 120_000 }).toBe(true);
  return window;
}

/** The server is gone, and the device knows that there is no connection: caches of the browser answer for neither. */
async function disconnect(context: BrowserContext): Promise<void> {
  isUp = false;
  await server.kill();
  await context.setOffline(true);
}

async function connect(context: BrowserContext): Promise<void> {
  server = await server.again();
  isUp = true;
  await context.setOffline(false);
}

/** What the device has copies of, by name; runs in the page. */
async function keptNames(): Promise<readonly string[]> {
  const answered = <T>(request: IDBRequest<T>): Promise<T> =>
    new Promise((resolve, reject) => {
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
  const database = await answered(indexedDB.open('ringwright'));
  const heads = await answered(database.transaction('heads').objectStore('heads').getAll());
  database.close();
  return heads.map(({ name }) => name).sort();
}

const travel = (page: Page) => page.getByRole('textbox', { name: 'Travel, there and back' });
const onDevice = (page: Page) => page.locator('keeping-line[here]').getByText('On this device');

async function setTravel(page: Page, minutes: number): Promise<void> {
  await travel(page).fill(String(minutes));
  await page.keyboard.press('Enter');
}

/** Closes a page as a person does; one that asks first would stay. */
async function closePage(page: Page): Promise<void> {
  const closed = page.waitForEvent('close');
  await page.close({ runBeforeUnload: true });
  await closed;
}

// Each goes through a dozen loadings of the page, two of them looked at by axe, and two starts of a server.
const LONG_MS = 300_000;

describe.each(['phone', 'desk'] as const)('without a connection, on a %s', { timeout: LONG_MS }, (size) => {
  const [first, second] = size === 'phone' ? [91, 92] : [81, 82];

  it('nothing is lost: edited, closed, opened and edited again, then sent, with every step back', async () => {
    const { page, context } = await openKept(size, '/jobs/saltglass3/price');
    await allKept(page);
    const before = await travel(page).inputValue();
    await disconnect(context);
    await setTravel(page, first);
    await onDevice(page).waitFor();
    await closePage(page);

    const again = await context.newPage();
    await again.goto('/jobs/saltglass3/price');
    await travel(again).waitFor();
    expect(await travel(again).inputValue()).toBe(String(first));
    await setTravel(again, second);
    await onDevice(again).waitFor();
    await again.getByText(/^No connection: kept on this device/).waitFor();
    // One line of text and its button: the plan keeps its room.
    const notice = await again.locator('keeping-notice').boundingBox();
    expect(notice?.height).toBeLessThanOrEqual(size === 'phone' ? 32 : 48);
    await expectUsable(again, `a job without a connection on a ${size}`);

    await connect(context);
    await allKept(again);
    expect(await read('/api/jobs/saltglass3')).toMatchObject({ terms: { travelMin: second } });
    await again.reload({ waitUntil: 'networkidle' });
    const undo = again.getByRole('button', { name: /^Undo: .*ravel/ });
    await undo.click();
    await expect.poll(() => travel(again).inputValue()).toBe(String(first));
    await undo.click();
    await expect.poll(() => travel(again).inputValue()).toBe(before);
    await allKept(again);
    await context.close();
  });

  it('what is tested, ticked and answered at a hold is kept, and arrives later', async () => {
    const { page, context } = await openKept(size, '/jobs/saltglass3/papers?part=tests');
    const test = (of: Page, id: string) => of.locator(`test-row[data-test="ring-house/${id}"]`);
    const task = (of: Page, id: string) => of.locator(`task-row[data-task="${id}"]`);
    await test(page, 'ends/r1').waitFor();
    await allKept(page);
    await disconnect(context);
    await test(page, 'ends/r1').locator('input').fill('0.45');
    await page.keyboard.press('Enter');
    await test(page, 'ends/r1').getByText('Fits.').waitFor();
    await page.getByRole('button', { name: 'Add an instrument' }).click();
    await page.getByRole('textbox', { name: 'Instrument 1' }).fill('Multifunction tester');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Tasks' }).click();
    await task(page, 'set-up').getByRole('checkbox').check();
    await task(page, 'test-supply').getByText('No', { exact: true }).click();
    await page.getByText(/^1 of \d+ done\. Stopped: Earthed, bonded, polarity right/).waitFor();
    await task(page, 'settle').getByText('Yes', { exact: true }).click();
    await task(page, 'test-supply').getByText('Yes', { exact: true }).click();
    await page.getByText(/^3 of \d+ done\.$/).waitFor();
    await expectUsable(page, `tasks without a connection on a ${size}`);
    await onDevice(page).waitFor();
    await closePage(page);

    const again = await context.newPage();
    await again.goto('/jobs/saltglass3/papers?part=tasks');
    await again.getByText(/^3 of \d+ done\.$/).waitFor();
    await connect(context);
    await allKept(again);
    const kept = (await read('/api/jobs/saltglass3')) as {
      readonly readings: readonly { readonly phase: string }[];
    };
    expect(kept).toMatchObject({
      done: expect.arrayContaining([
        expect.objectContaining({ entry: 'spurs-rcbo/set-up' }),
        { entry: 'spurs-rcbo/settle', isSo: true },
        { entry: 'spurs-rcbo/test-supply', isSo: true },
      ]),
      testing: { instruments: [{ what: 'Multifunction tester' }] },
    });
    expect(kept.readings.filter(({ phase }) => phase === 'after')).toMatchObject([{ loop: 'L', ohm: 0.45 }]);
    const undo = again.getByRole('button', { name: /^Undo: / });
    for (const at of [2, 1, 1]) {
      await undo.click();
      await again.getByText(new RegExp(`^${at} of \\d+ done`)).waitFor();
    }
    await undo.click();
    await again.getByText(/^0 of \d+ done/).waitFor();
    // The instrument's name, the instrument, the reading: the job is as it was.
    for (let step = 0; step < 3; step += 1) await undo.click();
    await expect.poll(() => undo.count()).toBe(0);
    await allKept(again);
    expect(await read('/api/jobs/saltglass3')).not.toHaveProperty('testing');
    await context.close();
  });

  it('a job is begun and worked on, and arrives though it is not open any more', async () => {
    const { page, context } = await openKept(size, '/');
    await page.locator('job-row').first().waitFor();
    // Prices and norms are those that this device was given last.
    await page.goto('/jobs/saltglass3', { waitUntil: 'networkidle' });
    await expect.poll(() => page.evaluate(keptNames)).toEqual(['job/saltglass3', 'library']);
    await disconnect(context);
    await page.goto('/');
    await page.getByText('No connection.').waitFor();
    const others = (await page.locator('job-row').count()) - 1;
    expect(others).toBeGreaterThan(0);
    await expect.poll(() => page.getByText('Not on this device: needs a connection').count()).toBe(others);
    await expectUsable(page, `the list without a connection on a ${size}`);
    await page.getByRole('button', { name: 'New job', exact: true }).click();
    await page.waitForURL(/\/jobs\//);
    const id = /^\/jobs\/([^/]+)/.exec(new URL(page.url()).pathname)?.[1] ?? '';
    await page.getByRole('link', { name: /^Wanted/ }).click();
    await page.getByRole('button', { name: 'Add it without a place' }).click();
    await onDevice(page).waitFor();
    await page.getByRole('link', { name: 'All jobs' }).click();
    await page.getByText('1 job kept on this device, sent when there is one.').waitFor();
    await closePage(page);

    await connect(context);
    const again = await context.newPage();
    await again.goto('/', { waitUntil: 'networkidle' });
    await expect.poll(() => read(`/api/jobs/${id}`)).toMatchObject({ id, points: [{ status: 'wanted' }] });
    await expect.poll(() => again.getByText('Kept on this device, not sent yet').count()).toBe(0);
    await expect.poll(() => again.locator(`job-row a[href^="/jobs/${id}"]`).count()).toBe(1);
    await context.close();
  });
});
