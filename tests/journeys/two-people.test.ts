import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { allKept, expectUsable, type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

interface Kept {
  readonly terms: { readonly travelMin?: number; readonly minimumPence?: number };
}

/** The terms of the job as the server has them. */
async function termsKept(): Promise<Kept['terms']> {
  const answer = await fetch(new URL('/api/jobs/saltglass3', stage.server.address));
  return ((await answer.json()) as Kept).terms;
}

const field = (page: Page, label: string) => page.getByRole('textbox', { name: label });

async function set(page: Page, label: string, value: string): Promise<void> {
  await field(page, label).fill(value);
  await field(page, label).press('Enter');
}

const TRAVEL = 'Travel, there and back';
const MINIMUM = 'Minimum charge';
const at = '/jobs/saltglass3/price';

it('what two people changed of one job in different fields is kept together without a question', async () => {
  const [theirs, mine] = [await stage.open('desk', at), await stage.open('desk', at)];
  const before = await termsKept();
  await set(theirs.page, TRAVEL, '75');
  await allKept(theirs.page);
  await set(mine.page, MINIMUM, '222');
  await mine.page.getByText('Kept together with what was changed elsewhere: travel').waitFor();
  await allKept(mine.page);
  expect(await termsKept()).toMatchObject({ travelMin: 75, minimumPence: 22_200 });
  expect(await mine.page.locator('clash-list').count()).toBe(0);
  await expect.poll(() => field(mine.page, TRAVEL).inputValue()).toBe('75');
  // Undo takes back what was done here, and nothing of theirs.
  await mine.page.getByRole('button', { name: /^Undo/ }).click();
  await expect.poll(async () => (await termsKept()).minimumPence).toBe(before.minimumPence);
  expect((await termsKept()).travelMin).toBe(75);
  await expect(mine.page.getByRole('button', { name: /^Undo/ }).isDisabled()).resolves.toBe(true);
  await theirs.context.close();
  await mine.context.close();
});

it('what they changed in the same field is shown, decided row by row by keyboard, and never overwritten unseen', async () => {
  const [theirs, mine] = [await stage.open('desk', at), await stage.open('desk', at)];
  await set(theirs.page, MINIMUM, '111');
  await set(theirs.page, TRAVEL, '80');
  await allKept(theirs.page);
  await set(mine.page, TRAVEL, '20');
  await mine.page.locator('clash-list').waitFor();
  await set(mine.page, MINIMUM, '222');
  const rows = mine.page.locator('clash-list fieldset');
  await expect.poll(() => rows.count()).toBe(2);
  expect(await termsKept()).toMatchObject({ travelMin: 80, minimumPence: 11_100 });
  await expectUsable(mine.page, 'rows to be decided');
  const save = mine.page.getByRole('button', { name: 'Save together' });
  expect(await save.isDisabled()).toBe(true);
  const row = (name: string) => rows.filter({ hasText: name });
  await row('minimum charge').getByRole('radio', { name: /^Mine/ }).focus();
  await mine.page.keyboard.press('Space');
  expect(await save.isDisabled()).toBe(true);
  await row('travel').getByRole('radio', { name: /^Mine/ }).focus();
  await mine.page.keyboard.press('ArrowDown');
  await expect
    .poll(() =>
      row('travel')
        .getByRole('radio', { name: /^Theirs/ })
        .isChecked(),
    )
    .toBe(true);
  expect(await termsKept()).toMatchObject({ travelMin: 80, minimumPence: 11_100 });
  await save.focus();
  await mine.page.keyboard.press('Enter');
  await mine.page.getByText('Saved as you decided').waitFor();
  await allKept(mine.page);
  expect(await termsKept()).toMatchObject({ travelMin: 80, minimumPence: 22_200 });
  await theirs.context.close();
  await mine.context.close();
});

it('on a phone all rows are decided at once by touch, and buttons and rows are large enough for a thumb', async () => {
  const [theirs, mine] = [await stage.open('desk', at), await stage.open('phone', at)];
  await set(theirs.page, MINIMUM, '333');
  await set(theirs.page, TRAVEL, '90');
  await allKept(theirs.page);
  await set(mine.page, TRAVEL, '30');
  await mine.page.locator('clash-list').waitFor();
  await set(mine.page, MINIMUM, '444');
  await expect.poll(() => mine.page.locator('clash-list fieldset').count()).toBe(2);
  for (const target of await mine.page.locator('clash-list :is(label, button, summary)').all())
    expect((await target.boundingBox())?.height).toBeGreaterThanOrEqual(44);
  await expectUsable(mine.page, 'rows to be decided on a phone');
  await mine.page.getByRole('button', { name: 'All mine' }).tap();
  await mine.page.getByRole('button', { name: 'Save together' }).tap();
  await allKept(mine.page);
  expect(await termsKept()).toMatchObject({ travelMin: 30, minimumPence: 44_400 });
  await theirs.context.close();
  await mine.context.close();
});
