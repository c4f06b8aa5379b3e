import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { allKept, expectUsable, priceOn, type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

const price = '/jobs/saltglass3/price';
const undo = (page: Page, what: RegExp) => page.getByRole('button', { name: what }).first().click();

describe.each(['desk', 'phone'] as const)('the terms of a price on a %s', (size) => {
  it('ask for the condition of a lower rate of VAT, keep it, and go with undo', async () => {
    const { page, context, troubles } = await stage.open(size, price);
    const before = await priceOn(page);
    await page.getByLabel('VAT', { exact: true }).selectOption('zero');
    await page.getByText('No condition is claimed for this rate').first().waitFor();
    const condition = page.getByLabel('Condition claimed for this rate');
    expect(await condition.locator('option[value="listed-building"]').isDisabled()).toBe(true);
    await page.getByText(/This zero rate ended in October 2012/).waitFor();
    await condition.selectOption('new-dwelling');
    await page
      .getByText(/part of building a dwelling/)
      .first()
      .waitFor();
    await expectUsable(page, `a claimed condition on a ${size}`);
    await undo(page, /^Undo: Claim a condition/);
    await undo(page, /^Undo: Change how VAT is charged/);
    await expect.poll(() => priceOn(page)).toBe(before);
    await allKept(page);
    expect(troubles).toEqual([]);
    await context.close();
  });

  it('are worked by keyboard: a multiplier is ticked, and the price falls and comes back', async () => {
    const { page, context, troubles } = await stage.open(size, price);
    const before = await priceOn(page);
    const empty = page.getByLabel('An empty house: nothing to move or to cover');
    await empty.focus();
    await page.keyboard.press('Space');
    await expect.poll(() => priceOn(page)).toBeLessThan(before);
    await undo(page, /^Undo: Reckon with: An empty house/);
    await expect.poll(() => priceOn(page)).toBe(before);
    await allKept(page);
    expect(troubles).toEqual([]);
    await context.close();
  });

  it('are followed by what the job took, on the papers, which moves no price', async () => {
    const { page, context, troubles } = await stage.open(size, '/jobs/saltglass3/papers');
    const before = await priceOn(page);
    const hours = page.getByLabel('Taken: First fix', { exact: true });
    await hours.fill('5.5');
    await page.keyboard.press('Enter');
    await page.getByText(/the norms of this stage times 0\.\d+ would have met it/).waitFor();
    expect(await priceOn(page)).toBe(before);
    await expectUsable(page, `what the job took on a ${size}`);
    await undo(page, /^Undo: What it took: First fix/);
    await expect.poll(() => hours.inputValue()).toBe('');
    await allKept(page);
    expect(troubles).toEqual([]);
    await context.close();
  });
});

describe('a firm whose rate is what an hour costs', () => {
  it('sees overhead, mark-up on all and the margin of the job; and why charged labour bears none', async () => {
    const { page, troubles } = await stage.open('desk', '/firm?part=labour');
    await page.getByLabel('Overhead', { exact: true }).selectOption('percent');
    const percent = page.getByLabel('Overhead, percent');
    await percent.fill('7');
    await page.keyboard.press('Enter');
    await page.getByText(/No overhead is put on labour: the hourly rate is what/).waitFor();
    await page.getByLabel('That rate is').selectOption('cost');
    await allKept(page);
    await expectUsable(page, 'the firm’s page with an overhead');
    await page.goto(price, { waitUntil: 'networkidle' });
    await page.getByText('Overhead, 7 % on materials, labour and travel at cost').waitFor();
    await page.getByText('Mark-up, 20 % on all of that').waitFor();
    await page
      .getByText(/The job costs the firm £[\d,.]+, overhead included; .* a margin of 16\.67 %/)
      .waitFor();
    expect(troubles).toEqual([]);
  });
});
