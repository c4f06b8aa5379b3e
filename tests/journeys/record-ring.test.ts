import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { Actions } from './actions.ts';
import { type Box, boxOf, overlap } from './boxes.ts';
import { allKept, expectUsable, onPlan, type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

/** A house whose walls and board are known, and one circuit by name; nothing else is recorded. */
const bareHouse = (id: string) => {
  const { packFor: _p, actuals: _a, quoting: _q, ...job } = demoJob('saltglass-row');
  const [circuit] = job.circuits;
  const nothing = { points: [], legs: [], readings: [], schemes: [], answers: [] };
  return {
    ...job,
    ...nothing,
    id,
    title: `House of ${id}`,
    circuits: circuit === undefined ? [] : [circuit],
  };
};

async function openBareHouse(page: Page, id: string): Promise<void> {
  const buffer = Buffer.from(JSON.stringify(bareHouse(id)));
  await page
    .locator('input[type=file]')
    .setInputFiles({ name: 'job.json', mimeType: 'application/json', buffer });
  await page
    .getByRole('heading', { name: `House of ${id}` })
    .first()
    .waitFor();
  await page.goto(`/jobs/${id}/as-found`, { waitUntil: 'networkidle' });
}

/** Nine places on the inner faces of a house, going round, as parts of the box that its walls take. */
const round = [
  [0.08, 0.1],
  [0.35, 0.04],
  [0.75, 0.04],
  [0.96, 0.2],
  [0.96, 0.5],
  [0.96, 0.8],
  [0.7, 0.96],
  [0.3, 0.96],
  [0.05, 0.6],
] as const;

/** The box of all walls that are drawn. */
async function houseBox(page: Page): Promise<Box> {
  const boxes = await page
    .locator('plan-view .wall-group path')
    .evaluateAll((paths) => paths.map((path) => path.getBoundingClientRect().toJSON() as Box));
  const [x, y] = [Math.min(...boxes.map((box) => box.x)), Math.min(...boxes.map((box) => box.y))];
  const right = Math.max(...boxes.map((box) => box.x + box.width));
  const bottom = Math.max(...boxes.map((box) => box.y + box.height));
  return { x, y, width: right - x, height: bottom - y };
}

const bar = (page: Page) => page.locator('tool-bar');
const placed = (page: Page) => page.locator('plan-view g.thing[aria-label^="R"]');

/** The labels of a circuit's cables, from the list below the plan. */
async function cables(page: Page): Promise<readonly string[]> {
  const rows = page.locator('leg-list [data-thing] .name');
  await rows.first().waitFor();
  return rows.allInnerTexts();
}

const ringOf = (labels: readonly string[]): readonly string[] =>
  ['Board A', ...labels, 'Board B'].slice(1).map((to, i) => `${['Board A', ...labels][i]} – ${to}`);
const nine = ['R1', 'R2', 'R3', 'R4', 'R5', 'R6', 'R7', 'R8', 'R9'];

describe('a ring of nine points in a house that is drawn', () => {
  it('is recorded by touch, with its kinds and its order, in no more than 25 actions', async () => {
    const { page, troubles, context } = await stage.open('phone');
    await openBareHouse(page, 'by-touch');
    const hand = new Actions(page, true);
    await hand.tap(page.getByRole('button', { name: 'Tap points on the plan' }).first());
    await bar(page).waitFor();
    const house = await houseBox(page);
    for (const [i, [x, y]] of round.entries()) {
      if (i === 6) await hand.tap(bar(page).getByRole('button', { name: 'Fused unit' }));
      if (i === 7) await hand.tap(bar(page).getByRole('button', { name: 'Twin' }));
      await hand.tapAt(house.x + house.width * x, house.y + house.height * y);
      await expect.poll(() => placed(page).count()).toBe(i + 1);
      // Nothing is drawn that is not there.
      expect(await page.locator('plan-view .ghost').count()).toBe(0);
    }
    // Its end is in sight all the time, and covers nothing that is drawn.
    const done = bar(page).getByRole('button', { name: 'Done' });
    expect(await done.isVisible()).toBe(true);
    expect(overlap(await boxOf(done), await boxOf(page.locator('plan-view .window')))).toBe(false);
    await expectUsable(page, 'tapping points');
    await hand.tap(bar(page).getByRole('button', { name: 'In order' }));
    await bar(page).getByText('tap its first point').waitFor();
    const ids = await placed(page).evaluateAll((things) =>
      things.map((one) => one.getAttribute('data-subject') ?? ''),
    );
    for (const id of ids) {
      const { x, y, width, height } = await boxOf(onPlan(page, id).locator('rect.hit'));
      await hand.tapAt(x + width / 2, y + height / 2);
    }
    await bar(page)
      .getByText(/^9 points, last R9/)
      .waitFor();
    await expectUsable(page, 'putting points in order');
    await hand.tap(bar(page).getByRole('button', { name: 'Make the cables' }));
    expect(await cables(page)).toEqual(ringOf(nine));
    await allKept(page);
    expect(hand.count).toBeLessThanOrEqual(25);
    expect(troubles).toEqual([]);
    await context.close();
  });

  it('is recorded by keyboard alone', async () => {
    const { page, troubles, context } = await stage.open('desk');
    await openBareHouse(page, 'by-keyboard');
    const hand = new Actions(page, false);
    await page.getByRole('button', { name: 'Tap points on the plan' }).first().focus();
    await hand.press('Enter');
    await page.locator('plan-view svg.plan:focus').waitFor();
    for (const count of nine.keys()) {
      await page.keyboard.press(']');
      // Round the room again: further along each wall.
      for (let step = 0; step < count; step++) await page.keyboard.press('ArrowRight');
      await hand.press('Enter');
      await expect.poll(() => placed(page).count()).toBe(count + 1);
    }
    await bar(page).getByRole('button', { name: 'In order' }).focus();
    await hand.press('Enter');
    await page.locator('plan-view svg.plan:focus').waitFor();
    for (const label of nine) {
      await page.keyboard.press('PageDown');
      await page.locator(`plan-view g.thing[aria-label^="${label},"]:focus`).waitFor();
      await hand.press('Enter');
    }
    await bar(page)
      .getByText(/^9 points, last R9/)
      .waitFor();
    await bar(page).getByRole('button', { name: 'Make the cables' }).focus();
    await hand.press('Enter');
    expect(await cables(page)).toEqual(ringOf(nine));
    expect(hand.count).toBeLessThanOrEqual(25);
    expect(troubles).toEqual([]);
    await context.close();
  });
});

describe('tapping points that were found', () => {
  it('begins as high as was typed once, chooses a point that is there, and takes the last one back', async () => {
    const { page, context } = await stage.open('phone');
    await openBareHouse(page, 'tapped');
    const hand = new Actions(page, true);
    await hand.tap(page.getByRole('button', { name: 'Tap points on the plan' }).first());
    await hand.tap(bar(page).getByRole('button', { name: '300 mm high' }));
    const house = await houseBox(page);
    for (const [i, [x, y]] of round.slice(0, 2).entries()) {
      await hand.tapAt(house.x + house.width * x, house.y + house.height * y);
      await expect.poll(() => placed(page).count()).toBe(i + 1);
    }
    await bar(page).getByText('R2: twin socket-outlet, 300 mm').waitFor();
    const first = await boxOf(placed(page).first().locator('rect.hit'));
    await hand.tapAt(first.x + first.width / 2, first.y + first.height / 2);
    await bar(page).getByText('R1 is there already').waitFor();
    expect(await placed(page).count()).toBe(2);
    await hand.tap(bar(page).getByRole('button', { name: /^Take back/ }));
    await expect.poll(() => placed(page).count()).toBe(1);
    await bar(page).getByText('R2 taken back').waitFor();
    await hand.tap(bar(page).getByRole('button', { name: 'Done' }));
    await bar(page).waitFor({ state: 'detached' });
    await context.close();
  });
});

describe('a point that was measured', () => {
  it('is not moved by a swipe over it, and goes with the finger once it was held', async () => {
    const { page, context } = await stage.open('phone', '/jobs/saltglass3/as-found');
    const thing = onPlan(page, 'r2-living1');
    const { x, y, width, height } = await boxOf(thing.locator('rect.hit'));
    const client = await context.newCDPSession(page);
    const at = (by: number) => [{ x: x + width / 2 + by, y: y + height / 2 + by }];
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', by = 0) =>
      client.send('Input.dispatchTouchEvent', { type, touchPoints: type === 'touchEnd' ? [] : at(by) });
    const undo = page.getByRole('button', { name: 'Undo: Move R2' });
    await touch('touchStart');
    for (const by of [10, 20, 30]) await touch('touchMove', by);
    await touch('touchEnd');
    await page.waitForTimeout(300);
    expect(await undo.count()).toBe(0);
    await page.getByRole('button', { name: 'The whole plan' }).click();
    await touch('touchStart');
    await page.waitForTimeout(600);
    for (const by of [10, 20, 30]) await touch('touchMove', by);
    await touch('touchEnd');
    await undo.waitFor();
    await context.close();
  });
});

describe('three wanted points', () => {
  it('are placed by touch, each of its kind, in no more than nine actions', async () => {
    const { page, context } = await stage.open('phone');
    await openBareHouse(page, 'wanted-three');
    await page.getByRole('link', { name: /^Wanted/ }).click();
    const hand = new Actions(page, true);
    const kinds = ['Single socket-outlet', 'Fused connection unit', 'Flex outlet'];
    for (const [i, kind] of kinds.entries()) {
      const [x, y] = round[i * 3] ?? [0, 0];
      await hand.choose(page.getByLabel('What it is').last(), kind);
      await hand.tap(page.getByRole('button', { name: 'Place it on the plan' }));
      await bar(page).waitFor();
      const house = await houseBox(page);
      await hand.tapAt(house.x + house.width * x, house.y + house.height * y);
      await page.locator('wanted-step [data-thing]').nth(i).getByText(kind).first().waitFor();
    }
    expect(hand.count).toBeLessThanOrEqual(9);
    await context.close();
  });
});

describe('what a plate showed', () => {
  it('is told by presses, and the next plate follows without closing', async () => {
    const { page, context } = await stage.open('phone', '/jobs/saltglass3/as-found?on=r1-hallway');
    const form = page.locator('plate-steps');
    const group = (name: RegExp) => form.getByRole('group', { name });
    await group(/^Depth of its box/)
      .getByRole('button', { name: '25', exact: true })
      .waitFor();
    const depth = group(/^Depth of its box/).getByRole('button', { name: '35', exact: true });
    const before = await depth.getAttribute('aria-pressed');
    await depth.tap();
    await expect.poll(() => depth.getAttribute('aria-pressed')).toBe(before === 'true' ? 'false' : 'true');
    await expectUsable(page, 'what a plate showed');
    const next = form.getByRole('button', { name: /^Next plate: / });
    const label = (await next.innerText()).replace('Next plate: ', '');
    await next.tap();
    await page.locator('point-list [aria-expanded=true] .name', { hasText: label }).waitFor();
    await expect
      .poll(() =>
        form
          .getByRole('button')
          .first()
          .evaluate((one) => one.matches(':focus')),
      )
      .toBe(true);
    await context.close();
  });
});
