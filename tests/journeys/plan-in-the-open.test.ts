import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Box, boxOf, overlap } from './boxes.ts';
import { allKept, onPlan, type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

const viewOf = (page: Page): Promise<string | null> =>
  page.locator('plan-view svg.plan').getAttribute('viewBox');

/** Pulls a thing of the plan by some px, and lets go of it. */
async function pull(page: Page, subject: string, right: number, down: number): Promise<void> {
  const { x, y, width, height } = await boxOf(onPlan(page, subject).locator('rect.hit'));
  const [fromX, fromY] = [x + width / 2, y + height / 2];
  await page.mouse.move(fromX, fromY);
  await page.mouse.down();
  for (let step = 1; step <= 10; step++)
    await page.mouse.move(fromX + (right * step) / 10, fromY + (down * step) / 10);
  await page.mouse.up();
}

/** Sizes of windows in which the controls once lay over the kitchen, and the two that pages are made for. */
const windows = [
  ['desk', 1280, 720],
  ['desk', 1366, 768],
  ['desk', 1440, 900],
  ['desk', 720, 450],
  ['phone', 390, 844],
] as const;

describe.each(windows)('the plan on a %s of %i × %i', (size, width, height) => {
  it('is covered by none of its controls when it is seen whole', async () => {
    const { page, context } = await stage.open(size);
    await page.setViewportSize({ width, height });
    for (const step of ['as-found', 'kit']) {
      await page.goto(`/jobs/saltglass3/${step}`, { waitUntil: 'networkidle' });
      for (const storey of ['Ground floor', 'First floor']) {
        await page.locator('storey-switch').getByRole('button', { name: storey }).click();
        const controls = await Promise.all(
          ['storey-switch', 'view-switch', 'plan-view .tools'].map((part) => boxOf(page.locator(part))),
        );
        const walls = await page
          .locator('plan-view .wall-group path')
          .evaluateAll((paths) => paths.map((path) => path.getBoundingClientRect().toJSON() as Box));
        expect(walls.length).toBeGreaterThan(5);
        for (const control of controls) expect(walls.filter((wall) => overlap(wall, control))).toEqual([]);
      }
    }
    await context.close();
  }, 60_000);

  it('keeps half of a hand’s breadth, below its controls, of its own', async () => {
    const { page, context } = await stage.open(size);
    await page.setViewportSize({ width, height });
    await page.goto('/jobs/saltglass3/wanted', { waitUntil: 'networkidle' });
    const plan = await boxOf(page.locator('plan-view'));
    expect(Math.min(plan.width, plan.height)).toBeGreaterThan(270);
    await context.close();
  });
});

describe('a point that is dragged on a phone', () => {
  it('leaves the plan where it is, near the edge of what is seen too', async () => {
    const { page, context } = await stage.open('phone', '/jobs/saltglass3/wanted');
    const { x, y } = await boxOf(page.locator('plan-view'));
    const start = await boxOf(onPlan(page, 'w1-living1').locator('rect.hit'));
    await page.mouse.move(start.x + start.width / 2, start.y + start.height / 2);
    await page.mouse.wheel(0, -500);
    // The plan is pulled until the point stands near its edge.
    await page.mouse.move(x + 300, y + 40);
    await page.mouse.down();
    await page.mouse.move(x + 300 - (start.x + start.width / 2 - x - 24), y + 40, { steps: 10 });
    await page.mouse.up();
    const before = await viewOf(page);
    await pull(page, 'w1-living1', 0, 20);
    await onPlan(page, 'w1-living1').and(page.locator('.chosen')).waitFor();
    await page.waitForTimeout(400);
    expect(await viewOf(page)).toBe(before);
    await context.close();
  });
});

describe('a job without walls', () => {
  it('says what can be done now beside its buttons, and shows a placed point in a house’s size, where it was tapped', async () => {
    const { page, context } = await stage.open('phone', '/');
    await page
      .getByRole('button', { name: /^New job/ })
      .first()
      .click();
    await page.waitForURL(/\/jobs\//);
    const jobId = /\/jobs\/([^/?]+)/.exec(page.url())?.[1];
    await page.goto(`/jobs/${jobId}/wanted`, { waitUntil: 'networkidle' });
    const notice = page.locator('plan-view .empty');
    expect(await notice.innerText()).not.toMatch(/\byet\b/);
    expect(overlap(await boxOf(notice), await boxOf(page.locator('plan-view .tools')))).toBe(false);
    await page.getByRole('button', { name: 'Place it on the plan' }).click();
    const plan = await boxOf(page.locator('plan-view'));
    await page.mouse.click(plan.x + 120, plan.y + 100);
    const point = page.locator('plan-view g.thing');
    await point.waitFor();
    expect(await notice.count()).toBe(0);
    // The hit area, wide as a finger, stands where the finger was.
    const hit = await boxOf(point.locator('rect.hit'));
    expect(Math.abs(hit.x + hit.width / 2 - plan.x - 120)).toBeLessThan(24);
    expect(await page.locator('plan-view .scale').innerText()).toMatch(/[12] m/);
    for (let press = 0; press < 20; press++) await page.getByRole('button', { name: 'Nearer' }).click();
    expect(await page.locator('plan-view .scale').innerText()).not.toMatch(/ 100 mm/);
    await context.close();
  });
});

describe.each(['desk', 'phone'] as const)('a wanted point that is dragged to another on a %s', (size) => {
  it('keeps its source, says which is nearer by how much, and changes over when asked', async () => {
    const { page, context } = await stage.open(size, '/jobs/saltglass3/wanted?scheme=spurs-rcbo');
    const [from, to] = await Promise.all(
      ['w1-living1', 'r2-living1'].map((id) => boxOf(onPlan(page, id).locator('rect.hit'))),
    );
    if (from === undefined || to === undefined) throw new Error('no points');
    await pull(page, 'w1-living1', to.x - from.x, to.y - from.y - 16);
    const step = page.locator('wanted-step');
    const offer = step.locator('nearer-offer');
    await offer.getByText(/R2 is nearer: joined on there, W1 needs \d+\.\d\d\sm less new cable/).waitFor();
    await step
      .getByText(/Spur from R1, /)
      .first()
      .waitFor();
    await offer.getByRole('button', { name: 'Join W1 on at R2' }).click();
    await step
      .getByText(/Spur from R2, /)
      .first()
      .waitFor();
    expect(await offer.getByRole('button').count()).toBe(0);
    await page.getByRole('button', { name: /^Undo: Join W1 on at/ }).click();
    await step
      .getByText(/Spur from R1, /)
      .first()
      .waitFor();
    await page.getByRole('button', { name: 'Undo: Move W1' }).click();
    await allKept(page);
    await context.close();
  });
});
