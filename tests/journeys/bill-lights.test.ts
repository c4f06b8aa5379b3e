import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectUsable, onPlan, type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

const line = (page: Page, name: RegExp): Locator =>
  page.locator('kit-bill').getByRole('button', { name }).first();
/** Subjects of all that is lit on the plan, sorted. */
const litOn = (page: Page): Promise<readonly (string | null)[]> =>
  page
    .locator('plan-view g.thing.lit')
    .evaluateAll((all) => [...new Set(all.map((thing) => thing.getAttribute('data-subject')))].sort());
const AT_MOST = { timeout: 30_000 };

describe.each(['phone', 'desk'] as const)('a line of the bill on a %s', (size) => {
  it('lights what it is for on the plan when it is tapped, and puts it out when it is tapped again', async () => {
    const { page, context, troubles } = await stage.open(size, '/jobs/saltglass3/kit?scheme=spurs-rcbo');
    const device = line(page, /^RCBO/);
    await device.waitFor(AT_MOST);
    expect(await litOn(page)).toEqual([]);
    await device.click();
    expect(await device.getAttribute('aria-pressed')).toBe('true');
    await expect.poll(() => onPlan(page, 'board-hall').getAttribute('class'), AT_MOST).toContain('lit');
    await page.locator('kit-bill td.causes').first().waitFor();
    await device.click();
    await expect.poll(() => litOn(page), AT_MOST).toEqual([]);
    await line(page, /13 A twin socket-outlet/).click();
    await expect.poll(async () => (await litOn(page)).length, AT_MOST).toBeGreaterThan(0);
    const lit = await litOn(page);
    expect(lit).not.toContain('board-hall');
    await line(page, /^Flat twin and earth cable/).click();
    await expect
      .poll(async () => (await litOn(page)).some((id) => id?.includes('/cable')), AT_MOST)
      .toBe(true);
    await expectUsable(page, `a lit line of the bill on a ${size}`);
    expect(troubles).toEqual([]);
    await context.close();
  }, 120_000);
});
