import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { codeFetchedKB } from '../../scripts/product/code-fetched.ts';
import { type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

/** Lets the firm’s page not through. */
const holdBack = (page: Page): Promise<unknown> =>
  page.route(/\/assets\/firm-page-/, (route) => route.abort());

describe('the first page', () => {
  it('is seen after at most 150 kB of script and style', async () => {
    const { page, context } = await stage.open('phone', 'about:blank');
    const kB = await codeFetchedKB(page, '/', 'job-row');
    expect(kB).toBeGreaterThan(20);
    expect(kB).toBeLessThan(150);
    await context.close();
  });

  it('is followed by the rest of the screen, so that nothing of it is fetched later', async () => {
    const { page, context, troubles } = await stage.open('phone');
    // From here on nothing is fetched any more but what the server keeps, and what works beside the page.
    await page.route(/\/assets\/(?!.*worker).*\.js$/, (route) => route.abort());
    await page.locator('job-row a').first().click();
    await page.locator('price-bar').waitFor();
    expect(troubles).toEqual([]);
    await context.close();
  });
});

describe('a part that cannot be fetched', () => {
  it('says so, comes with a tap once it can be, and has the focus on its heading', async () => {
    const { page, context } = await stage.open('phone', 'about:blank');
    await holdBack(page);
    await page.goto('/', { waitUntil: 'networkidle' });
    await page.getByRole('link', { name: 'Firm, prices and norms' }).click();
    await page.getByText('This part could not be fetched').waitFor();
    await page.unroute(/\/assets\/firm-page-/);
    await page.getByRole('button', { name: 'Try again' }).click();
    const heading = page.locator('firm-page h1');
    await heading.waitFor();
    await expect.poll(() => heading.evaluate((one) => one.matches(':focus'))).toBe(true);
    await context.close();
  });

  it('comes by itself with the connection', async () => {
    const { page, context } = await stage.open('desk', 'about:blank');
    await holdBack(page);
    await page.goto('/firm', { waitUntil: 'networkidle' });
    await page.getByText('This part could not be fetched').waitFor();
    await page.unroute(/\/assets\/firm-page-/);
    await page.evaluate('dispatchEvent(new Event("online"))');
    await page.locator('firm-page h1').waitFor();
    await context.close();
  });
});
