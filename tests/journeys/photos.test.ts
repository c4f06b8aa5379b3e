import { readFile } from 'node:fs/promises';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { pictureId } from '#archive/picture-id.ts';
import { readArchive } from '#archive/read-archive.ts';
import { writeArchive } from '#archive/write-archive.ts';
import type { Job } from '#model/job.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { tinyPng } from '#tests/http/photos.ts';
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
    // What it shows is typed in full, and stands under the small one.
    const shows = page.locator('photo-strip dialog').getByLabel('What it shows');
    await shows.fill('Two cables at the back');
    await shows.press('Home');
    await shows.press('ArrowLeft');
    await page.keyboard.press('Tab');
    await page.locator('photo-strip figcaption').filter({ hasText: 'Two cables at the back' }).waitFor();
    await expectUsable(page, 'a photo with its words');
    await page.keyboard.press('Escape');
    await page.locator('photo-strip dialog').waitFor({ state: 'detached' });
    await page.keyboard.press('Enter');
    await page.locator('photo-strip dialog').getByRole('button', { name: 'Remove' }).press('Enter');
    await expect.poll(() => page.locator('photo-strip .small-one').count()).toBe(0);
    await page.keyboard.press('Control+z');
    await expect.poll(() => page.locator('photo-strip .small-one').count()).toBe(1);
    await allKept(page);
    expect((await job()).points.find(({ id }) => id === 'r1-hallway')?.photos).toHaveLength(1);
    expect((await job()).assets.map(({ caption }) => caption)).toEqual(['Two cables at the back']);
    expect(troubles).toEqual([]);
    await page.context().close();
  });

  it('goes out with its job as one archive, made on the server and on the device', async () => {
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
    await page.context().close();
  });
});

describe('an archive of a job', () => {
  const id = 'archived-1';
  const picture = pictureId(tinyPng);
  const text = JSON.stringify({
    ...demoJob('fernlow-close'),
    id,
    supply: { ...demoJob('fernlow-close').supply, photos: [picture, 'f'.repeat(64)] },
    assets: [
      { id: picture, name: 'Photo of the meter', mediaType: 'image/png', bytes: tinyPng.length },
      { id: 'f'.repeat(64), name: 'Photo of the cut-out', mediaType: 'image/jpeg', bytes: 9 },
    ],
  });

  it('comes in with its photos, and says what is not in it; a damaged one changes nothing', async () => {
    const { page, troubles } = await openWindow(browser, server.address, 'phone');
    await page.goto('/', { waitUntil: 'networkidle' });
    const input = page.locator('job-list-page input[type=file]');
    const open = async (name: string, bytes: Uint8Array): Promise<void> =>
      input.setInputFiles({ name, mimeType: 'application/zip', buffer: Buffer.from(bytes) });
    const whole = await writeArchive(text, [tinyPng], 'Maker');
    const at = Buffer.from(whole).indexOf(tinyPng);
    const broken = new Uint8Array(whole);
    broken.set([1, 2, 3], at + 40);
    await open('broken.zip', broken);
    await page.getByText(/broken\.zip cannot be opened/).waitFor();
    await expectUsable(page, 'an archive that cannot be opened, on a phone');
    expect((await fetch(new URL(`/api/jobs/${id}`, server.address))).status).toBe(404);
    await open('job.zip', whole);
    await page
      .getByText(/was read whole, but 1 picture of it is not in the file:\s*Photo of the cut-out/)
      .waitFor();
    await expectUsable(page, 'a job that was opened without one of its photos, on a phone');
    expect((await job(id)).supply.photos).toHaveLength(2);
    await expect
      .poll(async () => (await fetch(new URL(`/api/assets/${picture}`, server.address))).status, {
        timeout: 60_000,
      })
      .toBe(200);
    expect(troubles).toEqual([]);
    await page.context().close();
  });
});
