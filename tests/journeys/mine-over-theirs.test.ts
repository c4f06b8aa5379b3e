import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { allKept, expectUsable, type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

async function set(page: Page, label: string, value: string): Promise<void> {
  const field = page.getByRole('textbox', { name: label });
  await field.fill(value);
  await field.press('Enter');
}

it('putting mine over theirs leaves theirs on the list, as it was saved', async () => {
  const at = '/jobs/saltglass3/price';
  const [theirs, mine] = [await stage.open('desk', at), await stage.open('desk', at)];
  await set(theirs.page, 'Travel, there and back', '75');
  await set(theirs.page, 'Minimum charge', '111');
  await allKept(theirs.page);
  await set(mine.page, 'Minimum charge', '222');
  await mine.page.getByText(/This job was changed elsewhere/).waitFor();
  // What both changed is told by thing and field, and what one of them changed by whose change it is.
  const clash = mine.page.locator('clash-list fieldset');
  await expect
    .poll(async () => (await clash.allInnerTexts()).map((words) => words.split(/\s+/).join(' ')))
    .toEqual(['Terms minimum charge Mine £222.00 Theirs £111.00']);
  await mine.page.locator('clash-list summary').click();
  const differing = mine.page.locator('clash-list tbody tr');
  await expect
    .poll(async () => (await differing.allInnerTexts()).map((words) => words.split(/\s+/).join(' ')))
    .toEqual([expect.stringMatching(/^Terms travel .*75 min changed there$/)]);
  await expectUsable(mine.page, 'a conflict');
  await mine.page.getByRole('button', { name: /Put mine over theirs/ }).click();
  await allKept(mine.page);
  await mine.page.getByRole('link', { name: 'All jobs' }).click();
  const rows = mine.page.locator('job-row').filter({ hasText: '3 Saltglass Row: three outlets' });
  await expect.poll(() => rows.count()).toBe(2);
  const ids = await rows
    .getByRole('link')
    .evaluateAll((links) => links.map((link) => link.getAttribute('href')?.split('/')[2] ?? ''));
  const terms = new Map<string, Record<string, unknown>>();
  for (const id of ids) {
    const answer = await fetch(new URL(`/api/jobs/${id}`, stage.server.address));
    terms.set(id, ((await answer.json()) as { terms: Record<string, unknown> }).terms);
  }
  const kept = terms.get('saltglass3');
  terms.delete('saltglass3');
  const [copy] = terms.values();
  expect(kept?.minimumPence).toBe(22_200);
  expect(kept?.travelMin).not.toBe(75);
  expect(copy?.travelMin).toBe(75);
  expect(copy?.minimumPence).toBe(11_100);
  await theirs.context.close();
  await mine.context.close();
});

it('on a phone what differs is a list of whole words, and plan and form keep more than half of the height', async () => {
  const [theirs, mine] = [await stage.open('desk', '/'), await stage.open('phone', '/')];
  await theirs.page.getByRole('heading', { name: /^18 Fernlow Close/ }).click();
  await theirs.page.waitForURL(/\/jobs\//);
  const path = new URL(theirs.page.url()).pathname.replace(/[^/]+$/, 'price');
  await theirs.page.goto(path, { waitUntil: 'networkidle' });
  await mine.page.goto(path, { waitUntil: 'networkidle' });
  await set(theirs.page, 'Travel, there and back', '75');
  await set(theirs.page, 'Minimum charge', '111');
  await allKept(theirs.page);
  await set(mine.page, 'Minimum charge', '222');
  const notice = mine.page.locator('keeping-notice');
  await notice.locator('fieldset').first().waitFor();
  await notice.locator('summary').tap();
  const { height, width } = mine.page.viewportSize() ?? { height: 0, width: 0 };
  expect((await notice.boundingBox())?.height).toBeLessThanOrEqual(0.45 * height + 1);
  const names = await notice.locator('tbody th, legend').all();
  expect(names).toHaveLength(2);
  for (const name of names) expect((await name.boundingBox())?.width).toBeGreaterThan(0.6 * width);
  await notice.getByRole('radio', { name: /^Mine/ }).tap();
  await notice.getByText('All decided').waitFor();
  // They go on meanwhile: what differs is told anew as soon as this window is looked at again, and to be decided anew.
  await set(theirs.page, 'Travel, there and back', '85');
  await set(theirs.page, 'Minimum charge', '150');
  await allKept(theirs.page);
  await mine.page.evaluate(() => dispatchEvent(new Event('focus')));
  await notice.getByText('85 min').waitFor();
  await notice.getByText('£150.00').waitFor();
  await notice.getByText('1 of 1 still to decide').waitFor();
  await expectUsable(mine.page, 'a conflict on a phone');
  await theirs.context.close();
  await mine.context.close();
});
