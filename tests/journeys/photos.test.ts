import { readFile } from 'node:fs/promises';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { readArchive } from '#archive/read-archive.ts';
import type { Job } from '#model/job.ts';
import { openBrowser, openWindow } from '../../scripts/product/browser.ts';
import { type RunningServer, startServer } from '../../scripts/product/running-server.ts';
import { drawPicture, withExif } from './pictures.ts';
import { allKept, expectUsable } from './stage.ts';

const jobId = 'saltglass3';
const found = `/jobs/${jobId}/as-found?on=r1-hallway`;

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
afterEach(async () => {
  if (!isUp) server = await server.again();
  isUp = true;
});

const job = async (id = jobId): Promise<Job> =>
  (await (await fetch(new URL(`/api/jobs/${id}`, server.address))).json()) as Job;

const photo = async (page: Page): Promise<Buffer> =>
  withExif(
    await drawPicture(
      page,
      {
        width: 2000,
        height: 1000,
        filled: [
          {
            at: [
              [0, 0],
              [900, 0],
              [900, 400],
            ],
            grey: 90,
          },
        ],
      },
      'image/jpeg',
    ),
    'GPS 51.5 N somewhere',
  );

/** Adds a photo by the strip that is in sight. */
async function add(page: Page): Promise<void> {
  const file = { name: 'IMG_0001.jpg', mimeType: 'image/jpeg', buffer: await photo(page) };
  await page.locator('photo-strip input[type=file]').first().setInputFiles(file);
}

const widthOf = (page: Page): Promise<number> =>
  page
    .locator('photo-strip kept-picture img')
    .first()
    .evaluate((image: HTMLImageElement) => image.naturalWidth);

