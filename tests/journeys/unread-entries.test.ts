import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { allKept, expectUsable, type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

const ITEM = '13 A twin socket-outlet';

const stored = async (): Promise<number | undefined> => {
  const library = (await (await fetch(new URL('/api/library', stage.server.address))).json()) as {
    prices: { items: { item: string; pricePence: number }[] };
  };
  return library.prices.items.find(({ item }) => item === 'socket-twin')?.pricePence;
};

describe('a price typed as people write it', () => {
  it('is taken with its pound sign, and stays in sight with an error while it cannot be read', async () => {
    const { page, troubles } = await stage.open('desk', '/firm');
    const find = page.getByLabel('Find an item');
    await find.fill('twin socket-outlet');
    const row = page.locator('price-list li').filter({ has: page.getByText(ITEM, { exact: true }) });
    const price = row.getByLabel('Price', { exact: true });
    await price.fill('£0.95');
    await price.press('Tab');
    await allKept(page);
    await expect.poll(stored).toBe(95);
    expect(await price.inputValue()).toBe('0.95');
    await price.fill('one pound');
    await price.press('Tab');
    await row.getByText(/“one pound” is not a number, so it is not saved/).waitFor();
    await page.getByText('1 entry not saved').waitFor();
    await find.fill('clip');
    await page.locator('price-list').getByText(/clip/i).first().waitFor();
    expect(await price.inputValue()).toBe('one pound');
    await expectUsable(page, 'the price list with an entry that cannot be read');
    await page.getByRole('link', { name: 'All jobs' }).click();
    await page.getByText(/Not saved, because it could not be read as a number: “one pound”/).waitFor();
    await page.getByRole('button', { name: 'Put away' }).click();
    expect(await stored()).toBe(95);
    expect(troubles).toEqual([]);
  });
});
