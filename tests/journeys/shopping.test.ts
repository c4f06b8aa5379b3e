import { readFile } from 'node:fs/promises';
import { parse } from 'csv-parse/sync';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { allKept, expectUsable, onPlan, type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

const kit = '/jobs/saltglass3/kit?scheme=spurs-rcbo';
const list = `${kit}&part=shopping`;
const box = (page: Page, name: RegExp) => page.locator('shopping-list').getByRole('checkbox', { name });
const sockets = /13 A twin socket-outlet/;
const progress = (page: Page) => page.locator('shopping-list .over [role=status]');

async function fetched(page: Page, button: string): Promise<string> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button }).click(),
  ]);
  return readFile(await download.path(), 'utf8');
}

describe.each(['phone', 'desk'] as const)('shopping on a %s', (size) => {
  it('ticks what is had, with no signal too, remembers it past a reload, and takes it back', async () => {
    const { page, context, troubles } = await stage.open(size, list);
    await page.getByText(/^0 of \d+ ticked$/).waitFor();
    expect(await page.locator('plan-view').count()).toBe(size === 'phone' ? 0 : 1);
    await context.setOffline(true);
    await box(page, sockets).check();
    await box(page, /Dry-lining back box/).check();
    expect(await progress(page).innerText()).toMatch(/^2 of /);
    await context.setOffline(false);
    await page.reload({ waitUntil: 'networkidle' });
    expect(await box(page, sockets).isChecked()).toBe(true);
    expect(await progress(page).innerText()).toMatch(/^2 of /);
    await page.getByLabel('Only what is left').check();
    expect(await box(page, sockets).count()).toBe(0);
    await page.getByLabel('Only what is left').uncheck();
    await box(page, sockets).uncheck();
    await page.getByRole('button', { name: 'Take back' }).click();
    await expect.poll(() => box(page, sockets).isChecked()).toBe(true);
    await page.getByRole('button', { name: 'Clear ticks' }).click();
    expect(await progress(page).innerText()).toMatch(/^0 of /);
    await page.getByRole('button', { name: 'Take back' }).click();
    await expect.poll(() => progress(page).innerText()).toMatch(/^2 of /);
    await expectUsable(page, `the shopping list on a ${size}`);
    expect(troubles).toEqual([]);
    await context.close();
  }, 90_000);

  it('has rows that a thumb can hit, and the counter in sight while its things go by', async () => {
    const { page, context } = await stage.open(size, list);
    const rows = page.locator('shopping-list li label');
    // 44 px: WCAG 2.2, success criterion 2.5.5 (Target Size, Enhanced).
    const heights = await rows.evaluateAll((all) => all.map((row) => row.getBoundingClientRect().height));
    expect(Math.min(...heights)).toBeGreaterThanOrEqual(44);
    const fixings = page.getByRole('region', { name: 'Fixings' });
    const last = fixings.locator('label').last();
    await last.evaluate((row) => row.scrollIntoView({ block: 'center' }));
    const [head, row, sheet] = await Promise.all(
      [fixings.locator('h3'), last, page.locator('main.sheet')].map((one) => one.boundingBox()),
    );
    expect(head?.y).toBeGreaterThanOrEqual(sheet?.y ?? Number.NaN);
    expect(head?.y).toBeLessThan(row?.y ?? Number.NaN);
    await context.close();
  }, 90_000);

  it('says what changed after it was ticked, and what is wanted no longer', async () => {
    const { page, context, troubles } = await stage.open(size, list);
    await box(page, sockets).check();
    await box(page, /Filler, small/).check();
    await page.getByRole('button', { name: 'Bill', exact: true }).click();
    for (const name of ['In the van: 13 A twin socket-outlet', 'In the van: Filler, small']) {
      await page.getByLabel(name, { exact: true }).fill('1');
      await page.keyboard.press('Enter');
    }
    await page.getByRole('button', { name: 'Shopping list', exact: true }).click();
    await page.getByText('Was 3, now 2: 1 too many').waitFor();
    const [van, counter] = [box(page, sockets).first(), box(page, sockets).last()];
    expect([await van.isChecked(), await counter.isChecked()]).toEqual([false, false]);
    await page.getByRole('region', { name: 'Take from the van' }).waitFor();
    const left = page.getByRole('region', { name: 'Ticked, and no longer on the list' });
    await left.getByText('1: Filler, small').waitFor();
    await expectUsable(page, `a changed shopping list on a ${size}`);
    await left.getByRole('button', { name: 'Put away' }).click();
    await expect.poll(() => left.count()).toBe(0);
    await counter.check();
    expect(await page.getByText('Was 3, now 2').count()).toBe(0);
    for (let i = 0; i < 2; i++)
      await page
        .getByRole('button', { name: /^Undo: / })
        .first()
        .click();
    await page.getByText('Was 2, now 3: 1 more').waitFor();
    await allKept(page);
    expect(troubles).toEqual([]);
    await context.close();
  }, 90_000);

  it('marks what is not in stock, takes down what was taken instead, and brings it back', async () => {
    const { page, context, troubles } = await stage.open(size, list);
    page.setDefaultTimeout(30_000);
    const shown = page.locator('shopping-list .screen');
    const total = await page.locator('price-bar, price-block').first().innerText();
    await page.getByRole('button', { name: /^Not in stock.*13 A twin socket-outlet/ }).click();
    await shown.getByText('Not in stock when asked for').waitFor();
    await page.getByLabel('Taken instead, in words').fill('Twin outlets, grey');
    await page.getByLabel(/^What all of it cost/).fill('25');
    await expectUsable(page, `what was taken instead on a ${size}`);
    await page.getByRole('button', { name: 'Record it' }).click();
    await shown
      .getByText(/Not in stock; taken instead: Twin outlets, grey, £25\.00, £[\d,.]+ more than the list says/)
      .waitFor();
    await shown.getByText(/What was taken instead came to £[\d,.]+ more/).waitFor();
    expect(await page.locator('price-bar, price-block').first().innerText()).toBe(total);
    await allKept(page);
    expect(await fetched(page, 'Fetch as text')).toContain('taken instead: Twin outlets, grey, £25.00');
    await page.reload({ waitUntil: 'networkidle' });
    await shown.getByText(/taken instead: Twin outlets, grey/).waitFor();
    await page.getByRole('button', { name: /^Change.*13 A twin socket-outlet/ }).click();
    await page.getByRole('button', { name: 'Nothing was taken' }).click();
    await shown.getByText('Not in stock when asked for').waitFor();
    await page
      .getByRole('button', { name: /^Undo: / })
      .first()
      .click();
    await shown.getByText(/taken instead: Twin outlets, grey/).waitFor();
    await page.getByRole('button', { name: /^Change.*13 A twin socket-outlet/ }).click();
    await page.getByRole('button', { name: 'Nothing was taken' }).click();
    await page.getByRole('button', { name: /^Not in stock.*13 A twin socket-outlet/ }).click();
    await page.getByRole('button', { name: 'It was there after all' }).click();
    await expect.poll(() => shown.getByText('Not in stock when asked for').count()).toBe(0);
    await page.getByRole('button', { name: 'Take back' }).click();
    await shown.getByText('Not in stock when asked for').waitFor();
    await allKept(page);
    expect(troubles).toEqual([]);
    await context.close();
  }, 120_000);

  it('lights the run of a cut on the plan, by its bar and by its line', async () => {
    const { page, context, troubles } = await stage.open(size, `${kit}&part=cuts`);
    const cable = page.getByRole('region', { name: /^Flat twin and earth/ });
    const line = cable.getByRole('button', { name: /R1–W1/ });
    await line.click();
    const run = onPlan(page, 'c1-w1-spur/cable-1');
    await expect.poll(() => run.getAttribute('class')).toContain('lit');
    expect(await line.getAttribute('aria-pressed')).toBe('true');
    await expectUsable(page, `the cut list on a ${size}`);
    await cable.locator('svg .cut.lit').click();
    await expect.poll(() => run.getAttribute('class')).not.toContain('lit');
    expect(troubles).toEqual([]);
    await context.close();
  }, 90_000);
});

