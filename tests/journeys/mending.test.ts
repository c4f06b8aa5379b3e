import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { allKept, onPlan, priceOn, type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

describe('a double spur that fails', () => {
  it('becomes a fused branch by one tap where the scheme is made, and can be taken back', async () => {
    const { page, troubles, context } = await stage.open('desk', '/');
    await page.getByRole('heading', { name: /^3 Saltglass Row: three outlets/ }).click();
    await page.getByRole('link', { name: /^Ways/ }).click();
    await page.getByRole('button', { name: /W1 and W2 in turn on one spur/ }).click();
    const failing = page.locator('finding-card[outcome=fails]');
    await failing.first().waitFor();
    expect(await failing.filter({ hasText: 'SP1' }).count()).toBeGreaterThan(0);
    const before = await priceOn(page);
    await page.getByRole('button', { name: /Put a fused unit before W1/ }).click();
    await expect.poll(() => failing.filter({ hasText: 'SP1' }).count()).toBe(0);
    await expect.poll(() => priceOn(page)).not.toBe(before);
    await expect.poll(() => failing.count()).toBe(0);
    await page.getByRole('button', { name: /^Undo: Put a fused unit/ }).click();
    await expect.poll(() => failing.filter({ hasText: 'SP1' }).count()).toBeGreaterThan(0);
    expect(await priceOn(page)).toBe(before);
    expect(troubles).toEqual([]);
    await context.close();
  });

  it('shows its place on the plan, on the storey that it is on', async () => {
    const { page, context } = await stage.open('desk', '/');
    await page.getByRole('heading', { name: /^3 Saltglass Row: three outlets/ }).click();
    await page.getByRole('link', { name: /^Ways/ }).click();
    await page.getByRole('button', { name: /W2 off the existing spur/ }).click();
    const card = page.locator('finding-card[outcome=fails]').filter({ hasText: 'SP3' }).first();
    await card.getByRole('button').first().click();
    await page.getByRole('button', { name: 'First floor', pressed: true }).waitFor();
    await context.close();
  });

  it('takes a remedy with its price from the finding that asks for it', async () => {
    const { page, context } = await stage.open('desk', '/');
    await page.getByRole('heading', { name: /^3 Saltglass Row: three outlets/ }).click();
    await page.getByRole('link', { name: /^Ways/ }).click();
    await page.getByRole('button', { name: /W2 off the existing spur/ }).click();
    const before = await priceOn(page);
    const add = page.getByRole('button', { name: /Add this remedy \(\+£/ }).first();
    await add.waitFor();
    const promised = /\+£([\d,]+\.\d\d)/.exec(await add.innerText())?.[1] ?? '';
    await add.click();
    await expect
      .poll(() => priceOn(page))
      .toBe(before + Math.round(Number(promised.replaceAll(',', '')) * 100));
    await context.close();
  });
});

describe('a line of the kit', () => {
  it('lights on the plan what it is for, and takes what the van holds off what is bought, not off the price', async () => {
    const { page, context } = await stage.open('desk', '/');
    await page.getByRole('heading', { name: /^3 Saltglass Row: three outlets/ }).click();
    await page.getByRole('link', { name: /^Kit/ }).click();
    await page.getByRole('button', { name: /^13 A twin socket-outlet$/ }).click();
    await expect.poll(() => onPlan(page, 'w1-living1').getAttribute('class')).toContain('lit');
    const before = await priceOn(page);
    const van = page.getByRole('textbox', { name: /In the van: 13 A twin socket-outlet/ });
    await van.fill('3');
    await van.press('Enter');
    const sockets = page.getByRole('row').filter({ hasText: '13 A twin socket-outlet' }).first();
    await sockets.getByText('none: the van has it').waitFor();
    // Of cable every length counts by itself: two short ones serve other runs than a long one.
    const lengths = page.getByRole('textbox', {
      name: /Lengths in the van, m: Flat twin and earth cable 2\.5/,
    });
    await lengths.fill('a bit');
    await lengths.press('Enter');
    await page.getByText(/“a bit” is no length/).waitFor();
    await lengths.fill('3, 3');
    await lengths.press('Enter');
    await expect.poll(() => lengths.inputValue()).toBe('3, 3');
    await expect.poll(() => page.getByText(/is no length/).count()).toBe(0);
    expect(await priceOn(page)).toBe(before);
    await context.close();
  });
});

describe('two schemes side by side', () => {
  it('tell money, cable, joints and what capacity is left, and keep their address', async () => {
    const { page, troubles, context } = await stage.open('desk', '/');
    await page.getByRole('heading', { name: /^18 Fernlow Close/ }).click();
    await page.getByRole('link', { name: /^Ways/ }).click();
    await page.getByRole('link', { name: 'Compare two schemes' }).click();
    await page.getByRole('heading', { name: 'Two schemes side by side' }).waitFor();
    const table = page.locator('compare-view table.sides');
    expect(await table.innerText()).toMatch(/Capacity left/);
    expect(await table.innerText()).toMatch(/behind a fuse/);
    await page.reload({ waitUntil: 'networkidle' });
    await page.getByRole('heading', { name: 'Two schemes side by side' }).waitFor();
    expect(troubles).toEqual([]);
    await context.close();
  });
});

describe('two windows on one job', () => {
  it('never lay one save over the other unasked: both states are there in the end', async () => {
    const first = await stage.open('desk', '/');
    const second = await stage.open('desk', '/');
    for (const { page } of [first, second]) {
      await page.getByRole('heading', { name: /^Flat 5, Quarrel Court/ }).click();
      await page.getByRole('link', { name: /^Price/ }).click();
      await page.getByRole('heading', { name: 'Price', level: 2 }).waitFor();
    }
    const set = async (page: typeof first.page, label: string, value: string): Promise<void> => {
      const field = page.getByRole('textbox', { name: label });
      await field.fill(value);
      await field.press('Enter');
    };
    await set(first.page, 'Travel, there and back', '75');
    await allKept(first.page);
    // The same fact otherwise: what both changed apart is kept together, and asks nobody.
    await set(second.page, 'Travel, there and back', '222');
    await second.page.getByText(/This job was changed elsewhere/).waitFor();
    const before = new URL(second.page.url()).pathname;
    await second.page.getByRole('button', { name: /Save mine as a copy/ }).click();
    await second.page.waitForURL((url) => url.pathname !== before);
    await allKept(second.page);
    const jobs = (await (await fetch(new URL('/api/jobs', stage.server.address))).json()) as {
      jobs: { id: string; title: string }[];
    };
    const texts = await Promise.all(
      jobs.jobs
        .filter(({ title }) => title.startsWith('Flat 5, Quarrel Court'))
        .map(async ({ id }) => (await fetch(new URL(`/api/jobs/${id}`, stage.server.address))).text()),
    );
    const terms = texts.map((text) => (JSON.parse(text) as { terms: Record<string, unknown> }).terms);
    expect(terms).toHaveLength(2);
    expect(terms.map(({ travelMin }) => travelMin).toSorted()).toEqual([222, 75]);
    await first.context.close();
    await second.context.close();
  });
});