describe('a photo of a point', () => {
  it('taken without a connection is on the device, is there when the page was closed, and is sent then', async () => {
    const { page, context, troubles } = await openWindow(browser, server.address, 'phone', true);
    await page.goto(found, { waitUntil: 'networkidle' });
    await expect
      .poll(() => page.evaluate(() => navigator.serviceWorker.controller !== null), { timeout: 120_000 })
      .toBe(true);
    await page.locator('photo-strip').first().waitFor();
    isUp = false;
    await server.kill();
    await context.setOffline(true);
    await add(page);
    await page.locator('photo-strip kept-picture img').first().waitFor();
    await expect.poll(() => widthOf(page)).toBe(1600);
    await page.getByText('1 photo with it').waitFor();
    await expectUsable(page, 'a photo that waits for the connection, on a phone');
    await page.close();

    const again = await context.newPage();
    await again.goto(new URL(found, server.address).href);
    await again.locator('photo-strip kept-picture img').first().waitFor();
    expect(await widthOf(again)).toBe(1600);
    server = await server.again();
    isUp = true;
    await context.setOffline(false);
    await allKept(again);
    const { points, assets } = await job();
    const [id] = points.find((point) => point.id === 'r1-hallway')?.photos ?? [];
    expect(assets.map((asset) => asset.id)).toEqual([id]);
    await expect
      .poll(async () => (await fetch(new URL(`/api/assets/${id}`, server.address))).status, {
        timeout: 60_000,
      })
      .toBe(200);
    const sent = Buffer.from(await (await fetch(new URL(`/api/assets/${id}`, server.address))).arrayBuffer());
    // What the camera wrote into it stays where it was taken.
    expect([sent.includes('Exif'), sent.includes('GPS'), sent.subarray(0, 2).toString('hex')]).toEqual([
      false,
      false,
      'ffd8',
    ]);
    expect(troubles.filter((trouble) => !trouble.includes('Failed to load resource'))).toEqual([]);
    await context.close();
  });

  it('is looked at in full, removed, brought back, and marked on the plan, by keys alone', async () => {
    const { page, troubles } = await openWindow(browser, server.address, 'desk');
    await page.goto(found, { waitUntil: 'networkidle' });
    await page.locator('photo-strip').first().waitFor();
    const before = await page.locator('photo-strip .small-one').count();
    await add(page);
    await expect.poll(() => page.locator('photo-strip .small-one').count()).toBe(1);
    expect(before).toBeLessThanOrEqual(1);
    await page.locator('plan-view g.photos g[data-subject=r1-hallway]').waitFor({ state: 'attached' });
    await page.locator('photo-strip .small-one').first().focus();
    await page.keyboard.press('Enter');
    await page.locator('photo-strip dialog kept-picture img').waitFor();
    await expectUsable(page, 'a photo in full');
    await page.keyboard.press('Escape');
    await page.locator('photo-strip dialog').waitFor({ state: 'detached' });
    await page.keyboard.press('Enter');
    await page.locator('photo-strip dialog').getByRole('button', { name: 'Remove' }).press('Enter');
    await expect.poll(() => page.locator('photo-strip .small-one').count()).toBe(0);
    await page.keyboard.press('Control+z');
    await expect.poll(() => page.locator('photo-strip .small-one').count()).toBe(1);
    await allKept(page);
    expect((await job()).points.find(({ id }) => id === 'r1-hallway')?.photos).toHaveLength(1);
    expect(troubles).toEqual([]);
    await page.context().close();
  });

  it('goes out with its job as one archive, made here and made there, and comes in elsewhere', async () => {
    const { page, troubles } = await openWindow(browser, server.address, 'desk');
    await page.goto(found, { waitUntil: 'networkidle' });
    await page.locator('photo-strip').first().waitFor();
    if ((await page.locator('photo-strip .small-one').count()) === 0) await add(page);
    await page.locator('photo-strip kept-picture img').first().waitFor();
    await allKept(page);
    const asset = (await job()).assets[0]?.id;
    await page.goto(`/jobs/${jobId}/papers`, { waitUntil: 'networkidle' });
    await expectUsable(page, 'papers with an archive');
    const files: Buffer[] = [];
    for (const button of [
      page.getByRole('link', { name: 'Fetch ZIP: Job with its photos' }),
      page.getByRole('button', { name: 'Make it on this device' }),
    ]) {
      const [download] = await Promise.all([page.waitForEvent('download'), button.click()]);
      expect(download.suggestedFilename()).toMatch(/job\.zip$/);
      files.push(await readFile(await download.path()));
    }
    for (const file of files) {
      const read = await readArchive(new Uint8Array(file));
      if (!read.ok) throw new Error(JSON.stringify(read));
      expect([read.job, read.pictures.map(({ id }) => id), read.missing]).toEqual([await job(), [asset], []]);
    }
    expect(troubles).toEqual([]);

    // Another firm's server, which has neither the job nor the photo.
    const elsewhere = await startServer();
    const other = await openWindow(browser, elsewhere.address, 'phone');
    try {
      await fetch(new URL(`/api/jobs/${jobId}`, elsewhere.address), { method: 'DELETE' });
      await other.page.goto('/', { waitUntil: 'networkidle' });
      const input = other.page.locator('job-list-page input[type=file]');
      const [file] = files;
      if (file === undefined) throw new Error('No archive.');
      await input.setInputFiles({ name: 'job.zip', mimeType: 'application/zip', buffer: file });
      // The demo job of the same name is on the list there.
      await other.page.getByRole('button', { name: 'Open the file as a copy' }).click();
      await other.page.waitForURL(/\/jobs\//);
      const copyId = /jobs\/([^/]+)/.exec(other.page.url())?.[1] ?? '';
      const text = await (await fetch(new URL(`/api/jobs/${copyId}`, elsewhere.address))).text();
      expect((JSON.parse(text) as Job).points.find(({ id }) => id === 'r1-hallway')?.photos).toEqual([asset]);
      await expect
        .poll(async () => (await fetch(new URL(`/api/assets/${asset}`, elsewhere.address))).status)
        .toBe(200);
      await other.page.goto('/', { waitUntil: 'networkidle' });
      const broken = Buffer.from(file);
      broken.set([1, 2, 3], Math.floor(broken.length / 2));
      await input.setInputFiles({ name: 'broken.zip', mimeType: 'application/zip', buffer: broken });
      await other.page.getByText(/broken\.zip cannot be opened/).waitFor();
      await expectUsable(other.page, 'an archive that cannot be opened, on a phone');
      expect(other.troubles).toEqual([]);
    } finally {
      await other.context.close();
      await elsewhere.close();
    }
  });
});
