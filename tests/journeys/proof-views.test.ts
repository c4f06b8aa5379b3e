import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectUsable, onPlan, type Stage, setStage, shiftOf, watchShift } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

const view = (page: Page, name: string): Locator =>
  page.getByRole('group', { name: 'What is shown' }).getByRole('button', { name });
/** The circuit's main picture; the other one is that of its readings. */
const picture = (page: Page): Locator => page.locator('proof-view scene-picture').first();
const worstLeg = (page: Page): Locator => picture(page).getByRole('button', { name: /most.loaded/ });
const pressed = (thing: Locator): Promise<string | null> => thing.getAttribute('aria-pressed');
/** How far a thing is cut off by the window, px. */
const widthBeyond = (page: Page): Promise<number> =>
  page.locator('html').evaluate((element) => element.scrollWidth - element.clientWidth);

describe.each(['desk', 'phone'] as const)('the pictures of a circuit on a %s', (size) => {
  it('are reached from the plan and by their address, and lead back', async () => {
    const { page, troubles, context } = await stage.open(size, '/jobs/saltglass3/ways');
    await view(page, 'Ring').click();
    await page.waitForURL(/view=circuit/);
    await picture(page).getByRole('button', { name: /^R1, / }).waitFor();
    await view(page, 'Volt drop').click();
    await page.waitForURL(/view=drop/);
    await page.reload({ waitUntil: 'networkidle' });
    await picture(page).getByText('Limit 11.5 V (5 %)').waitFor();
    await view(page, 'Plan').click();
    await onPlan(page, 'w1-living1').waitFor();
    expect(page.url()).not.toContain('view=');
    expect(troubles).toEqual([]);
    await context.close();
  });

  it('choose what is touched: the worst leg of the ring', async () => {
    const { page, context } = await stage.open(size, '/jobs/saltglass3/kit?view=circuit');
    const leg = worstLeg(page);
    const subject = (await leg.getAttribute('data-subject')) ?? '';
    // On its lettering: the middle of the cable's box is the middle of the loop.
    await leg.getByText('most loaded').or(leg.getByText('most')).first().click();
    await page.waitForURL(new RegExp(`on=${subject}`));
    expect(await pressed(leg)).toBe('true');
    expect(await page.locator('chosen-card h2').innerText()).toContain('Leg');
    await context.close();
  });

  it('follow the loads that are chosen', async () => {
    const { page, context } = await stage.open(size, '/jobs/saltglass3/kit?view=circuit');
    const before = await worstLeg(page).getAttribute('aria-label');
    const summary = page.locator('proof-view .told .hint');
    expect(await summary.innerText()).toContain('Greatest volt drop: W3');
    await page.getByLabel('Loads').selectOption({ label: 'Ring open at its worst leg' });
    await picture(page)
      .getByRole('button', { name: /: open/ })
      .waitFor();
    expect(await worstLeg(page).getAttribute('aria-label')).not.toBe(before);
    expect(await worstLeg(page).getAttribute('aria-label')).toContain('32.0');
    await page.locator('proof-view li').filter({ hasText: 'a broken ring is a defect' }).waitFor();
    await context.close();
  });

  it('bring what a tester should read to the temperature that is entered, and back', async () => {
    const { page, context } = await stage.open(size, '/jobs/saltglass3/kit?view=circuit');
    const chart = page.locator('proof-view scene-picture').last();
    const endToEnd = chart.getByRole('button', { name: /^End to end: r1/ });
    const warm = await endToEnd.getAttribute('aria-label');
    await chart.getByText('All at 20 °C').waitFor();
    const field = page.getByLabel('Conductors when tested');
    await field.fill('5');
    await field.press('Tab');
    await chart.getByText('All at 5 °C').waitFor();
    expect(await endToEnd.getAttribute('aria-label')).not.toBe(warm);
    await page.getByRole('button', { name: /^Undo/ }).first().click();
    await chart.getByText('All at 20 °C').waitFor();
    expect(await endToEnd.getAttribute('aria-label')).toBe(warm);
    await context.close();
  });

  it('can be used by all, stay within the window, and do not make the page jump', async () => {
    const { page, context } = await stage.open(size, '/');
    await watchShift(page);
    for (const address of [
      'saltglass3/kit?view=circuit',
      'fernlow018/price?view=drop',
      'saltglassq/kit?view=circuit',
    ]) {
      await page.goto(`/jobs/${address}`, { waitUntil: 'networkidle' });
      await page.locator('proof-view h3').first().waitFor();
      await expectUsable(page, address);
      expect(await widthBeyond(page), address).toBe(0);
      expect(await shiftOf(page), address).toBeLessThan(0.02);
    }
    await context.close();
  }, 60_000);
});

