import { readFile } from 'node:fs/promises';
import ExcelJS from 'exceljs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { allKept, onPlan, priceOn, type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

describe('from the first start', () => {
  it('to a downloaded workbook that says what the screen says', async () => {
    const { page, troubles, context } = await stage.open('desk');
    await page.getByRole('heading', { name: /^3 Saltglass Row: three outlets/ }).click();
    await page.waitForURL(/\/jobs\/[^/]+\/as-found/);
    for (const step of ['Wanted', 'Ways', 'Kit', 'Price', 'Papers']) {
      await page.getByRole('link', { name: new RegExp(`^${step}`) }).click();
      await page.getByRole('heading', { name: new RegExp(`^${step}`), level: 2 }).waitFor();
    }
    const price = await priceOn(page);
    expect(price).toBeGreaterThan(50_000);
    const waiting = page.waitForEvent('download');
    await page.getByRole('link', { name: /Bill of materials and price$/ }).click();
    const download = await waiting;
    expect(download.suggestedFilename()).toMatch(/\.xlsx$/);
    const book = new ExcelJS.Workbook();
    await book.xlsx.readFile(await download.path());
    const values = book.worksheets.flatMap((sheet) =>
      sheet.getSheetValues().flatMap((row) => (Array.isArray(row) ? row : [])),
    );
    const results = values.map((cell) =>
      typeof cell === 'object' && cell !== null && 'result' in cell ? cell.result : cell,
    );
    expect(results).toContain(price / 100);
    expect(troubles).toEqual([]);
    await context.close();
  });

  it('to the plan as a drawing of each storey, and the job file, which opens again', async () => {
    const { page, troubles, context } = await stage.open('desk');
    await page.getByRole('heading', { name: /^18 Fernlow Close/ }).click();
    await page.getByRole('link', { name: /^Papers/ }).click();
    const [plan] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('link', { name: 'Ground floor: Wiring plan as a picture', exact: true }).click(),
    ]);
    expect(await readFile(await plan.path(), 'utf8')).toContain('<svg');
    const [file] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('link', { name: /Job file$/ }).click(),
    ]);
    const job = JSON.parse(await readFile(await file.path(), 'utf8')) as { id: string; title: string };
    await page.getByRole('link', { name: 'All jobs' }).click();
    const copy = { ...job, id: 'opened-again', title: 'Opened from a file' };
    await page.locator('input[type=file]').setInputFiles({
      name: 'job.json',
      mimeType: 'application/json',
      buffer: Buffer.from(JSON.stringify(copy)),
    });
    await page.getByRole('heading', { name: 'Opened from a file' }).first().waitFor();
    expect(troubles).toEqual([]);
    await context.close();
  });

  it('by a new job of one’s own: every step is shown, however little is known', async () => {
    const { page, troubles, context } = await stage.open('desk');
    await page.getByRole('button', { name: 'New job' }).click();
    await page.waitForURL(/\/jobs\/[^/]+\//);
    for (const step of ['As found', 'Wanted', 'Ways', 'Kit', 'Price', 'Papers']) {
      await page.getByRole('link', { name: new RegExp(`^${step}`) }).click();
      await page.getByRole('heading', { level: 2 }).first().waitFor();
    }
    expect(troubles).toEqual([]);
    await context.close();
  });

  it('refuses a file that is no job, and says where and why', async () => {
    const { page, context } = await stage.open('desk');
    await page.locator('input[type=file]').setInputFiles({
      name: 'holiday.json',
      mimeType: 'application/json',
      buffer: Buffer.from('{"format":"ringwright-job","version":1,"titel":"x"}'),
    });
    await page.getByText(/titel/).first().waitFor();
    await context.close();
  });
});

describe('dragging a wanted point', () => {
  it('moves cable, findings and price with the hand, is one step back, and is kept', async () => {
    const { page, troubles, context } = await stage.open('desk', '/');
    await page.getByRole('heading', { name: /^3 Saltglass Row: three outlets/ }).click();
    await page.getByRole('link', { name: /^Wanted/ }).click();
    const point = onPlan(page, 'w1-living1');
    await point.waitFor();
    const before = await priceOn(page);
    const cableBefore = await page.locator('plan-view .cables').textContent();
    const box = await point.locator('.hit').boundingBox();
    if (box === null) throw new Error('W1 is not on the plan');
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (let i = 1; i <= 12; i++) await page.mouse.move(x + i * 4, y - i * 7, { steps: 1 });
    // The hand still holds the point, and everything has followed it.
    await expect.poll(() => priceOn(page)).not.toBe(before);
    expect(await page.locator('plan-view .cables').textContent()).not.toBe(cableBefore);
    await page.mouse.up();
    const undo = page.getByRole('button', { name: 'Undo: Move W1' });
    await undo.waitFor();
    await allKept(page);
    const after = await priceOn(page);
    expect(after).not.toBe(before);
    await undo.click();
    await expect.poll(() => priceOn(page)).toBe(before);
    await page.getByRole('button', { name: 'Redo: Move W1' }).click();
    await expect.poll(() => priceOn(page)).toBe(after);
    await allKept(page);
    await page.reload({ waitUntil: 'networkidle' });
    await expect.poll(() => priceOn(page)).toBe(after);
    expect(troubles).toEqual([]);
    await context.close();
  });

  it('goes by finger on a phone', async () => {
    const { page, troubles, context } = await stage.open('phone', '/');
    await page.getByRole('heading', { name: /^3 Saltglass Row: quoting/ }).click();
    await page.getByRole('link', { name: /^Wanted/ }).click();
    const point = onPlan(page, 'w1-living1');
    await point.waitFor();
    const box = await point.locator('.hit').boundingBox();
    if (box === null) throw new Error('W1 is not on the plan');
    expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(43.5);
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    const touch = await context.newCDPSession(page);
    const send = (
      type: 'touchStart' | 'touchMove' | 'touchEnd',
      points: { x: number; y: number }[],
    ): Promise<unknown> => touch.send('Input.dispatchTouchEvent', { type, touchPoints: points });
    await send('touchStart', [{ x, y }]);
    for (let i = 1; i <= 8; i++) await send('touchMove', [{ x: x + i * 2, y: y + i * 5 }]);
    await send('touchEnd', []);
    await page.getByRole('button', { name: 'Undo: Move W1' }).waitFor();
    expect(troubles).toEqual([]);
    await context.close();
  });
});