describe('the shopping list leaves the screen', () => {
  it('as a message of what is still to be bought, as text, and as CSV', async () => {
    const { page, context, troubles } = await stage.open('desk', list);
    await context.grantPermissions(['clipboard-read', 'clipboard-write']);
    await box(page, sockets).check();
    await page.getByRole('button', { name: 'Copy', exact: true }).click();
    await page.getByText('Copied: paste it into a message.').waitFor();
    const message = (await page.evaluate('navigator.clipboard.readText()')) as string;
    expect(message).toContain('To collect, our reference RW-0001');
    expect(message).toContain('12 m in one length: Flat twin and earth cable');
    expect(message).not.toContain('socket-outlet');
    const text = await fetched(page, 'Fetch as text');
    expect(text).toContain('[ ] 3 × 13 A twin socket-outlet');
    const rows: readonly (readonly string[])[] = parse(await fetched(page, 'Fetch as CSV'), { bom: true });
    expect(rows.some((row) => row.includes('socket-twin'))).toBe(true);
    expect(troubles).toEqual([]);
    await context.close();
  }, 90_000);

  it('on paper alone, with a box for each thing and the cut list', async () => {
    const { page, context } = await stage.open('phone', list);
    await page.locator('shopping-list label input').first().waitFor();
    const count = await page.locator('shopping-list label input').count();
    await page.emulateMedia({ media: 'print' });
    const paper = page.locator('shopping-paper');
    await paper.getByRole('heading', { name: /^Shopping list, RW-0001/ }).waitFor();
    expect(await paper.locator('svg.tick:visible').count()).toBe(count - 1);
    expect(await paper.locator('cut-bars:visible').count()).toBe(3);
    for (const name of ['header', 'step-run', 'price-bar', 'kit-switch', 'shopping-list .screen', '.skip'])
      expect(await page.locator(name).first().isVisible(), name).toBe(false);
    await context.close();
  }, 90_000);

  it('on paper as it was in the window, however wide the paper is', async () => {
    const { page, context } = await stage.open('phone', list);
    const open = page.locator('shopping-paper section.open');
    await open.waitFor({ state: 'attached' });
    await page.emulateMedia({ media: 'print' });
    // A sheet of A4, CSS px.
    await page.setViewportSize({ width: 794, height: 1123 });
    await open.getByText(/^Still open: 2 boxes/).waitFor();
    // As long as anything could answer that was asked anew.
    await page.waitForTimeout(100);
    expect(await open.isVisible()).toBe(true);
    await page.emulateMedia({ media: 'screen' });
    await page.locator('shopping-list .screen').waitFor();
    expect(await page.locator('step-run').isVisible()).toBe(true);
    await context.close();
  }, 90_000);
});
