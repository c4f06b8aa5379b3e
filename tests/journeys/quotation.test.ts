import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { allKept, expectUsable, type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

describe('the customer’s paper', () => {
  it.each(['desk', 'phone'] as const)(
    'is put together and read, at a %s',
    { timeout: 120_000 },
    async (size) => {
      const { page, troubles, context } = await stage.open(size, '/jobs/fernlow018/papers');
      const part = page.locator('quotation-part');
      await part.getByRole('heading', { name: 'For the customer: quotation' }).waitFor({ timeout: 60_000 });
      const tick = (name: string) => part.getByRole('checkbox', { name });
      // Nobody has chosen yet: the cheapest is offered; on the phone what was chosen at the desk.
      expect(await tick('F: one fused unit').isChecked()).toBe(size === 'phone');
      expect(await tick('B1, B2 and B3 in turn').isDisabled()).toBe(true);

      if (size === 'desk') {
        await tick('F: one fused unit').check();
        await tick('E: the ring opened').check();
        await part.getByLabel('The customer is').selectOption('consumer');
        await part.getByLabel('The agreement is made').selectOption('customers-home');
        const before = await part.getByLabel('When work can begin').inputValue();
        await part.getByLabel('When work can begin').fill('from 4 January');
        await part.getByLabel('When work can begin').press('Enter');
        await page.getByRole('button', { name: 'Undo: Say when the work can begin' }).click();
        await expect.poll(() => part.getByLabel('When work can begin').inputValue()).toBe(before);
        await page.getByRole('button', { name: /^Redo/ }).click();
        await allKept(page);
      }
      await part.getByRole('button', { name: 'Read it as the customer does' }).click();
      const paper = part.locator('quotation-view');
      await paper.getByRole('heading', { name: /^Option B, the loop carried on: £885\.22$/ }).waitFor();
      for (const words of [
        '£872.48',
        'When we can begin: from 4 January',
        'Because we agree at your home, you may cancel',
        'One fuse for the new sockets',
      ])
        expect(await paper.getByText(words).first().isVisible()).toBe(true);
      // Three drawn storeys or more, and the legend once.
      expect(await paper.locator('svg-drawing svg').count()).toBeGreaterThanOrEqual(4);
      const box = await paper.boundingBox();
      expect(box?.width).toBeLessThanOrEqual(page.viewportSize()?.width ?? 0);
      await expectUsable(page, `the paper at a ${size}`);

      await page.keyboard.press('Escape');
      await paper.waitFor({ state: 'detached' });
      await expectUsable(page, `the step Papers at a ${size}`);
      const fetched = page.waitForEvent('download', { timeout: 60_000 });
      await part.getByRole('link', { name: 'Fetch PDF' }).click();
      expect((await fetched).suggestedFilename()).toMatch(/quotation\.pdf$/);

      expect(troubles).toEqual([]);
      await context.close();
    },
  );
});
