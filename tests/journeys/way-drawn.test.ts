import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { allKept, expectUsable, onPlan, type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

const LEG = 'leg-r03r04';

/** Opens the Ways of the first demo job and chooses a thing on its plan, as a screen reader does. */
async function choose(page: Page, subject: string): Promise<void> {
  await page.getByRole('heading', { name: /^3 Saltglass Row: three outlets/ }).click();
  await page.getByRole('link', { name: /^Ways/ }).click();
  await onPlan(page, subject).dispatchEvent('click');
}

const sheet = (page: Page): Locator => page.locator('draw-way');
const button = (page: Page, name: RegExp | string): Locator => sheet(page).getByRole('button', { name });
const sum = (page: Page): Locator => sheet(page).locator('.sum');

/** Metres drawn so far. */
async function drawnM(page: Page): Promise<number> {
  return Number(/^([\d.]+) m drawn/.exec(await sum(page).innerText())?.[1] ?? 0);
}

/** A place on the plan, px on the page: of a thing, so many px beside it. */
async function beside(page: Page, subject: string, right: number, down: number): Promise<[number, number]> {
  const box = await onPlan(page, subject).boundingBox();
  if (box === null) throw new Error(`${subject} is not on the plan.`);
  return [box.x + box.width / 2 + right, box.y + box.height / 2 + down];
}

/** The ink that a leg is drawn with: solid where its way was seen. */
const inkOf = (page: Page, subject: string): Promise<string | null> =>
  onPlan(page, subject).locator('path.found, path.found-assumed').first().getAttribute('class');

describe('the way of a leg, drawn by mouse', () => {
  it('grows, is taken back, asked about, kept as seen, and undone', async () => {
    const { page, troubles, context } = await stage.open('desk', '/');
    await choose(page, LEG);
    await page.getByRole('button', { name: 'Draw where it runs' }).click();
    await sheet(page).getByRole('heading', { name: 'The way of Leg R3–R4, drawn by hand' }).waitFor();
    expect(await sum(page).innerText()).toContain('No corner yet');
    await button(page, /^Down, under the floor/).click();
    await sum(page)
      .getByText(/1 corner\./)
      .waitFor();
    const downM = await drawnM(page);
    await page.mouse.click(...(await beside(page, 'r3-living2', -120, -10)));
    await sum(page)
      .getByText(/2 corners\./)
      .waitFor();
    expect(await drawnM(page)).toBeGreaterThan(downM + 0.5);
    await page.mouse.move(...(await beside(page, 'r4-dining1', -120, 0)));
    await page
      .locator('plan-view .telling')
      .getByText(/m (along|across) the joists/)
      .waitFor();
    await expectUsable(page, 'a way that is drawn');
    await button(page, 'Take the last one back').click();
    await expect.poll(() => drawnM(page)).toBe(downM);
    // Control and Z, too, take the last corner back while the plan waits for the next one.
    await page.keyboard.press('Control+z');
    await sum(page).getByText('No corner yet').waitFor();
    await button(page, /^Down, under the floor/).click();
    await page.mouse.click(...(await beside(page, 'r4-dining1', 2, 2)));
    await sum(page)
      .getByText(/2 corners\./)
      .waitFor();
    await button(page, 'Drop it all').click();
    await sum(page).getByText('No corner yet').waitFor();
    await button(page, 'Bring it back').click();
    await sum(page)
      .getByText(/2 corners\./)
      .waitFor();
    await button(page, 'What would that change?').click();
    await sheet(page)
      .getByText(/^As it is taken to run now: £/)
      .waitFor({ timeout: 60_000 });
    await sheet(page)
      .getByText(/^If it ran there: /)
      .waitFor();
    expect(await inkOf(page, LEG)).toBe('found-assumed');
    await button(page, 'I have seen it run there').click();
    await sheet(page).waitFor({ state: 'detached' });
    await expect.poll(() => inkOf(page, LEG)).toBe('found');
    await allKept(page);
    await page.getByRole('button', { name: 'Undo: Leg R3–R4 runs elsewhere' }).click();
    await expect.poll(() => inkOf(page, LEG)).toBe('found-assumed');
    expect(troubles).toEqual([]);
    await context.close();
  });

  it('is begun where ways are searched, too, and says why a corner cannot be', async () => {
    const { page, context } = await stage.open('desk', '/');
    await choose(page, LEG);
    await page.getByRole('button', { name: 'Find ways' }).click();
    await page.getByRole('radio').first().waitFor({ timeout: 60_000 });
    await page.getByText('What if a leg runs elsewhere?').click();
    await page.getByRole('button', { name: 'Draw another way on the plan' }).click();
    await sheet(page).waitFor();
    // On the wall at the height of the outlet, and not through the door.
    await page.mouse.move(...(await beside(page, 'r4-dining1', 0, -320)));
    await page.locator('plan-view .telling').waitFor();
    const told = await page.locator('plan-view .telling').innerText();
    expect(told).toMatch(/in the way at this height|along the wall|no wall leads/);
    await page.keyboard.press('Escape');
    await button(page, 'Draw on').waitFor();
    await button(page, 'Put it away').click();
    await sheet(page).waitFor({ state: 'detached' });
    await context.close();
  });
});

/** The new cable that leads to a wanted point: its id and what it is called. */
async function cableTo(page: Page, label: string): Promise<{ readonly id: string; readonly name: string }> {
  const cable = page.locator(`plan-view g.cables g[role=button][aria-label*="to ${label},"]`).first();
  await cable.waitFor();
  const [id, name] = await Promise.all([
    cable.getAttribute('data-subject'),
    cable.getAttribute('aria-label'),
  ]);
  return { id: id ?? '', name: name ?? '' };
}

describe('a way over storeys, and one that is let go', () => {
  it('shows the storey that it has got to, and goes back with its corners', async () => {
    const { page, troubles, context } = await stage.open('desk', '/');
    await choose(page, LEG);
    await page.getByRole('button', { name: 'Draw where it runs' }).click();
    const ground = page.getByRole('button', { name: /^Ground floor/ });
    const first = page.getByRole('button', { name: /^First floor/ });
    await button(page, /^Up above the ceiling/).click();
    await sum(page)
      .getByText(/1 corner\./)
      .waitFor();
    // A void between two storeys is drawn from either.
    expect(await ground.getAttribute('aria-pressed')).toBe('true');
    await button(page, /^Up in the wall of/).click();
    await sum(page)
      .getByText(/2 corners\./)
      .waitFor();
    await expect.poll(() => first.getAttribute('aria-pressed')).toBe('true');
    await page
      .locator('plan-view .hint')
      .getByText(/^On the wall of .*, at \d+ mm/)
      .waitFor();
    await ground.click();
    await page.mouse.move(...(await beside(page, 'r4-dining1', -60, 0)));
    await page
      .locator('plan-view .telling')
      .getByText(/show that storey to go on/)
      .waitFor();
    await button(page, 'Put it away').click();
    expect(troubles).toEqual([]);
    await context.close();
  });

  it('is drawn on from its corners, or dropped: the cable then finds its own way', async () => {
    const { page, troubles, context } = await stage.open('desk', '/');
    await choose(page, 'w1-living1');
    const { id, name } = await cableTo(page, 'W1');
    expect(name).toMatch(/way drawn by hand$/);
    await page.locator('chosen-way').getByRole('button', { name: 'Draw it on' }).click();
    await sum(page)
      .getByText(/4 corners\./)
      .waitFor();
    await button(page, 'Drop it all').click();
    await button(page, 'Let it find its own way').click();
    await sheet(page).waitFor({ state: 'detached' });
    await expect.poll(() => onPlan(page, id).getAttribute('aria-label')).not.toContain('by hand');
    await page.getByRole('button', { name: 'Undo: Let the way of R1 to W1 go' }).click();
    await expect.poll(() => onPlan(page, id).getAttribute('aria-label')).toBe(name);
    expect(troubles).toEqual([]);
    await context.close();
  });
});

describe('the way of a new cable, drawn by keyboard', () => {
  it('is pinned, priced and checked as it was drawn, and let go again', async () => {
    const { page, troubles, context } = await stage.open('desk', '/');
    await choose(page, 'w4-boiler1');
    const { id, name } = await cableTo(page, 'W4');
    await onPlan(page, id).dispatchEvent('click');
    const draw = page.locator('chosen-way').getByRole('button', { name: 'Draw its way' });
    await draw.focus();
    await page.keyboard.press('Enter');
    await sheet(page).waitFor();
    const plan = page.locator('plan-view svg.plan');
    await expect
      .poll(() =>
        plan.evaluate((one) => (one as unknown as { matches(s: string): boolean }).matches(':focus')),
      )
      .toBe(true);
    expect(await plan.getAttribute('aria-label')).toContain('draw the way');
    await page.keyboard.press('PageDown');
    await sum(page)
      .getByText(/1 corner\./)
      .waitFor();
    for (let i = 0; i < 6; i++) await page.keyboard.press('ArrowRight');
    await page
      .locator('plan-view [role=status]')
      .getByText(/^0\.30 m/)
      .waitFor();
    await page.keyboard.press('Enter');
    await sum(page)
      .getByText(/2 corners\./)
      .waitFor();
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Backspace');
    await sum(page)
      .getByText(/1 corner\./)
      .waitFor();
    await page.keyboard.press('End');
    await page.keyboard.press('Enter');
    await sum(page)
      .getByText(/2 corners\./)
      .waitFor();
    await page.keyboard.press('Escape');
    await button(page, 'Draw on').waitFor();
    await expect
      .poll(() =>
        draw.evaluate((one) => (one as unknown as { matches(s: string): boolean }).matches(':focus')),
      )
      .toBe(true);
    await button(page, 'What would that change?').focus();
    await page.keyboard.press('Enter');
    await sheet(page)
      .getByText(/of cable in place of/)
      .waitFor();
    await expectUsable(page, 'what a pinned way would change');
    await button(page, 'Keep this way').focus();
    await page.keyboard.press('Enter');
    await sheet(page).waitFor({ state: 'detached' });
    const letGo = page.locator('chosen-way').getByRole('button', { name: 'Let it find its own way' });
    await letGo.waitFor();
    expect(await onPlan(page, id).getAttribute('aria-label')).toMatch(/, way drawn by hand$/);
    await allKept(page);
    await letGo.click();
    await draw.waitFor();
    expect(await onPlan(page, id).getAttribute('aria-label')).toBe(name);
    await page.getByRole('button', { name: /^Undo: Let the way of .* go/ }).click();
    await letGo.waitFor();
    await page.getByRole('button', { name: /^Undo: Pin the way of/ }).click();
    await draw.waitFor();
    const chosen = page.locator('chosen-way run-way').first();
    await chosen.getByRole('button', { name: 'Least disturbing way' }).click();
    await chosen
      .getByText('No way disturbs the house less.')
      .or(chosen.getByRole('button', { name: 'Let it find its own way' }))
      .waitFor();
    expect(troubles).toEqual([]);
    await context.close();
  });
});

describe('a way that is drawn on a phone', () => {
  it('is tapped corner by corner, with targets for a finger', async () => {
    const { page, troubles, context } = await stage.open('phone', '/');
    await choose(page, LEG);
    await page.getByRole('button', { name: 'Draw where it runs' }).tap();
    await button(page, /^Down, under the floor/).tap();
    await sum(page)
      .getByText(/1 corner\./)
      .waitFor();
    await page.touchscreen.tap(...(await beside(page, 'r3-living2', -40, -6)));
    await sum(page)
      .getByText(/2 corners\./)
      .waitFor();
    await page.touchscreen.tap(...(await beside(page, 'r4-dining1', 0, 0)));
    await sum(page)
      .getByText(/3 corners\./)
      .waitFor();
    for (const one of await sheet(page).getByRole('button').all()) {
      const box = await one.boundingBox();
      expect(box?.height ?? 44, await one.innerText()).toBeGreaterThanOrEqual(44);
    }
    const width = await page
      .locator('main.sheet')
      .evaluate((one) => (one as unknown as { scrollWidth: number }).scrollWidth);
    expect(width).toBeLessThanOrEqual(390);
    await expectUsable(page, 'a way drawn on a phone');
    await button(page, 'Take it to run there, assumed').tap();
    await sheet(page).waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'Undo: Leg R3–R4 runs elsewhere' }).tap();
    expect(troubles).toEqual([]);
    await context.close();
  });
});

