import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { boxOf, overlap } from './boxes.ts';
import { onPlan, type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

/** Takes W1 by the hand and moves it a little along its wall, without letting go. */
async function pullW1(page: Page): Promise<void> {
  const { x, y, width, height } = await boxOf(onPlan(page, 'w1-living1').locator('rect.hit'));
  await page.mouse.move(x + width / 2, y + height / 2);
  await page.mouse.down();
  await page.mouse.move(x + width / 2, y + height / 2 + 24, { steps: 4 });
}

describe('a point that is dragged on a phone', () => {
  it('has the plan to itself: its dimensions and its label, no rooms’ names, no marks, until it is let go', async () => {
    const { page, context } = await stage.open('phone', '/jobs/saltglass3/wanted');
    const others = page.locator('plan-view :is(g.rooms, g.findings)');
    const seen = (): Promise<readonly boolean[]> =>
      others.evaluateAll((groups) => groups.map((group) => getComputedStyle(group).display !== 'none'));
    await expect.poll(seen).toEqual([true, true]);
    await pullW1(page);
    const drawn = page.locator('plan-view g.dimensions text');
    await expect.poll(() => drawn.allTextContents()).toContain('W1');
    expect((await drawn.allTextContents()).filter((text) => /^\d+$/.test(text))).toHaveLength(2);
    expect(await seen()).toEqual([false, false]);
    await page.mouse.up();
    await expect.poll(seen).toEqual([true, true]);
    await context.close();
  });
});

describe.each(['desk', 'phone'] as const)('what was just done, told on a %s', (size) => {
  it('covers neither the sheet, nor the plan, nor undo and redo', async () => {
    const { page, context } = await stage.open(size, '/jobs/saltglass3/wanted');
    await pullW1(page);
    await page.mouse.up();
    await page.getByRole('button', { name: /^Undo: / }).click();
    const told = await boxOf(
      page
        .locator('toast-line')
        .getByText(/^Undone: /)
        .locator('..'),
    );
    const worked = [
      page.locator('main'),
      page.locator('section.plan'),
      page.getByRole('button', { name: /^Undo/ }),
      page.getByRole('button', { name: /^Redo/ }),
      page.getByRole('navigation', { name: 'Steps of the job' }),
    ];
    for (const one of worked) expect(overlap(told, await boxOf(one)), String(one)).toBe(false);
    await context.close();
  });
});

describe('a line of the kit that was tapped', () => {
  it('is told from others by a rule and by weight, and by what it says to a screen reader', async () => {
    const { page, context } = await stage.open('desk', '/jobs/saltglass3/kit');
    const lines = page.locator('kit-step button.line');
    const looks = (line: Locator): Promise<readonly string[]> =>
      line.evaluate((button) => [
        getComputedStyle(button).fontWeight,
        getComputedStyle(button.closest('td') ?? button).boxShadow,
      ]);
    const before = await looks(lines.nth(1));
    await lines.nth(1).click();
    expect(await lines.nth(1).getAttribute('aria-pressed')).toBe('true');
    const [weight, rule] = await looks(lines.nth(1));
    expect(Number(weight)).toBeGreaterThan(Number(before[0]));
    expect(rule).not.toBe('none');
    expect(await looks(lines.nth(0))).toEqual(before);
    await context.close();
  });
});

describe('a storey without walls', () => {
  it('has its notice only while nothing is placed on it, and promises no wall to tap', async () => {
    const { page, context } = await stage.open('phone', '/');
    await page
      .getByRole('button', { name: /^New job/ })
      .first()
      .click();
    await page.waitForURL(/\/jobs\//);
    await page.getByRole('link', { name: /^Wanted/ }).click();
    const notice = page.locator('plan-view p.empty');
    await notice.waitFor();
    await page.getByRole('button', { name: 'Place it on the plan' }).click();
    await notice.waitFor({ state: 'detached' });
    const hint = page.locator('plan-view .hint');
    expect(await hint.innerText()).not.toMatch(/wall|Escape/);
    const plan = await boxOf(page.locator('plan-view'));
    await page.touchscreen.tap(plan.x + plan.width / 2, plan.y + plan.height / 2);
    await page.locator('plan-view g.thing').first().waitFor();
    expect(await notice.count()).toBe(0);
    await context.close();
  });
});
