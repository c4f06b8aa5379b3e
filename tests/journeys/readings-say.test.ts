import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectUsable, type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

describe.each(['desk', 'phone'] as const)('readings against a wrong order, on a %s', (size) => {
  it('are told, can be recorded beside the job as it was, and undone', async () => {
    const { page, troubles, context } = await stage.open(size, '/');
    await page.getByRole('heading', { name: /^18 Fernlow Close: three worktop outlets$/ }).click();
    await page.locator('summary', { hasText: /^\s*Cables/ }).click();
    const ring = page.locator('ring-order');
    await page.locator('summary', { hasText: 'Ring in order' }).click();
    await ring.getByRole('button', { name: 'A3 up' }).click();
    await ring.getByRole('button', { name: 'Make the cables' }).click();
    await page.locator('summary', { hasText: /^\s*Readings/ }).click();
    const said = page.getByRole('region', { name: /What the readings say/ });
    await said.getByText('another order than recorded').waitFor();
    await expectUsable(page, `what the readings say, ${size}`);
    await said.getByRole('button', { name: /^Record Socket ring/ }).click();
    await page.getByText(/is on the list as “18 Fernlow Close.*ring as recorded before/).waitFor();
    await expect.poll(() => said.getByText('another order than recorded').count()).toBe(0);
    await page
      .getByRole('button', { name: /^Undo: Socket ring, downstairs as its readings tell it/ })
      .click();
    await said.getByText('another order than recorded').waitFor();
    await page.getByRole('link', { name: 'All jobs' }).click();
    await page
      .getByRole('heading', { name: /ring as recorded before/ })
      .first()
      .waitFor();
    expect(troubles).toEqual([]);
    await context.close();
  });
});
