import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { allKept, expectUsable, type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

const idOn = (page: Page): string => /^\/jobs\/([^/]+)/.exec(new URL(page.url()).pathname)?.[1] ?? '';

async function keptTerms(jobId: string): Promise<Record<string, unknown>> {
  const answer = await fetch(new URL(`/api/jobs/${jobId}`, stage.server.address));
  return ((await answer.json()) as { terms: Record<string, unknown> }).terms;
}

async function setTravel(page: Page, minutes: string): Promise<void> {
  await page.getByRole('link', { name: /^Price/ }).click();
  const field = page.getByRole('textbox', { name: 'Travel, there and back' });
  await field.fill(minutes);
  await field.press('Enter');
}

/** Opens a job from the list, and gives its id. */
async function openJob(page: Page, title: RegExp): Promise<string> {
  await page.getByRole('heading', { name: title }).click();
  await page.getByRole('heading', { level: 1, name: title }).waitFor();
  return idOn(page);
}

describe.each(['desk', 'phone'] as const)('a deleted job on a %s', (size) => {
  it('comes back as it was after the page was loaded again', async () => {
    const title = size === 'desk' ? /Flat 5, Quarrel Court/ : /18 Fernlow Close/;
    const { page, troubles, context } = await stage.open(size);
    const id = await openJob(page, title);
    await setTravel(page, '75');
    await allKept(page);
    await page.getByRole('link', { name: 'All jobs' }).click();
    const row = page.locator('job-row').filter({ has: page.getByRole('heading', { name: title }) });
    await row.getByRole('button', { name: /^Delete/ }).click();
    await page.getByText(/is off the list\.$/).waitFor();
    expect(await row.count()).toBe(0);
    await page.reload({ waitUntil: 'networkidle' });
    expect(await row.count()).toBe(0);
    await page.getByText(/^Deleted jobs \(/).click();
    await expectUsable(page, `the deleted jobs on a ${size}`);
    const back = page.locator('deleted-jobs li').filter({ hasText: title });
    await back.getByRole('button', { name: /^Bring back/ }).click();
    await page.getByText(/is back\.$/).waitFor();
    await row.waitFor();
    expect(await back.count()).toBe(0);
    expect(await row.getByRole('link').evaluate((link) => link.matches(':focus'))).toBe(true);
    expect((await keptTerms(id)).travelMin).toBe(75);
    expect(troubles).toEqual([]);
    await context.close();
  });
});

describe('a job that was changed and could not be kept', () => {
  it('is changed still after it was deleted and brought back', async () => {
    const title = /^3 Saltglass Row: three outlets/;
    const { page, context } = await stage.open('desk');
    const id = await openJob(page, title);
    const before = (await keptTerms(id)).travelMin;
    expect(before).not.toBe(77);
    await page.route(`**/api/jobs/${id}?*`, (route) =>
      route.request().method() === 'PUT' ? route.abort() : route.continue(),
    );
    await setTravel(page, '77');
    await page.locator('keeping-line[keeping=not-kept]').waitFor();
    await page.getByRole('link', { name: 'All jobs' }).click();
    const row = page.locator('job-row').filter({ has: page.getByRole('heading', { name: title }) });
    await row.getByRole('button', { name: /^Delete/ }).click();
    await page.getByRole('button', { name: 'Undo' }).waitFor();
    expect((await fetch(new URL(`/api/jobs/${id}`, stage.server.address))).status).toBe(404);
    await page.unroute(`**/api/jobs/${id}?*`);
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText(/is back\.$/).waitFor();
    await expect.poll(async () => (await keptTerms(id)).travelMin).toBe(77);
    await row.getByRole('link').click();
    await page.getByRole('button', { name: /^Undo: .*ravel/ }).waitFor();
    await context.close();
  });
});

describe('two taps on the list at once', () => {
  it('do two different things one after the other, and the same thing once', async () => {
    const { page, troubles, context } = await stage.open('desk');
    const rows = page.locator('job-row');
    // The list may come from the device first, which no network is asked for.
    await rows.first().waitFor();
    const before = await rows.count();
    const copies = page.getByRole('button', { name: /^Copy / });
    // Within one task of the page, so that the second comes while the first is under way.
    await copies.evaluateAll(([first, second]) => {
      for (const button of [first, first, second]) (button as HTMLElement | undefined)?.click();
    });
    await expect.poll(() => rows.count()).toBe(before + 2);
    await page.waitForLoadState('networkidle');
    expect(await rows.count()).toBe(before + 2);
    expect(troubles).toEqual([]);
    await context.close();
  });
});

describe.each(['desk', 'phone'] as const)(
  'a job that is open on a %s and deleted in another window',
  (size) => {
    const minutes = size === 'desk' ? 83 : 84;
    const notice = (page: Page) => page.getByText(/This job was deleted\./);

    /** The job in one window; the list, from which it was just deleted, in another of the same browser. */
    async function deleteElsewhere() {
      const { page, context } = await stage.open(size, '/jobs/saltglass3/price');
      await allKept(page);
      const list = await context.newPage();
      await list.goto('/', { waitUntil: 'networkidle' });
      const row = list.locator('job-row').filter({ has: list.locator('a[href^="/jobs/saltglass3/"]') });
      await row.getByRole('button', { name: /^Delete/ }).click();
      await list.getByText(/is off the list\.$/).waitFor();
      await page.locator('keeping-line[keeping=gone]').waitFor();
      return { page, list, row, context };
    }

    it('is not called saved, and can be restored with what is changed then', async () => {
      const { page, list, row, context } = await deleteElsewhere();
      await notice(page).waitFor();
      expect(await page.locator('keeping-line').getByText('Saved', { exact: true }).count()).toBe(0);
      await page.getByRole('textbox', { name: 'Travel, there and back' }).fill(String(minutes));
      await page.keyboard.press('Enter');
      await page.getByText(/your last changes are here and nowhere else/).waitFor();
      await expectUsable(page, `a deleted job on a ${size}`);
      await page.getByRole('button', { name: /^Restore/ }).click();
      await allKept(page);
      expect(await notice(page).count()).toBe(0);
      expect((await keptTerms('saltglass3')).travelMin).toBe(minutes);
      await list.reload({ waitUntil: 'networkidle' });
      expect(await row.count()).toBe(1);
      await context.close();
    }, 60_000);

    it('goes on by itself once the deletion is undone, or as a copy', async () => {
      const { page, list, context } = await deleteElsewhere();
      await list.getByRole('button', { name: 'Undo' }).click();
      await allKept(page);
      expect(await notice(page).count()).toBe(0);
      const row = list.locator('job-row').filter({ has: list.locator('a[href^="/jobs/saltglass3/"]') });
      await row.getByRole('button', { name: /^Delete/ }).click();
      await page.locator('keeping-line[keeping=gone]').waitFor();
      await page.getByRole('button', { name: /^Keep a copy/ }).click();
      await page.waitForURL((url) => !url.pathname.startsWith('/jobs/saltglass3/'));
      await allKept(page);
      await page.getByRole('heading', { level: 1, name: /copy of a deleted job/ }).waitFor();
      expect((await fetch(new URL('/api/jobs/saltglass3', stage.server.address))).status).toBe(404);
      await fetch(new URL('/api/jobs/saltglass3/restore', stage.server.address), {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: '{}',
      });
      await context.close();
    }, 60_000);
  },
);
