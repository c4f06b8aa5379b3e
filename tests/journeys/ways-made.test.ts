import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { allKept, expectUsable, onPlan, type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

/** What has the focus, inside whatever shadow roots: its element, and the words in it. */
const focused = (page: Page): Promise<string> =>
  page.evaluate(`(() => {
    let at = document.activeElement;
    while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
    return at.tagName + ' ' + at.textContent.trim().replace(/\\s+/g, ' ').slice(0, 60);
  })()`) as Promise<string>;

describe('a first try in a new job of one’s own', () => {
  it('stays in the job, is shown from its top, and can be taken back, on a phone', async () => {
    const { page, troubles, context } = await stage.open('phone', '/');
    await page.getByRole('button', { name: 'New job', exact: true }).tap();
    await page.getByRole('link', { name: /^Wanted/ }).tap();
    for (const label of ['W1', 'W2']) {
      await page.getByRole('button', { name: 'Add it without a place' }).tap();
      await page
        .getByRole('button', { name: new RegExp(`^${label}`) })
        .first()
        .waitFor();
    }
    await page.getByRole('link', { name: /^Ways/ }).tap();
    const job = new URL(page.url()).pathname;
    await page.getByRole('button', { name: 'All on a new radial' }).tap();
    const made = page.getByText('“A new radial” is made');
    await made.waitFor();
    expect(new URL(page.url()).pathname).toBe(job);
    expect(await focused(page)).toBe('H2 Ways');
    expect(await page.getByRole('textbox', { name: 'The shown scheme' }).inputValue()).toBe('A new radial');
    const sheet = await page.locator('main.sheet').boundingBox();
    const line = await made.boundingBox();
    if (sheet === null || line === null) throw new Error('nothing is seen of it');
    expect(line.y).toBeGreaterThanOrEqual(sheet.y);
    expect(line.y + line.height).toBeLessThanOrEqual(sheet.y + sheet.height);
    await expectUsable(page, 'a scheme just made');
    await page.getByRole('button', { name: 'Take it back' }).tap();
    await made.waitFor({ state: 'detached' });
    await page.getByRole('button', { name: /^Undo: Remove the scheme/ }).tap();
    await page.getByRole('button', { name: /^Undo: New scheme: A new radial/ }).tap();
    await page.getByRole('heading', { name: 'Begin a scheme' }).waitFor();
    expect(new URL(page.url()).pathname).toBe(job);
    expect(troubles).toEqual([]);
    await context.close();
  });
});

describe('a point that is joined', () => {
  it.each(['desk', 'phone'] as const)('tells step by step how its cable runs: %s', async (size) => {
    const { page, troubles, context } = await stage.open(size, '/');
    await page
      .getByRole('heading', { name: /^3 Saltglass Row, Coppermere$|^3 Saltglass Row/ })
      .first()
      .click();
    await page.getByRole('link', { name: /^Ways/ }).click();
    const row = page.locator('join-row').filter({ hasText: 'W2' }).first();
    await row.getByText('How the cable runs').click();
    await row
      .getByText(/through 2 joists \(16 mm holes on the centre line, 1\.40 m from/)
      .first()
      .waitFor();
    await expectUsable(page, 'how a cable runs');
    expect(troubles).toEqual([]);
    await context.close();
  });
});

describe('the shown scheme', () => {
  it('stays the shown one although a wanted point more makes another the cheapest', async () => {
    const { page, context } = await stage.open('desk', '/');
    await page.getByRole('heading', { name: /^18 Fernlow Close/ }).click();
    await page.getByRole('link', { name: /^Wanted/ }).click();
    const name = await page.locator('price-block .whose').innerText();
    await page.getByRole('button', { name: 'Add it, wall from a list' }).click();
    await page.getByRole('button', { name: /^Undo: / }).waitFor();
    await allKept(page);
    expect(await page.locator('price-block .whose').innerText()).toBe(name);
    // Loaded anew, no scheme joins them all: without an address of its own the first would be shown.
    await page.reload({ waitUntil: 'networkidle' });
    expect(await page.locator('price-block .whose').innerText()).toBe(name);
    await context.close();
  });
});

describe('a remedy', () => {
  it('taken from a check, or taken out again, leaves the focus where it was in the list', async () => {
    const { page, context } = await stage.open('desk', '/');
    await page.getByRole('heading', { name: /^3 Saltglass Row: three outlets/ }).click();
    await page.getByRole('link', { name: /^Ways/ }).click();
    await page.getByRole('button', { name: /W2 off the existing spur/ }).click();
    const add = page.getByRole('button', { name: /Add this remedy/ }).first();
    await add.focus();
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: /^Undo: Add a remedy/ }).waitFor();
    await page.waitForTimeout(800);
    expect(await focused(page)).toMatch(/^BUTTON (Fails|To decide|Not proven|The scheme)/);
    const out = page.locator('remedy-list').getByRole('button', { name: /^Take out/ });
    const before = await out.count();
    await out.last().focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => out.count()).toBe(before - 1);
    await page.waitForTimeout(800);
    expect(await focused(page)).not.toMatch(/^BODY/);
    await context.close();
  });
});

