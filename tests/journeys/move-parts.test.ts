import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Storey } from '#model/building.ts';
import type { Job } from '#model/job.ts';
import { cornersOf } from '../../ui/house/house-parts.ts';
import { roomSides } from '../../ui/house/room-sides.ts';
import { boxOf } from './boxes.ts';
import { Hand } from './hand.ts';
import { type Px, placeOnScreen, pull, takeUpReshaping } from './pull.ts';
import { allKept, expectUsable, type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

/** The ground floor as the server has it. */
async function ground(): Promise<Storey> {
  const job = (await (await fetch(`${stage.server.address}/api/jobs/saltglass3`)).json()) as Job;
  const [storey] = job.storeys;
  if (storey === undefined) throw new Error('The job has no storey.');
  return storey;
}

function sidesIn(storey: Storey, name: string): readonly number[] {
  const room = storey.rooms.find((one) => one.name === name);
  if (room === undefined) throw new Error(`There is no ${name}.`);
  return roomSides(storey, room).map(({ lengthMm }) => Math.round(lengthMm));
}

const outlineIn = (storey: Storey, id: string): readonly Px[] => {
  const found = storey.fixtures.find((one) => one.id === id);
  if (found === undefined) throw new Error(`There is no ${id}.`);
  return found.outline;
};

const middleOf = (outline: readonly Px[]): Px => [
  outline.reduce((sum, [x]) => sum + x / outline.length, 0),
  outline.reduce((sum, [, y]) => sum + y / outline.length, 0),
];

const undo = (page: Page, hand: Hand) => hand.press(page.getByRole('button', { name: /^Take back/ }));

describe.each(['desk', 'phone'] as const)('parts of a house on a %s', (size) => {
  it('are a corner, dragged, typed by the side that ends there, and taken back', async () => {
    const { page, troubles, context } = await stage.open(size, '/jobs/saltglass3/as-found');
    const hand = new Hand(page, size);
    const before = await ground();
    await takeUpReshaping(page, hand);
    const place = await placeOnScreen(page, cornersOf(before));
    // The upper left corner of the house: of one room alone.
    const corner = cornersOf(before).reduce((a, b) => (b[1] - b[0] > a[1] - a[0] ? b : a));
    await pull(page, size, [place(corner), [0, size === 'desk' ? -30 : -14]], async () => {
      await page.locator('plan-view svg.plan.reshaping').waitFor();
      expect(await page.locator('plan-view .telling').innerText()).toMatch(/side \d+ mm/);
    });
    await page.getByText('The corner has moved').waitFor();
    await allKept(page);
    const after = await ground();
    expect(cornersOf(after)).not.toContainEqual(corner);
    const fields = page.locator('reshape-bar number-field');
    expect(await fields.count()).toBe(2);
    await expectUsable(page, `a corner in hand on a ${size}`);
    const field = page.locator('reshape-bar').getByLabel(/, left side$/);
    await field.fill('3.456');
    await field.blur();
    await expect.poll(async () => sidesIn(await ground(), 'Kitchen')).toContain(3456);
    await undo(page, hand);
    await undo(page, hand);
    await expect.poll(ground).toEqual(before);
    expect(troubles).toEqual([]);
    await context.close();
  });

  it('are a fixture: dragged along its wall, typed from the corner, moved by keys, and taken back', async () => {
    const { page, troubles, context } = await stage.open(size, '/jobs/saltglass3/as-found');
    const hand = new Hand(page, size);
    const before = await ground();
    await takeUpReshaping(page, hand);
    const place = await placeOnScreen(page, cornersOf(before));
    const was = outlineIn(before, 'boiler-gas');
    await pull(page, size, [place(middleOf(was)), [1, size === 'desk' ? 26 : 13]], async () => {
      const words = await page.locator('plan-view .telling').innerText();
      expect(words).toMatch(/^Kitchen, \d+ mm from the left corner, \d+ mm from the right corner$/);
      expect(await page.locator('plan-view svg.hand .house-parts text.text-new').count()).toBeGreaterThan(0);
    });
    await page.getByText('It has moved').waitFor();
    await allKept(page);
    const moved = outlineIn(await ground(), 'boiler-gas');
    // It still stands against its wall, which runs up the plan, and is as large as it was.
    expect(Math.min(...moved.map(([x]) => x))).toBe(Math.min(...was.map(([x]) => x)));
    expect(middleOf(moved)[1]).toBeLessThan(middleOf(was)[1] - 50);
    await expectUsable(page, `a fixture in hand on a ${size}`);
    await hand.type('From right corner', '0.2');
    await expect
      .poll(async () => middleOf(outlineIn(await ground(), 'boiler-gas'))[1])
      .not.toBe(middleOf(moved)[1]);
    await undo(page, hand);
    await undo(page, hand);
    await expect.poll(ground).toEqual(before);
    // From its form it is in hand at once; keys move it, and a spell of them is one step back.
    await hand.press(page.getByRole('button', { name: 'Done', exact: true }));
    await hand.press(page.locator('room-list .row').filter({ hasText: 'Kitchen' }));
    await hand.press(page.locator('room-form summary').filter({ hasText: 'Fixtures' }));
    await hand.press(page.locator('fixture-list .row').filter({ hasText: 'Boiler' }));
    await hand.press(page.getByRole('button', { name: 'Move it on the plan' }));
    await page.locator('reshape-bar .said').filter({ hasText: 'The boiler, Kitchen' }).waitFor();
    await page.locator('plan-view svg.plan').focus();
    await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('ArrowDown');
    await expect
      .poll(async () => middleOf(outlineIn(await ground(), 'boiler-gas'))[1])
      .toBeCloseTo(middleOf(was)[1] - 110, 0);
    await undo(page, hand);
    await expect.poll(ground).toEqual(before);
    expect(troubles).toEqual([]);
    await context.close();
  });

  it('are part of a wall: marked by taps, typed, pushed out, dragged further, and taken back', async () => {
    const { page, troubles, context } = await stage.open(size, '/jobs/saltglass3/as-found');
    const hand = new Hand(page, size);
    const before = await ground();
    await takeUpReshaping(page, hand);
    const { x, y, width, height } = await boxOf(page.locator('plan-view svg.plan [data-wall="gf-hall-01"]'));
    await hand.tapAt(x + width / 2, y + height / 2);
    await hand.press(page.getByRole('button', { name: 'Push a part of it' }));
    await expectUsable(page, `a wall that is marked on a ${size}`);
    await hand.tapAt(x + width / 2, y + height * 0.15);
    await hand.tapAt(x + width / 2, y + height * 0.5);
    const marks = page.locator('plan-view svg.hand circle.handle-chosen');
    await expect.poll(() => marks.count()).toBe(2);
    const bar = page.locator('reshape-bar');
    await expect.poll(() => bar.locator('number-field').count()).toBe(4);
    await expectUsable(page, `a stretch that is marked on a ${size}`);
    await hand.type(/^Push into/, '0.3');
    await page.getByText('The part of the wall has moved').waitFor();
    await allKept(page);
    const pushed = await ground();
    expect(pushed.walls.length).toBeGreaterThanOrEqual(before.walls.length + 4);
    expect(sidesIn(pushed, 'Hall').length).toBe(sidesIn(before, 'Hall').length + 4);
    expect(sidesIn(pushed, 'Hall').filter((mm) => mm === 300)).toHaveLength(2);
    await undo(page, hand);
    await expect.poll(ground).toEqual(before);
    // By hand: marked again, and pulled into the hall between the marks, beside a door that nothing may stand in.
    await hand.tapAt(x + width / 2, y + height * 0.3);
    await hand.press(page.getByRole('button', { name: 'Push a part of it' }));
    await expect.poll(() => marks.count()).toBe(0);
    await hand.tapAt(x + width / 2, y + height * 0.15);
    await expect.poll(() => marks.count()).toBe(1);
    await hand.tapAt(x + width / 2, y + height * 0.5);
    await expect.poll(() => marks.count()).toBe(2);
    await pull(
      page,
      size,
      [
        [x + width / 2, y + height * 0.33],
        [size === 'desk' ? -30 : -10, 0],
      ],
      async () => {
        await page
          .locator('plan-view .telling')
          .filter({ hasText: /^Pushed by \d+ mm$/ })
          .waitFor();
      },
    );
    await page.getByText('The part of the wall has moved').waitFor();
    await expect
      .poll(async () => sidesIn(await ground(), 'Hall').length)
      .toBe(sidesIn(before, 'Hall').length + 4);
    await undo(page, hand);
    await expect.poll(ground).toEqual(before);
    expect(troubles).toEqual([]);
    await context.close();
  });
});
