import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { onPlan, type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

const shownStorey = 'storey-switch button[aria-pressed=true]';

describe.each(['desk', 'phone'] as const)('a thing on a storey that is not shown, on a %s', (size) => {
  it('is turned to when an address names it', async () => {
    const { page, context } = await stage.open(size, '/jobs/saltglass3/wanted?on=w2-bedroom');
    await page.locator(shownStorey).filter({ hasText: 'First floor' }).waitFor();
    await onPlan(page, 'w2-bedroom').waitFor();
    await context.close();
  });

  it('is turned to when it is picked in a list, whatever was lit before', async () => {
    const { page, context } = await stage.open(size, '/jobs/saltglass3/kit');
    await page.getByRole('button', { name: 'Green/yellow single 2.5 mm², box earth tails' }).click();
    await page.getByRole('link', { name: /^Wanted/ }).click();
    const storeys: string[] = [];
    for (const label of ['W2', 'W4', 'W3']) {
      await page.locator('wanted-step').getByText(label, { exact: true }).first().click();
      await page.locator(`plan-view g.chosen[aria-label^="${label}"]`).waitFor();
      storeys.push(await page.locator(shownStorey).innerText());
    }
    expect(storeys).toEqual(['First floor', 'Ground floor', 'First floor']);
    await context.close();
  });

  it('is told of by the storeys’ buttons, in a figure and in words, while others of the lit are shown', async () => {
    const { page, context } = await stage.open(size, '/jobs/saltglass3/kit');
    const line = page.getByRole('button', { name: 'Green/yellow single 2.5 mm², box earth tails' });
    await line.click();
    const other = page.getByRole('button', { name: 'First floor, 2 marked things' });
    await other.waitFor();
    expect(await page.locator(shownStorey).innerText()).toBe('Ground floor');
    await other.click();
    await page.getByRole('button', { name: 'Ground floor, 2 marked things' }).waitFor();
    expect(await page.locator('plan-view g.thing.lit').count()).toBe(2);
    await line.click();
    await page.getByRole('button', { name: 'Ground floor', exact: true }).waitFor();
    await context.close();
  });
});

describe('what is let go of', () => {
  it('leaves the storey that was turned to by hand', async () => {
    const { page, context } = await stage.open('desk', '/jobs/saltglass3/wanted?on=w2-bedroom');
    await page.locator(shownStorey).filter({ hasText: 'First floor' }).waitFor();
    await page.getByRole('button', { name: /^Ground floor, 1 marked|^Ground floor/ }).click();
    await page.getByRole('button', { name: 'First floor, 1 marked thing' }).waitFor();
    await page.locator('chosen-card').getByRole('button', { name: 'Close' }).click();
    await page.getByRole('button', { name: 'First floor', exact: true }).waitFor();
    expect(await page.locator(shownStorey).innerText()).toBe('Ground floor');
    await context.close();
  });
});
