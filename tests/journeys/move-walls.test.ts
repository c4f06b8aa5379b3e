import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Job } from '#model/job.ts';
import { roomSides } from '../../ui/house/room-sides.ts';
import { boxOf } from './boxes.ts';
import { Hand } from './hand.ts';
import { pull, takeUpReshaping } from './pull.ts';
import { allKept, expectUsable, type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

const kept = async (): Promise<Job> =>
  (await (await fetch(`${stage.server.address}/api/jobs/saltglass3`)).json()) as Job;

/** The sides of a room of the ground floor as the server has them, whole mm. */
async function sidesOf(name: string): Promise<readonly number[]> {
  const [storey] = (await kept()).storeys;
  const room = storey?.rooms.find((one) => one.name === name);
  if (storey === undefined || room === undefined) throw new Error(`There is no ${name}.`);
  return roomSides(storey, room).map(({ lengthMm }) => Math.round(lengthMm));
}

/** The middle of a wall on the plan, px. */
async function middleOf(page: Page, wallId: string): Promise<readonly [number, number]> {
  const { x, y, width, height } = await boxOf(page.locator(`plan-view svg.plan [data-wall="${wallId}"]`));
  return [x + width / 2, y + height / 2];
}

describe.each(['desk', 'phone'] as const)('walls and corners on a %s', (size) => {
  it('are dragged on the plan, typed exactly, and taken back', async () => {
    const { page, troubles, context } = await stage.open(size, '/jobs/saltglass3/as-found');
    const hand = new Hand(page, size);
    const before = await sidesOf('Hall');
    await takeUpReshaping(page, hand);
    await expectUsable(page, `walls that can be moved on a ${size}`);
    const wall = await middleOf(page, 'gf-hall-01');
    await pull(page, size, [wall, [size === 'desk' ? 24 : 12, 0]], async () => {
      // Held, the house is drawn where the hand has it, with the lengths of the sides.
      await page.locator('plan-view svg.plan.reshaping').waitFor();
      const figures = page.locator('plan-view svg.hand .house-parts text.text-new');
      expect(await figures.count()).toBeGreaterThanOrEqual(4);
      const heights = await figures.evaluateAll((all) =>
        all.map((one) => Number(one.getAttribute('font-size')) * 5),
      );
      expect(Math.min(...heights)).toBeGreaterThanOrEqual(16);
    });
    await page.getByText('The wall has moved').waitFor();
    await allKept(page);
    const wider = await sidesOf('Hall');
    expect(Math.min(...wider)).toBeGreaterThan(Math.min(...before));
    expect(Math.min(...wider) % 50).toBe(0);
    await expectUsable(page, `a wall that was moved on a ${size}`);
    // To the millimetre by the field below the plan.
    await hand.type(/^Hall, .* side/, '1.123');
    await expect.poll(async () => Math.min(...(await sidesOf('Hall')))).toBe(1123);
    for (let step = 0; step < 2; step += 1)
      await hand.press(page.getByRole('button', { name: /^Take back/ }));
    await expect.poll(() => sidesOf('Hall')).toEqual(before);
    await hand.press(page.getByRole('button', { name: 'Done', exact: true }));
    expect(await page.locator('plan-view svg.hand circle.handle').count()).toBe(0);
    expect(troubles).toEqual([]);
    await context.close();
  });

  it('say why they cannot go where a room would turn over, and stay', async () => {
    const { page, troubles, context } = await stage.open(size, '/jobs/saltglass3/as-found');
    const hand = new Hand(page, size);
    const before = await sidesOf('Hall');
    await takeUpReshaping(page, hand);
    const [x, y] = await middleOf(page, 'gf-hall-01');
    const { x: left } = await boxOf(page.locator('plan-view svg.plan .walls'));
    await pull(
      page,
      size,
      [
        [x, y],
        [left - x - 10, 0],
      ],
      async () => {
        await page.locator('plan-view svg.hand .house-parts.refused').waitFor();
      },
    );
    await page.getByText(/^It cannot go there: /).waitFor();
    expect(await page.locator('plan-view svg.plan.reshaping').count()).toBe(0);
    expect(await sidesOf('Hall')).toEqual(before);
    expect(troubles).toEqual([]);
    await context.close();
  });
});

describe('walls and corners by keyboard', () => {
  it('are chosen one after the other, moved by arrows, and one undo takes a spell of steps back', async () => {
    const { page, troubles, context } = await stage.open('desk', '/jobs/saltglass3/as-found');
    const before = await sidesOf('Living room');
    await page.locator('as-found-step summary').filter({ hasText: 'Rooms and walls' }).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Move walls, corners and fixtures on the plan' }).focus();
    await page.keyboard.press('Enter');
    // The plan has the focus, and its first wall is in hand.
    const said = page.locator('reshape-bar .said');
    await expect.poll(() => said.innerText()).toMatch(/^The wall/);
    for (
      let presses = 0;
      presses < 60 && !/between Hall and Living room/.test(await said.innerText());
      presses += 1
    )
      await page.keyboard.press(']');
    const hall = await sidesOf('Hall');
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Shift+ArrowRight');
    await expect.poll(async () => Math.min(...(await sidesOf('Hall')))).toBe(Math.min(...hall) + 120);
    await page.keyboard.press('Control+z');
    await expect.poll(() => sidesOf('Living room')).toEqual(before);
    await page.locator('plan-view svg.plan').focus();
    await page.keyboard.press('Escape');
    await page.locator('reshape-bar').waitFor({ state: 'detached' });
    expect(troubles).toEqual([]);
    await context.close();
  });
});
