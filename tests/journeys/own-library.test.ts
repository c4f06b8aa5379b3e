import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Library } from '#model/library.ts';
import { ownLibrary } from '#tests/engine/own-library.ts';
import { allKept, expectUsable, type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

async function fetched(page: Page): Promise<Library> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Fetch as a file' }).click(),
  ]);
  return JSON.parse(readFileSync(await download.path(), 'utf8')) as Library;
}

const takeIn = (page: Page, name: string, text: string): Promise<void> =>
  page
    .locator('library-file input')
    .setInputFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });

const papers = '/jobs/saltglass3/papers';

describe('a firm that comes with a library of its own', () => {
  it('is warned on its papers until the demo’s is replaced, from a file, and can take that back', async () => {
    const { page, troubles } = await stage.open('desk', papers);
    await page.getByText(/These papers go out in the name of “Tin Kettle/).waitFor();
    await page.locator('papers-step').getByRole('link', { name: 'Firm, prices and norms' }).click();
    const demo = await fetched(page);
    const { norms } = ownLibrary();
    const own: Library = { ...ownLibrary(), norms: { ...norms, ratePencePerHour: 5100 } };
    expect(own.prices.items.map(({ item }) => item)).toEqual(demo.prices.items.map(({ item }) => item));
    await takeIn(page, 'letter.txt', 'Dear Sir,');
    await page.getByText('This is no Ringwright library file: letter.txt').waitFor();
    await takeIn(page, 'own.json', JSON.stringify(own));
    await page.getByText(/own\.json is taken in/).waitFor();
    await allKept(page);
    expect(await page.getByLabel('Hourly rate').inputValue()).toBe('51');
    expect(await fetched(page)).toEqual(own);
    await expectUsable(page, 'the firm’s page after a file was taken in');
    await page.goto(papers, { waitUntil: 'networkidle' });
    await page.getByText('Bill of materials and price').waitFor();
    expect(await page.getByText(/demo/).count()).toBe(0);
    expect(troubles).toEqual([]);
  });

  it('is led from the price to the hourly rate, and can undo a file', async () => {
    const { page, troubles } = await stage.open('desk', '/jobs/saltglass3/price');
    await page.getByRole('link', { name: 'Change the hourly rate' }).click();
    await page.waitForFunction('document.activeElement !== document.body');
    const rate = page.getByLabel('Hourly rate');
    await rate.waitFor();
    await expect.poll(() => rate.evaluate((field) => field.matches(':focus'))).toBe(true);
    const [top, height] = await rate.evaluate((field) => [field.getBoundingClientRect().top, innerHeight]);
    expect(top).toBeGreaterThan(0);
    expect(top).toBeLessThan(height ?? 0);
    const before = await fetched(page);
    await takeIn(page, 'poor.json', JSON.stringify({ ...before, firm: { ...before.firm, name: 'Another' } }));
    await page.getByText(/poor\.json is taken in/).waitFor();
    await page.getByRole('button', { name: 'Undo: Take in poor.json' }).click();
    await allKept(page);
    expect(await fetched(page)).toEqual(before);
    expect(troubles).toEqual([]);
  });
});

it('what is looked for in the price list stays as it was typed, and capitals find the same', async () => {
  const { page, context } = await stage.open('desk', '/firm');
  const find = page.getByRole('textbox', { name: 'Find an item' });
  const rows = page.locator('price-list li');
  await find.pressSequentially('twin ');
  await expect.poll(() => rows.count()).toBeGreaterThan(0);
  const found = await rows.count();
  expect(await find.inputValue()).toBe('twin ');
  await find.fill('');
  await find.pressSequentially('TWIN ');
  await expect.poll(() => rows.count()).toBe(found);
  expect(await find.inputValue()).toBe('TWIN ');
  // A price of tenths of a penny is refused beside its field, not rounded.
  const price = rows.first().getByRole('textbox', { name: 'Price' });
  await price.fill('0.955');
  await price.press('Enter');
  await rows
    .first()
    .getByText(/Pence are whole here/)
    .waitFor();
  expect(await price.inputValue()).toBe('0.955');
  await context.close();
});
