import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

/** Unfolds everything that is folded, also what appears by that. */
async function unfold(page: Page): Promise<void> {
  const folded = page.locator('main details:not([open]), deleted-jobs details:not([open])');
  while ((await folded.count()) > 0) await folded.first().locator('> summary').click();
}

/** What a thumb is to hit and is lower than 44 px, by its words; what is drawn for screen readers alone does not count. */
const tooLow = (page: Page): Promise<readonly string[]> =>
  page
    .locator('main :is(summary, button, a.button, select, input:not([type=checkbox], [type=radio]))')
    .evaluateAll((things) =>
      things
        .map((thing) => ({ thing, box: thing.getBoundingClientRect() }))
        .filter(({ box }) => box.width > 1 && box.height > 1 && box.height < 44)
        .map(
          ({ thing, box }) =>
            `${thing.localName} “${thing.textContent.trim().slice(0, 40)}” ${box.height} px`,
        ),
    );

// 44 px: WCAG 2.2, success criterion 2.5.5 (Target Size, Enhanced): 44 by 44 CSS pixels.
it.each(['/', '/jobs/saltglass3/as-found', '/jobs/saltglass3/ways'])(
  'every button and fold of %s on a phone is 44 px high',
  async (path) => {
    const { page, context } = await stage.open('phone', '/');
    await page
      .getByRole('button', { name: /^Delete/ })
      .last()
      .click();
    await page.getByText(/^Deleted jobs \(/).waitFor();
    await page.goto(path, { waitUntil: 'networkidle' });
    // What the device has of the job is read after the network is idle.
    await page.locator('main summary').first().waitFor();
    await unfold(page);
    expect(await page.locator('main summary').count()).toBeGreaterThan(0);
    expect(await tooLow(page)).toEqual([]);
    await context.close();
  },
);
