import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser, openWindow, type Size } from '../../scripts/product/browser.ts';
import { type RunningServer, startServer } from '../../scripts/product/running-server.ts';
import { expectUsable, shiftOf, watchShift } from './stage.ts';

let server: RunningServer;
let browser: Awaited<ReturnType<typeof openBrowser>>;
beforeAll(async () => {
  [server, browser] = await Promise.all([startServer(), openBrowser()]);
});
afterAll(async () => {
  await browser.close();
  await server.close();
});

const steps = ['as-found', 'wanted', 'ways', 'kit', 'price', 'papers', 'ways/compare'];
const parts = ['kit?part=shopping', 'kit?part=cuts', 'papers?part=connections', 'papers?part=tasks'];

async function paths(): Promise<readonly string[]> {
  const { jobs } = (await (await fetch(new URL('/api/jobs', server.address))).json()) as {
    jobs: { id: string }[];
  };
  const [first, ...others] = jobs;
  return [
    '/',
    '/firm',
    '/no-such-page',
    '/jobs/no-such-job/ways',
    ...[...steps, ...parts].map((step) => `/jobs/${first?.id}/${step}`),
    ...others.map(({ id }, i) => `/jobs/${id}/${steps[i % steps.length]}`),
  ];
}

describe.each(['desk', 'phone'] as const)('every page on a %s', (size: Size) => {
  it('can be used with a screen reader, keeps still, and stays within its width', async () => {
    const { page, context, troubles } = await openWindow(browser, server.address, size);
    await watchShift(page);
    for (const path of await paths()) {
      await page.goto(path, { waitUntil: 'networkidle' });
      await page.waitForTimeout(150);
      await expectUsable(page, `${path} on a ${size}`);
      expect(await shiftOf(page), `layout shift of ${path}`).toBeLessThan(0.05);
      const wide = (await page.evaluate('document.documentElement.scrollWidth')) as number;
      expect(wide, `width of ${path}`).toBeLessThanOrEqual((await page.evaluate('innerWidth')) as number);
    }
    // The one that is not there answers 404, which the console tells.
    expect(troubles.filter((text) => !text.includes('404'))).toEqual([]);
    await context.close();
  }, 180_000);
});

describe('every step of a job', () => {
  it('has an address of its own, and the browser’s back and forward go through them', async () => {
    const { page, context } = await openWindow(browser, server.address, 'desk');
    await page.goto('/', { waitUntil: 'networkidle' });
    await page.getByRole('heading', { name: /^3 Saltglass Row: three outlets/ }).click();
    await page.getByRole('link', { name: /^Kit/ }).click();
    await page.getByRole('heading', { name: /^Kit/, level: 2 }).waitFor();
    await page.goBack();
    await page.getByRole('heading', { name: /^As found/, level: 2 }).waitFor();
    await page.goForward();
    await page.getByRole('heading', { name: /^Kit/, level: 2 }).waitFor();
    await context.close();
  });
});
