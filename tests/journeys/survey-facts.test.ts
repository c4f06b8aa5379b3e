import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { allKept, expectUsable, type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

const section = (page: Page, name: string) =>
  page.locator('as-found-step summary', { hasText: new RegExp(`^\\s*${name}`) });

async function openNewJob(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'New job', exact: true }).click();
  await page.waitForURL(/\/jobs\/[^/]+\//);
  await page.locator('known-by').waitFor();
}

describe.each(['desk', 'phone'] as const)('the survey of a new job, at a %s', (size) => {
  it('asks how its facts are known, marks them by it, and takes silence for no answer', async () => {
    const { page, troubles, context } = await stage.open(size);
    await openNewJob(page);
    await section(page, 'Supply and board').click();
    // Nobody has said yet what they go by.
    await page.getByLabel('Earthing', { exact: true }).selectOption('TN-S');
    await expect.poll(() => page.getByLabel('How sure: Earthing').inputValue()).toBe('assumed');
    await page.getByRole('radio', { name: 'Seen here' }).check();
    await page.getByLabel('Main fuse').fill('80');
    await page.getByLabel('Main fuse').press('Tab');
    await expect.poll(() => page.getByLabel('How sure: Main fuse').inputValue()).toBe('seen');
    // It stays as chosen, on another step and back, and after a reload.
    await page.getByRole('link', { name: /^Wanted/ }).click();
    await page.getByRole('link', { name: /^As found/ }).click();
    expect(await page.getByRole('radio', { name: 'Seen here' }).isChecked()).toBe(true);
    await allKept(page);
    await page.reload({ waitUntil: 'networkidle' });
    expect(await page.getByRole('radio', { name: 'Seen here' }).isChecked()).toBe(true);
    await section(page, 'Supply and board').click();
    const shown = (label: string) =>
      page.getByLabel(label, { exact: true }).locator('option:checked').innerText();
    for (const label of ['Bond to gas', 'Bond to water', 'Solar panels, battery, vehicle charger'])
      expect(await shown(label)).toContain('Not looked at');
    await page.getByLabel('Bond to gas', { exact: true }).selectOption('no-service');
    await page.getByRole('checkbox', { name: 'Battery' }).check();
    await expect.poll(() => shown('Solar panels, battery, vehicle charger')).toContain('Those ticked below');
    expect(await page.evaluate('document.documentElement.scrollWidth - innerWidth')).toBeLessThanOrEqual(0);
    await expectUsable(page, `supply, ${size}`);
    expect(troubles).toEqual([]);
    await context.close();
  });

  it('adds points by Enter, from any line of the form', async () => {
    const { page, troubles, context } = await stage.open(size);
    await openNewJob(page);
    await section(page, 'Points').click();
    await page.getByLabel('Room', { exact: true }).fill('Kitchen');
    await page.getByLabel('How many').fill('2');
    await page.getByLabel('How many').press('Enter');
    const names = () => page.locator('point-list button.row .name').allInnerTexts();
    await expect.poll(names).toEqual(['Kitchen 1', 'Kitchen 2']);
    await page.getByLabel('Room', { exact: true }).fill('Hall');
    await page.getByLabel('Room', { exact: true }).press('Enter');
    await expect.poll(names).toEqual(['Kitchen 1', 'Kitchen 2', 'Hall 1']);
    await page.getByLabel('Room', { exact: true }).fill('Hall');
    await page.getByLabel('How many').fill('many');
    await page.getByLabel('How many').press('Enter');
    await page.getByText('“many” is not a number').waitFor();
    expect(await names()).toHaveLength(3);
    expect(troubles).toEqual([]);
    await context.close();
  });

  it('answers an open question in place, and leads to the form of what has no field of its own', async () => {
    const { page, troubles, context } = await stage.open(size);
    await page.getByRole('heading', { name: /^3 Saltglass Row: quoting/ }).click();
    await page.getByRole('radio', { name: 'Seen here' }).check();
    const list = page.locator('survey-list');
    await list.locator('summary', { hasText: 'Above and below the rooms' }).click();
    await list.getByRole('button', { name: /floors lift/ }).click();
    await list.getByLabel('Ground floor: the boards lift', { exact: true }).selectOption('yes');
    await list.getByLabel('First floor: the boards lift', { exact: true }).selectOption('yes');
    await list.locator('survey-item').getByText('Seen', { exact: true }).waitFor();
    // Both stay to be put right, and are taken back one by one.
    for (const floor of ['First floor', 'Ground floor']) {
      await page.getByRole('button', { name: /^Undo/ }).click();
      await expect
        .poll(() => list.getByLabel(`${floor}: the boards lift`, { exact: true }).inputValue())
        .toBe('');
    }
    await list.locator('summary', { hasText: 'At the meter and the board' }).click();
    await list.getByRole('button', { name: /^Read the ring end to end/ }).click();
    await list.getByRole('button', { name: /^Open Socket ring/ }).click();
    await expect.poll(() => page.locator('circuit-list').count()).toBe(1);
    await expectUsable(page, `the survey's list, ${size}`);
    expect(troubles).toEqual([]);
    await context.close();
  });
});
