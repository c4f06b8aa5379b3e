import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { onPlan, type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

describe('found ways while a wanted point is dragged', () => {
  it('follow the hand: the cheapest is said on the way, and all are there when it rests', async () => {
    const { page, troubles, context } = await stage.open('desk', '/jobs/saltglass3/ways');
    await page.getByRole('button', { name: 'Find ways' }).click();
    const ways = page.locator('find-ways');
    const settled = ways.locator('[aria-busy=false]');
    await settled.waitFor({ timeout: 60_000 });
    const before = await ways.locator('found-card').first().innerText();
    const point = onPlan(page, 'w1-living1');
    const box = await point.boundingBox();
    if (box === null) throw new Error('The point is not on the plan.');
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    const hint = ways.locator('p.hint', { hasText: 'The job has changed' });
    for (const px of [10, 20, 30]) await page.mouse.move(x + px, y - px);
    await hint.filter({ hasText: 'The cheapest to do now: ' }).waitFor();
    expect(await hint.innerText()).toMatch(/£\d/);
    // Nothing that was found before is taken away from under the hand.
    expect(await ways.locator('found-card').first().innerText()).toBe(before);
    await page.mouse.move(x + 120, y - 120, { steps: 4 });
    await page.mouse.up();
    await settled.waitFor({ timeout: 60_000 });
    expect(await ways.locator('found-card').count()).toBeGreaterThan(1);
    expect(await hint.count()).toBe(0);
    expect(troubles).toEqual([]);
    await context.close();
  });
});
