import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { allKept, expectUsable, type Stage, setStage } from './stage.ts';

const visit = (page: Page) => page.locator('quoting-visit');
const head = (page: Page): Promise<string> => visit(page).locator('h3').first().innerText();

describe.each(['desk', 'phone'] as const)('the quoting visit, at a %s', (size) => {
  // A house each: what one width answers is not asked at the other.
  let stage: Stage;
  beforeAll(async () => {
    stage = await setStage();
  });
  afterAll(() => stage.close());

  it('goes through what can be told with nothing opened, by one button, to what the price is from and to', async () => {
    const { page, troubles, context } = await stage.open(size);
    await page.getByRole('heading', { name: /^3 Saltglass Row: quoting/ }).click();
    await page.getByRole('radio', { name: 'Seen here' }).check();
    await page.locator('survey-list').getByRole('button', { name: 'Quoting visit' }).click();
    await visit(page).waitFor();
    const asked: string[] = [];
    // No more than the list has; each press is one ask on.
    for (let press = 0; press < 40; press += 1) {
      const words = await head(page);
      if (words === 'The visit in short') break;
      asked.push(words);
      if (words === 'Look how thick the main bond to water is') {
        await visit(page)
          .getByText(/^Because of it the price may still come out £[\d,]+ dearer\.$/)
          .waitFor();
        await visit(page).getByLabel('Size of the bond to water').selectOption('10');
        // A bond seen to be thick enough takes its part out of the range.
        await visit(page).getByText('No money hangs on it by itself.').waitFor();
      }
      if (words.startsWith('Is asbestos'))
        await expect(visit(page).getByRole('button', { name: 'Ask it again' }).count()).resolves.toBe(1);
      if (words.startsWith('What state are the board'))
        await visit(page).getByRole('button', { name: 'Could not check' }).click();
      if (press === 0) {
        const button = visit(page).getByRole('button', { name: /^(Next|To the summary)$/ });
        const box = await button.boundingBox();
        expect(box?.height ?? 0).toBeGreaterThanOrEqual(44);
        expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThanOrEqual(page.viewportSize()?.height ?? 0);
        await expectUsable(page, `an ask of the visit, ${size}`);
      }
      await visit(page)
        .getByRole('button', { name: /^(Next|To the summary)$/ })
        .click();
      await expect.poll(() => head(page)).not.toBe(words);
    }
    expect(asked.length).toBeGreaterThan(5);
    expect(new Set(asked).size).toBe(asked.length);
    // Nothing of it needs a plate off or the board open.
    expect(asked.filter((words) => /plate|Count the spare ways|Read the ring|Measure/.test(words))).toEqual(
      [],
    );
    const summary = page.locator('visit-summary');
    expect(await summary.locator('.price').innerText()).toMatch(/From £[\d,]+ to £[\d,]+/);
    await summary.getByRole('heading', { name: /^Waits for the first day: \d+ things/ }).waitFor();
    const left = await summary.locator('li span').allInnerTexts();
    expect(left).toContain('What state are the board and the intake in?');
    expect(left.filter((words) => words.includes('main bond to water'))).toEqual([]);
    await expectUsable(page, `the summary of the visit, ${size}`);
    await visit(page).getByRole('button', { name: 'Done' }).click();
    await page.locator('survey-list').waitFor();
    await allKept(page);
    expect(await page.evaluate('document.documentElement.scrollWidth - innerWidth')).toBeLessThanOrEqual(0);
    expect(troubles).toEqual([]);
    await context.close();
  });

  it('goes back, is left at the first ask, and is undone a step at a time', async () => {
    const { page, troubles, context } = await stage.open(size);
    await page.getByRole('heading', { name: /^3 Saltglass Row: quoting/ }).click();
    await page.locator('survey-list').getByRole('button', { name: 'Quoting visit' }).click();
    const first = await head(page);
    await visit(page).getByRole('button', { name: 'Could not check' }).click();
    await visit(page).getByText('Cannot be told yet').waitFor();
    await page.getByRole('button', { name: /^Undo/ }).click();
    await visit(page).getByRole('button', { name: 'Could not check' }).waitFor();
    await visit(page).getByRole('button', { name: 'Next' }).focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => head(page)).not.toBe(first);
    await visit(page).getByRole('button', { name: 'Back' }).click();
    await expect.poll(() => head(page)).toBe(first);
    await visit(page).getByRole('button', { name: 'Leave' }).click();
    await page.locator('survey-list').waitFor();
    expect(troubles).toEqual([]);
    await context.close();
  });
});
