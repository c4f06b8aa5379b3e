import { createHash } from 'node:crypto';
import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser, openWindow } from '../../scripts/product/browser.ts';
import { type RunningServer, startServer } from '../../scripts/product/running-server.ts';
import { expectUsable } from './stage.ts';

let browser: Browser;
let server: RunningServer;
let folder: string;
beforeAll(async () => {
  const built = process.env.SCREEN_FOLDER ?? '';
  folder = await mkdtemp(join(tmpdir(), 'screen-of-two-versions-'));
  await cp(built, folder, { recursive: true });
  process.env.SCREEN_FOLDER = folder;
  [browser, server] = await Promise.all([openBrowser(), startServer()]);
  process.env.SCREEN_FOLDER = built;
});
afterAll(async () => {
  await browser.close();
  await server.close();
  await rm(folder, { recursive: true, force: true });
});

const sha256 = (text: string): string => createHash('sha256').update(text).digest('hex');

/** Puts a newer version of the screen in the place of the one that is served: the same page with a mark in it. */
async function putNewer(): Promise<void> {
  const [page, worker] = await Promise.all(
    ['index.html', 'service-worker.js'].map((name) => readFile(join(folder, name), 'utf8')),
  );
  const newer = (page ?? '').replace('<body>', '<body data-version="newer">');
  const listed = (worker ?? '')
    .replace(sha256(page ?? ''), sha256(newer))
    .replace(/ringwright-[0-9a-f]{16}/, 'ringwright-newer');
  expect([newer === page, listed === worker]).toEqual([false, false]);
  for (const [name, text] of [
    ['index.html', newer],
    ['service-worker.js', listed],
  ] as const) {
    await writeFile(join(folder, name), text);
    for (const packed of ['.gz', '.br']) await rm(join(folder, name + packed), { force: true });
  }
}

const versionOn = (page: Page): Promise<string | null> => page.locator('body').getAttribute('data-version');

describe('a job that a newer version has saved', () => {
  it.each(['phone', 'desk'] as const)('says so on a %s, and is not touched', async (size) => {
    const { page, context } = await openWindow(browser, server.address, size);
    const sent: string[] = [];
    page.on('request', (request) => {
      if (request.method() !== 'GET') sent.push(`${request.method()} ${request.url()}`);
    });
    await page.route('**/api/jobs/saltglass3', async (route) => {
      const answer = await route.fetch();
      const job = (await answer.json()) as Record<string, unknown>;
      await route.fulfill({ response: answer, json: { ...job, version: 99 } });
    });
    await page.goto('/jobs/saltglass3/price', { waitUntil: 'networkidle' });
    await page.getByRole('heading', { name: 'This job needs a newer Ringwright' }).waitFor();
    expect(await page.locator('keeping-line').count()).toBe(0);
    expect(await page.getByRole('button', { name: /^(Undo|Redo)/ }).count()).toBe(0);
    expect(await page.getByText(/damage|Saved/).count()).toBe(0);
    await expectUsable(page, `a job of a newer version on a ${size}`);
    await page.unroute('**/api/jobs/saltglass3');
    // Where no newer version waits on the device, the server is asked for its page.
    await page.getByRole('button', { name: 'Update', exact: true }).click();
    await page.getByRole('textbox', { name: 'Travel, there and back' }).waitFor();
    expect(sent).toEqual([]);
    await context.close();
  });
});

describe('a newer version of the product', () => {
  it('waits for its button, and then takes every open page, none with files of two versions', async () => {
    const { page, context } = await openWindow(browser, server.address, 'desk', true);
    await page.goto('/', { waitUntil: 'networkidle' });
    const isKept = (): boolean => navigator.serviceWorker.controller !== null;
    await expect.poll(() => page.evaluate(isKept), { timeout: 120_000 }).toBe(true);
    const other = await context.newPage();
    await other.goto('/firm', { waitUntil: 'networkidle' });
    await putNewer();
    await page.reload();
    await page.getByText('A newer Ringwright is ready.').waitFor();
    // What is shown is the older one still, whole.
    expect([await versionOn(page), await versionOn(other)]).toEqual([null, null]);
    await page.getByRole('button', { name: 'Update', exact: true }).click();
    await expect.poll(() => versionOn(page)).toBe('newer');
    await expect.poll(() => versionOn(other)).toBe('newer');
    await page.locator('job-row').first().waitFor();
    expect(await page.getByText('A newer Ringwright is ready.').count()).toBe(0);
    expect(await page.evaluate(() => caches.keys())).toEqual(['ringwright-newer']);
    await context.close();
  });
});