describe('a lock', () => {
  it.each(['desk', 'phone'] as const)(
    'is set, marked, told, and released on the plan, at a %s',
    async (size) => {
      const { page, troubles, context } = await stage.open(size, '/');
      await choose(page, 'w1-living1');
      const marks = page.locator('plan-view g.locks > g');
      expect(await marks.count()).toBe(0);
      await page
        .locator('chosen-way')
        .getByRole('button', { name: /^Lock spur W1/ })
        .click();
      await marks.first().waitFor();
      expect(await onPlan(page, 'w1-living1').getAttribute('aria-label')).toMatch(/, held fast$/);
      expect(await (await cableTo(page, 'W1')).name).toMatch(/, held fast$/);
      await page.locator('plan-view .key').getByText('held fast').waitFor();
      await expectUsable(page, 'a locked connection on the plan');
      await page.locator('chosen-way').getByRole('button', { name: 'Release the lock' }).click();
      await marks.first().waitFor({ state: 'detached' });
      await page.getByRole('button', { name: 'Undo: Unlock a connection' }).click();
      await marks.first().waitFor();
      await page.getByRole('button', { name: 'Undo: Lock a connection' }).click();
      await marks.first().waitFor({ state: 'detached' });
      expect(troubles).toEqual([]);
      await context.close();
    },
  );
});