describe('the figures under a picture', () => {
  it('tell every point, and choose it', async () => {
    const { page, context } = await stage.open('desk', '/jobs/fernlow018/price?view=drop&scheme=no-fuse-b3');
    const row = page.getByRole('row', { name: /^B3/ });
    expect(await row.innerText()).toMatch(/12\.8\s*over/);
    await row.getByRole('button', { name: 'B3' }).click();
    await picture(page).locator('g.chosen[data-subject="b3-kitchen"]').waitFor();
    await context.close();
  });

  it('are of the circuit that is chosen where there are several', async () => {
    const { page, context } = await stage.open(
      'desk',
      '/jobs/saltglassq/price?view=circuit&scheme=new-radial',
    );
    await page.getByLabel('Circuit', { exact: true }).selectOption({ label: 'New radial: W1, W2, W3' });
    await page.waitForURL(/circuit=c4-radial1/);
    await page.locator('proof-view h2').filter({ hasText: 'New radial' }).waitFor();
    await view(page, 'Circuit').waitFor();
    await context.close();
  });

  it('set readings beside what was expected, as found', async () => {
    const { page, context } = await stage.open('desk', '/jobs/fernlow018/as-found?view=circuit');
    const readings = page.locator('proof-view scene-picture').last();
    await readings.getByRole('button', { name: /^End to end: r1 0\.52 0\.52 within;/ }).waitFor();
    await context.close();
  });
});

describe('a picture and the rest of the page', () => {
  it('follows a point that is dragged on the plan beside it', async () => {
    const { page, context } = await stage.open('desk', '/jobs/saltglass3/wanted?view=circuit');
    const cable = picture(page).locator('g.cables g[data-subject="c1-w1-spur/cable-1"]');
    const before = await cable.getAttribute('aria-label');
    const point = await onPlan(page, 'w1-living1').boundingBox();
    if (point === null) throw new Error('the point is not on the plan');
    const [x, y] = [point.x + point.width / 2, point.y + point.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (let step = 1; step <= 8; step++) await page.mouse.move(x, y + step * 5);
    // Still under the hand.
    await page.waitForFunction(
      ({ was }) => {
        const root = document.querySelector('app-shell')?.shadowRoot?.querySelector('job-page')?.shadowRoot;
        const drawn = root
          ?.querySelector('proof-view')
          ?.shadowRoot?.querySelector('scene-picture')?.shadowRoot;
        const now = drawn
          ?.querySelector('g.cables g[data-subject="c1-w1-spur/cable-1"]')
          ?.getAttribute('aria-label');
        return now !== undefined && now !== was;
      },
      { was: before },
    );
    await page.mouse.up();
    expect(await cable.getAttribute('aria-label')).not.toBe(before);
    await context.close();
  });

  it('shows a finding of the proof in the circuit', async () => {
    const { page, context } = await stage.open('desk', '/jobs/fernlow018/kit?scheme=no-fuse-b3');
    const finding = page.locator('finding-card').filter({ hasText: 'VD1' }).first();
    await finding.getByRole('button', { name: 'Show in the circuit' }).click();
    await page.waitForURL(/view=drop/);
    await picture(page).locator('g.chosen.lit[data-subject="b3-kitchen"]').waitFor();
    await context.close();
  });

  it('is gone through by keyboard: Tab to its first thing, arrows to the next, Enter chooses', async () => {
    const { page, context } = await stage.open('desk', '/jobs/saltglass3/kit?view=circuit');
    await page.getByLabel('Loads').focus();
    await page.keyboard.press('Tab');
    const focused = picture(page).locator('g.thing:focus');
    const first = await focused.getAttribute('aria-label');
    await page.keyboard.press('ArrowRight');
    expect(await focused.getAttribute('aria-label')).not.toBe(first);
    const subject = await focused.getAttribute('data-subject');
    await page.keyboard.press('Enter');
    await page.waitForURL(new RegExp(`on=${subject}`));
    expect(await pressed(focused)).toBe('true');
    await context.close();
  });

  it('gives way to the plan on a phone where a place is asked for', async () => {
    const { page, context } = await stage.open('phone', '/jobs/saltglass3/wanted?view=circuit');
    await page
      .locator('wanted-step')
      .getByRole('button', { name: /^Place|^Add|place/i })
      .first()
      .click();
    await page.locator('plan-view').waitFor();
    await context.close();
  });
});
