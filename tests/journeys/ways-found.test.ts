import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Job } from '#model/job.ts';
import { demoJob } from '../engine/demo-jobs/demo-estimates.ts';
import { allKept, expectUsable, priceOn, type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

const job = /^3 Saltglass Row: three outlets/;

/** Opens the Ways of a demo job. */
async function atWays(page: Page, name = job): Promise<void> {
  await page.getByRole('heading', { name }).click();
  await page.getByRole('link', { name: /^Ways/ }).click();
}

async function find(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Find ways' }).click();
  await page.getByRole('radio').first().waitFor({ timeout: 60_000 });
}

/** The new cables on the plan, by what they are called. */
const newCables = (page: Page): Promise<readonly string[]> =>
  page
    .locator('plan-view g[role=button][aria-label^="Cable"], plan-view g.cables g[role=button]')
    .evaluateAll((things) =>
      things.map(
        (thing) =>
          (thing as unknown as { getAttribute(name: string): string }).getAttribute('aria-label') ?? '',
      ),
    );

const pence = (text: string): number => {
  const [, pounds = '0', rest = '0'] = /£([\d,]+)\.(\d\d)/.exec(text) ?? [];
  return Number(pounds.replaceAll(',', '')) * 100 + Number(rest);
};

describe('found ways', () => {
  it('are drawn and priced when touched, kept in one step, and undone', async () => {
    const { page, troubles, context } = await stage.open('desk', '/');
    await atWays(page);
    const shownPence = await priceOn(page);
    const cablesBefore = await newCables(page);
    await find(page);
    const cards = page.locator('found-card');
    const prices = (await cards.locator('.head').allInnerTexts()).map(pence);
    expect(prices).toEqual(prices.toSorted((a, b) => a - b));
    // One of the cards is the least disturbing, and the words above say which.
    expect(await page.getByRole('radio', { name: /, least disturbing,/ }).count()).toBe(1);
    await page.getByText(/the least disturbing of all that was found/).waitFor();
    await page.getByRole('radio').nth(1).click();
    await page.getByText('Way 2, ').waitFor();
    expect(await priceOn(page)).toBe(prices[1]);
    expect(await newCables(page)).not.toEqual(cablesBefore);
    await expectUsable(page, 'a found way on the plan');
    const strip = page.locator('scheme-strip scheme-card');
    const schemes = await strip.count();
    await page.locator('found-list run-steps summary').click();
    expect(await page.locator('found-list run-steps li').count()).toBeGreaterThan(3);
    await page.getByRole('button', { name: 'Keep this way' }).click();
    await expect.poll(() => strip.count()).toBe(schemes + 1);
    await page.getByRole('button', { name: 'Work on it' }).waitFor();
    await allKept(page);
    await page.getByRole('button', { name: /^Undo: Keep the scheme/ }).click();
    await expect.poll(() => strip.count()).toBe(schemes);
    await page.getByRole('button', { name: 'Keep this way' }).waitFor();
    await page.getByRole('button', { name: 'Off the plan' }).click();
    await expect.poll(() => priceOn(page)).toBe(shownPence);
    expect(await newCables(page)).toEqual(cablesBefore);
    expect(troubles).toEqual([]);
    await context.close();
  });

  it('follow the arrow keys, in the list and in the chart', async () => {
    const { page, context } = await stage.open('desk', '/');
    await atWays(page);
    await find(page);
    await page.getByRole('radio').first().focus();
    await page.keyboard.press('ArrowDown');
    await page.getByText('Way 2, ').waitFor();
    expect(await page.getByRole('radio').nth(1).getAttribute('aria-checked')).toBe('true');
    await page.keyboard.press('ArrowUp');
    await page.getByText('Way 1, ').waitFor();
    const marks = page.locator('found-chart g[role=button]');
    expect(await marks.first().getAttribute('aria-label')).toMatch(/^Way 1: £.*points/);
    await marks.first().focus();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Enter');
    await page.getByText('Way 3, ').waitFor();
    await context.close();
  });

  it('are found without a connection, and can be used on a phone', async () => {
    const { page, context } = await stage.open('phone', '/');
    await page.getByRole('heading', { name: job }).click();
    await page.getByRole('link', { name: /^Ways/ }).tap();
    await page.waitForLoadState('networkidle');
    await context.setOffline(true);
    await find(page);
    await page.getByRole('radio').first().tap();
    await page.getByText('Way 1, ').waitFor();
    const box = await page.getByRole('button', { name: 'Keep this way' }).boundingBox();
    expect(box?.height).toBeGreaterThanOrEqual(44);
    const sheet = page.locator('main.sheet');
    expect(
      await sheet.evaluate(
        (one) => (one as unknown as { scrollWidth: number; clientWidth: number }).scrollWidth,
      ),
    ).toBeLessThanOrEqual(390);
    await page.getByRole('button', { name: 'Set the two side by side' }).tap();
    await page.getByText('What the fuse does').waitFor();
    await expectUsable(page, 'found ways on a phone');
    await context.setOffline(false);
    await context.close();
  });
});

describe('why a point is not joined otherwise', () => {
  it('is answered by a rule, or by the money', async () => {
    const { page, context } = await stage.open('desk', '/');
    await atWays(page);
    await find(page);
    await page.getByText('Why not another way?').click();
    const form = page.locator('why-not');
    await form.getByLabel('Point').selectOption({ label: 'W2' });
    await form
      .getByLabel('Joined on at')
      .selectOption({ label: await optionOf(page, /^S1, a spur already/) });
    await form.getByRole('button', { name: 'Why not so?' }).click();
    await form.getByText('A rule forbids it:').waitFor({ timeout: 60_000 });
    const told = (await form.locator('finding-card .more').allInnerTexts()).join(' ');
    expect(told).toContain('SP3');
    // An RCBO cures that, and the search would take one along: it forbids nothing.
    expect(told).not.toContain('RC1');
    await form.getByLabel('Joined on at').selectOption({ label: await optionOf(page, /^R2, on the ring/) });
    await form.getByRole('button', { name: 'Why not so?' }).click();
    await form.getByText(/^It may be done, .*£/).waitFor({ timeout: 60_000 });
    await form.getByLabel('Joined by').selectOption({ label: 'a fused spur' });
    await form.getByRole('group', { name: 'Joined on after it' }).getByLabel('W3').check();
    await form.getByRole('button', { name: 'Why not so?' }).click();
    await form
      .locator('.answer strong')
      .getByText(/W2 and W3|W2, W3/)
      .waitFor({ timeout: 60_000 });
    await expectUsable(page, 'why not');
    await context.close();
  });
});

/** The whole words of an option of where a spur is joined on. */
async function optionOf(page: Page, words: RegExp): Promise<string> {
  const options = await page.locator('why-not').getByLabel('Joined on at').locator('option').allInnerTexts();
  return options.map((one) => one.trim()).find((one) => words.test(one)) ?? '';
}

describe('a connection that is kept while the rest is searched', () => {
  it('is in every way found then, is told on its card, and is let go by undo', async () => {
    const { page, context } = await stage.open('desk', '/');
    await atWays(page);
    await find(page);
    await page.getByRole('radio').nth(1).click();
    const keep = page.getByRole('button', { name: /^Keep this, search the rest: W3 spur/ });
    const name = ((await keep.getAttribute('aria-label')) ?? '').replace('Keep this, search the rest: ', '');
    await keep.click();
    const held = page.locator('found-card').getByText(`Held fast: ${name}`);
    await held.first().waitFor({ timeout: 60_000 });
    await expect.poll(() => held.count(), { timeout: 20_000 }).toBe(await page.locator('found-card').count());
    // Why that point is not joined otherwise is answered all the same, as if it were not held.
    await page.getByText('Why not another way?').click();
    const form = page.locator('why-not');
    await form.getByLabel('Point').selectOption({ label: 'W3' });
    await form.getByRole('button', { name: 'Why not so?' }).click();
    await form.getByText(/^(It may be done|It is joined so in way 1), /).waitFor({ timeout: 60_000 });
    await page.getByRole('button', { name: new RegExp(`^Undo: Keep this: ${name}`) }).click();
    await held.first().waitFor({ state: 'detached', timeout: 20_000 });
    await context.close();
  });
});

describe('a leg of unknown way', () => {
  it('is searched as if it ran elsewhere, written down as seen, and that undone', async () => {
    const { page, troubles, context } = await stage.open('desk', '/');
    await atWays(page);
    await find(page);
    await page.getByText('What if a leg runs elsewhere?').click();
    const form = page.locator('leg-elsewhere');
    await form.getByLabel('Leg of unknown way').selectOption({ label: 'Leg R3–R4' });
    await form.getByLabel('It might run').selectOption('floor');
    await form.getByRole('button', { name: 'What would that change?' }).click();
    await form.getByText(/^As it is taken to run now: £/).waitFor({ timeout: 60_000 });
    await form.getByText(/^If it ran there: /).waitFor();
    await expectUsable(page, 'what if a leg runs elsewhere');
    const legs = form.getByLabel('Leg of unknown way').locator('option');
    const unknown = await legs.count();
    await form.getByRole('button', { name: 'It does run there: I saw it' }).click();
    await expect.poll(() => legs.count()).toBe(unknown - 1);
    await page.getByText('The job has changed since').waitFor({ state: 'detached', timeout: 20_000 });
    await page.getByRole('button', { name: /^Undo: Leg R3–R4 runs elsewhere/ }).click();
    await expect.poll(() => legs.count()).toBe(unknown);
    expect(troubles).toEqual([]);
    await context.close();
  });
});

/** A demo job with two more wanted points, both in one place. */
function twoInOnePlace(): Job {
  const job = demoJob('quarrel-court');
  const [first] = job.points.filter(({ status, place }) => status === 'wanted' && place && 'wall' in place);
  if (first?.place === undefined || !('wall' in first.place)) throw new Error('nothing wanted on a wall');
  const place = { ...first.place, alongMm: first.place.alongMm + 400 };
  const both = ['W4', 'W5'].map((label) => ({ ...first, id: label.toLowerCase(), label, place }));
  return { ...job, id: 'two-in-one', points: [...job.points, ...both], schemes: [] };
}

describe('a house in which no way passes', () => {
  it('says what stands against every way, and no reason that is not one', async () => {
    const job = twoInOnePlace();
    const stored = await fetch(new URL('/api/jobs', stage.server.address), {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(job),
    });
    expect(stored.status).toBe(201);
    const { page, troubles, context } = await stage.open('desk', `/jobs/${job.id}/ways`);
    await page.getByRole('button', { name: 'Find ways' }).click();
    const ways = page.locator('find-ways');
    // A house in which no way passes is searched through before that is said.
    await ways.getByText('Whatever way is taken, this fails. Mend it first:').waitFor({ timeout: 150_000 });
    await ways.getByText(/W5 is wanted where W4 is/).waitFor({ timeout: 60_000 });
    expect(await ways.getByText('The best of each kind').count()).toBe(0);
    await expectUsable(page, 'a house in which no way passes');
    expect(troubles).toEqual([]);
    await context.close();
  }, 240_000);
});

describe('a search that breaks off', () => {
  it('says so, changes nothing, and can be tried again', async () => {
    const { page, context } = await stage.open('phone', '/');
    await context.route(/search-worker/, (route) => route.abort());
    await atWays(page);
    await page.getByRole('button', { name: 'Find ways' }).click();
    const trouble = page.getByText('The search broke off');
    await trouble.waitFor();
    await expectUsable(page, 'a search that broke off');
    await context.unroute(/search-worker/);
    await page.getByRole('button', { name: 'Try again' }).click();
    await page.getByRole('radio').first().waitFor({ timeout: 60_000 });
    expect(await trouble.count()).toBe(0);
    await context.close();
  });
});
