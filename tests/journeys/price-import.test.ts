import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { priceListCsv } from '#engine/price/list/own-list.ts';
import { ownLibrary } from '#tests/engine/own-library.ts';
import { allKept, expectUsable, type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

/** A list as a merchant might send it: notes above, a heading between rows, and three rows that want looking at. */
const list = [
  'Quarry Lane Electrical Factors',
  'Trade list, November',
  '',
  'Stock code;Description;Trade price (ex VAT);Per;Disc',
  'CABLE;;;;',
  'QL-T25;T&E cable 2.5/1.5 grey;£1,10;metre;10%',
  'QL-T25D;T&E cable 2.5/1.5 grey 100m;61,00;drum of 100 m;',
  'QL-S2;Twin skt-outlet 13A sw wht;2,95;each;',
  'QL-GR;Open grommet 20 mm;4,20;100;',
  'QL-FU;Fused conn unit switched;POA;each;',
  'QL-CL;Clip for flat cable 2.5 mm²;9,80;each;',
  'QL-LAMP;LED lamp 9 W;1,99;each;',
  '',
].join('\r\n');

const choose = (page: Page, name: string, text: string): Promise<void> =>
  page
    .locator('price-import input[type=file]')
    .setInputFiles({ name, mimeType: 'text/csv', buffer: Buffer.from(text) });

const field = (page: Page, label: string) => page.locator('price-import').getByLabel(label, { exact: true });

async function fetchedCsv(page: Page): Promise<string> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Fetch the list as CSV' }).click(),
  ]);
  return readFileSync(await download.path(), 'utf8');
}

describe.each(['desk', 'phone'] as const)('a merchant’s price list, at a %s', (size) => {
  it('is taken in whole or not at all, is known the next time, and can be taken back', async () => {
    const { page, troubles, context } = await stage.open(size, '/firm?part=import');
    const before = await fetchedCsv(page);
    await choose(page, 'november.csv', list);
    await page.getByText('Headings were found in row 4').waitFor();
    await expectUsable(page, `a list’s columns, ${size}`);
    expect(await field(page, 'Price').locator('option:checked').innerText()).toContain(
      'Trade price (ex VAT)',
    );
    // With a decimal point its figures cannot be read: the rows are named, and nothing can be taken in.
    await page.getByText('2 rows about your items cannot be read').waitFor();
    await page.getByText(/“4,20” is no figure/).waitFor();
    await page.getByRole('button', { name: 'Leave out row 9' }).click();
    await page.getByText('Left out: row 9.').waitFor();
    await page.getByRole('button', { name: 'Put back' }).click();
    await field(page, 'Whose list it is').fill('Quarry Lane');
    await field(page, 'Whose list it is').press('Tab');
    await field(page, 'Decimals are set off by').selectOption(',');
    await field(page, 'Prices are of the day').fill('2026-11-20');
    await field(page, 'Prices are of the day').press('Tab');
    // Two rows speak of an item in its very words; the others a person has to place.
    await page.getByText(/rows are about no item that is known/).click();
    await page.getByLabel('Row 6 is').selectOption('cable-flat-2.5-1.5');
    await page.getByLabel('Row 7 is').selectOption('cable-flat-2.5-1.5');
    await page.getByLabel('Row 8 is').selectOption('socket-twin');
    await page.getByText(/1 row is about no item that is known/).waitFor();
    // The price of 100 clips, which the list says is for one, is asked about.
    await page.getByText('1 price is far from what it was').waitFor();
    const take = page.getByRole('button', { name: /^Take in \d+ prices$/ });
    expect(await take.isDisabled()).toBe(true);
    await page.getByText('1 row about nothing of yours cannot be read').click();
    await page.getByText(/“POA” is no price in figures/).waitFor();
    await expectUsable(page, `what a list would change, ${size}`);
    expect(await page.evaluate('document.documentElement.scrollWidth - innerWidth')).toBeLessThanOrEqual(0);
    await page.getByLabel('The price of row 11 is right').check();
    expect(await take.isDisabled()).toBe(false);
    expect(await fetchedCsv(page)).toBe(before);
    await take.click();
    await page.getByText(/prices from november\.csv taken in/).waitFor();
    await allKept(page);
    const after = await fetchedCsv(page);
    const rowOf = (text: string, item: string): string =>
      text.split('\r\n').find((row) => row.startsWith(`"${item}"`)) ?? '';
    expect(rowOf(after, 'cable-flat-2.5-1.5')).toContain(',0.99,');
    expect(rowOf(after, 'cable-flat-2.5-1.5')).toContain('Quarry Lane');
    // Sent again, its columns and rows are known, and there is nothing to do.
    await choose(page, 'again.csv', list);
    await page.getByText('Columns as set before: Quarry Lane').waitFor();
    await page.getByText(/0 new prices, 5 as before, with a new day or number/).waitFor();
    await page.getByRole('button', { name: /^Undo: Take in/ }).click();
    await allKept(page);
    expect(await fetchedCsv(page)).toBe(before);
    expect(troubles).toEqual([]);
    await context.close();
  });

  it('that is no list is refused in words, and nothing is changed', async () => {
    const { page, troubles, context } = await stage.open(size, '/firm?part=import');
    await choose(page, 'letter.csv', 'Dear Sir,\n"I remain');
    await page.getByText(/letter\.csv: At row 2: a quotation mark opens there/).waitFor();
    await choose(page, 'plan.xlsx', '%PDF-1.7');
    await page.getByText(/plan\.xlsx: .*it is a PDF/).waitFor();
    await expectUsable(page, `a refused list, ${size}`);
    // The browser itself tells of answers that refuse.
    expect(troubles.filter((line) => !/422/.test(line))).toEqual([]);
    await context.close();
  });
});

it('old prices are marked on the firm’s page and in the kit, until newer ones are taken in', async () => {
  const { page, troubles, context } = await stage.open('phone', '/firm?part=file');
  const own = ownLibrary();
  const old = { ...own, prices: { ...own.prices, date: '2025-01-01' } };
  await page.locator('library-file input').setInputFiles({
    name: 'own.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(old)),
  });
  await page.getByText(/own\.json is taken in/).waitFor();
  await page.getByText(/prices are more than 90 days old/).waitFor();
  await page.getByRole('textbox', { name: 'Find an item' }).fill('grommet');
  await page.getByText(/of 2025-01-01, \d+ days old/).waitFor();
  await expectUsable(page, 'a price list with old prices');
  await allKept(page);
  await page.goto('/jobs/saltglass3/kit', { waitUntil: 'networkidle' });
  await page.getByText(/lines? carr(?:y|ies) (?:a price|prices) more than\s+90 days old/).waitFor();
  expect(await page.getByText(/^price \d+ days old$/).count()).toBeGreaterThan(5);
  await expectUsable(page, 'a kit with old prices');
  await page.getByRole('link', { name: 'take in a newer list' }).click();
  const newer = priceListCsv({ ...own.prices, date: new Date().toISOString().slice(0, 10) });
  await choose(page, 'newer.csv', newer);
  await page.getByText('A list that Ringwright wrote').waitFor();
  await page.getByRole('button', { name: /^Take in \d+ prices$/ }).click();
  await page.getByText(/newer\.csv taken in/).waitFor();
  await expect.poll(() => page.getByText(/prices are more than 90 days old/).count()).toBe(0);
  await allKept(page);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Fetch it as XLSX' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('price-list.xlsx');
  expect(troubles).toEqual([]);
  await context.close();
});
