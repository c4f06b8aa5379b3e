import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { priceOn, type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

/** The accessible name of what has the focus, through all shadow roots. */
const focusedName = (page: Page): Promise<string> =>
  page.evaluate(() => {
    let at = document.activeElement;
    while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
    return at?.getAttribute('aria-label') ?? at?.textContent?.trim() ?? '';
  });

/** Presses Tab until the focus is on something of this name. */
async function tabTo(page: Page, name: RegExp, most = 120): Promise<void> {
  for (let i = 0; i < most; i++) {
    await page.keyboard.press('Tab');
    if (name.test(await focusedName(page))) return;
  }
  throw new Error(`the keyboard does not come to ${name}: last at “${await focusedName(page)}”`);
}

/** Presses Tab until the focus is on a thing of the plan. */
async function tabToPlan(page: Page): Promise<void> {
  const inPlan = (): Promise<boolean> =>
    page.evaluate(() => {
      let at = document.activeElement;
      while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
      return at instanceof SVGElement && at.dataset.subject !== undefined;
    });
  for (let i = 0; i < 120; i++) {
    if (await inPlan()) return;
    await page.keyboard.press('Tab');
  }
  throw new Error('the keyboard does not come to the plan');
}

/** How the outline of what has the focus is drawn: "solid 2px"; none where nothing shows it. */
const outlineOfFocus = (page: Page): Promise<string> =>
  page.evaluate(() => {
    let at = document.activeElement;
    while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
    if (at === null || at === document.body) return 'nothing has the focus';
    // A link that covers its whole row draws its outline round the row; a thing of the plan has a ring or a glow.
    const ring = at.querySelector('.ring, .glow');
    if (ring !== null && getComputedStyle(ring).display !== 'none') return 'ring';
    const styles = [getComputedStyle(at), getComputedStyle(at, '::after')];
    const drawn = styles.find(({ outlineStyle }) => outlineStyle !== 'none');
    return drawn === undefined ? 'none' : `${drawn.outlineStyle} ${drawn.outlineWidth}`;
  });

describe('by keyboard alone', () => {
  it('a job is opened, a point moved along its wall, and the move taken back', async () => {
    const { page, troubles, context } = await stage.open('desk', '/');
    await tabTo(page, /^3 Saltglass Row: three outlets/);
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: /Saltglass/ }).waitFor();
    await tabTo(page, /^Wanted/);
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: /^Wanted/, level: 2 }).waitFor();
    await page.locator('plan-view g[role=button]').first().waitFor();
    await tabToPlan(page);
    for (let i = 0; i < 60 && !/^W1/.test(await focusedName(page)); i++)
      await page.keyboard.press('PageDown');
    expect(await focusedName(page)).toMatch(/^W1/);
    const before = await priceOn(page);
    for (let i = 0; i < 6; i++) await page.keyboard.press('ArrowLeft');
    await expect.poll(() => priceOn(page)).not.toBe(before);
    expect(await focusedName(page)).toMatch(/^W1/);
    for (let i = 0; i < 12 && (await priceOn(page)) !== before; i++) {
      await page.keyboard.press('Control+z');
      await page.waitForTimeout(60);
    }
    expect(await priceOn(page)).toBe(before);
    expect(troubles).toEqual([]);
    await context.close();
  });

  it.each(['/', '/jobs/saltglass3/wanted', '/firm'])('the focus can always be seen: %s', async (path) => {
    const { page, context } = await stage.open('desk', path);
    for (let i = 0; i < 25; i++) {
      await page.keyboard.press('Tab');
      const outline = await outlineOfFocus(page);
      if (outline === 'nothing has the focus') break;
      expect(outline, `${await focusedName(page)}, after ${i + 1} times Tab`).not.toMatch(/^none|^\w+ 0px/);
    }
    await context.close();
  });
});

describe('a place that is asked of the plan', () => {
  it('is given by keyboard, and the focus is then in sight, on the point’s line, which says that it is placed', async () => {
    const { page, context } = await stage.open('desk', '/');
    await page.getByRole('button', { name: 'New job', exact: true }).click();
    await page.getByRole('link', { name: /^Wanted/ }).click();
    for (const label of ['W1', 'W2', 'W3']) {
      await page.getByRole('button', { name: 'Place it on the plan' }).focus();
      await page.keyboard.press('Enter');
      await page.locator('plan-view svg.placing').waitFor();
      // Each somewhere else: where one stands already none is put.
      for (let i = 1; i < Number(label.slice(1)); i++) await page.keyboard.press('ArrowRight');
      await page.keyboard.press('Enter');
      const line = page
        .locator('wanted-step [data-thing]')
        .filter({ hasText: label })
        .getByRole('button')
        .first();
      await line.and(page.locator(':focus')).waitFor();
      // What the open form brings later does not push it out of sight.
      await page.waitForTimeout(300);
      const [row, sheet] = [await line.boundingBox(), await page.locator('main.sheet').boundingBox()];
      if (row === null || sheet === null) throw new Error('nothing is seen of it');
      expect(row.y).toBeGreaterThanOrEqual(sheet.y - 1);
      expect(row.y + row.height).toBeLessThanOrEqual(sheet.y + sheet.height + 1);
      expect(await page.locator('wanted-step').innerText()).not.toContain('Without a place its');
    }
    await context.close();
  });

  it('is given up by Escape wherever the focus is: a later tap adds nothing', async () => {
    const { page, context } = await stage.open('desk', '/jobs/saltglass3/wanted');
    const ask = page.getByRole('button', { name: 'Place it on the plan' });
    const points = page.locator('wanted-step [data-thing]');
    await points.first().waitFor();
    const before = await points.count();
    for (const key of ['', 'Tab']) {
      await ask.click();
      await page.getByRole('button', { name: /or press here to stop/ }).waitFor();
      if (key !== '') await page.keyboard.press(key);
      await page.keyboard.press('Escape');
      await ask.waitFor();
      await page.mouse.click(700, 450);
      expect(await points.count()).toBe(before);
    }
    await ask.click();
    await page.getByRole('link', { name: /^Ways/ }).click();
    await page.getByRole('link', { name: /^Wanted/ }).click();
    await ask.waitFor();
    expect(await points.count()).toBe(before);
    await context.close();
  });
});