describe('the price', () => {
  it('says how sure it is, what that is made of, and leads to what narrows it', async () => {
    const { page, context } = await stage.open('desk', '/');
    await page.getByRole('heading', { name: /^3 Saltglass Row: quoting/ }).click();
    await page.getByRole('link', { name: /^Ways/ }).click();
    const block = page.locator('price-block');
    await block.getByText('Likely range, with VAT').waitFor();
    const questions = page.locator('price-questions');
    await questions.getByRole('link', { name: 'What the range is made of' }).click();
    await page.getByRole('heading', { name: 'How far it may move' }).waitFor();
    await questions.getByRole('link', { name: /^Answer/ }).click();
    await page.getByRole('heading', { name: 'As found', level: 2 }).waitFor();
    await page.getByRole('link', { name: /^Ways/ }).click();
    const first = questions.locator('li').first();
    const words = await first.locator('button span').innerText();
    await first.getByRole('button').click();
    await first.getByRole('link', { name: 'Answer it' }).click();
    const open = page.locator('survey-list button[aria-expanded=true]');
    await open.waitFor();
    expect((await open.innerText()).startsWith(words)).toBe(true);
    await open.locator('xpath=..').locator('survey-item').waitFor();
    await context.close();
  });
});

describe('a point chosen in another step', () => {
  it.each(['desk', 'phone'] as const)('has its row in sight when Ways is come to, on a %s', async (size) => {
    const { page, context } = await stage.open(size, '/');
    await page.getByRole('heading', { name: /^3 Saltglass Row: three outlets/ }).click();
    await page.getByRole('link', { name: /^Wanted/ }).click();
    await onPlan(page, 'w4-boiler1').dispatchEvent('click');
    await page.getByRole('link', { name: /^Ways/ }).click();
    const row = page.locator('join-row[chosen]').getByRole('button', { name: 'W4', exact: true });
    await row.waitFor();
    await expect
      .poll(() =>
        row.evaluate((one) => {
          const { top, bottom } = (
            one as unknown as { getBoundingClientRect(): { top: number; bottom: number } }
          ).getBoundingClientRect();
          return top >= 0 && bottom <= (globalThis as unknown as { innerHeight: number }).innerHeight;
        }),
      )
      .toBe(true);
    await context.close();
  });
});

describe('two schemes side by side', () => {
  it('add up, column by column, and line by line', async () => {
    const { page, context } = await stage.open('desk', '/');
    await page.getByRole('heading', { name: /^3 Saltglass Row: three outlets/ }).click();
    await page.getByRole('link', { name: /^Ways/ }).click();
    await page.getByRole('link', { name: 'Compare two schemes' }).click();
    const pence = (text: string | undefined): number =>
      Math.round(
        Number(
          /−?£[\d,.]+/
            .exec(text ?? '')?.[0]
            .replace(/[£,]/g, '')
            .replace('−', '-') ?? 0,
        ) * 100,
      );
    const table = async (look: string): Promise<readonly (readonly string[])[]> => {
      const rows = await page.locator(`compare-view table.${look} tbody tr`).all();
      return Promise.all(rows.map((row) => row.locator('th, td').allInnerTexts()));
    };
    for (const look of ['sides', 'differences']) {
      const rows = await table(look);
      const net = rows.findIndex(([what = '']) => what.startsWith('Total before VAT'));
      for (const column of look === 'sides' ? [1, 2] : [1, 2, 3]) {
        const at = (row: number): number => pence(rows[row]?.[column]);
        const parts = rows.slice(0, net).reduce((sum, row) => sum + pence(row[column]), 0);
        expect(parts, `${look} ${column}`).toBe(at(net));
        expect(at(net) + at(net + 1)).toBe(at(net + 2));
      }
    }
    await expectUsable(page, 'two schemes side by side');
    await context.close();
  });
});
