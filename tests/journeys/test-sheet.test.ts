import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { allKept, expectUsable, priceOn, type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

const tests = '/jobs/saltglass3/papers?part=tests';

const row = (page: Page, id: string) => page.locator(`test-row[data-test="ring-house/${id}"]`);
const verdict = (page: Page, id: string) => row(page, id).locator('.verdict');

/** Types what the tester shows, and goes on with Enter. */
async function read(page: Page, id: string, shown: string): Promise<void> {
  const input = row(page, id).locator('input');
  await input.fill(shown);
  await input.press('Enter');
}

const testsNow = (page: Page): Promise<string | null> =>
  page.evaluate(() => {
    const focused = (root: Document | ShadowRoot): Element | null => {
      const at = root.activeElement;
      return at?.shadowRoot?.activeElement ? focused(at.shadowRoot) : at;
    };
    let at: Node | null = focused(document);
    while (at !== null && !(at instanceof Element && at.matches('test-row')))
      at = at.parentNode ?? (at instanceof ShadowRoot ? at.host : null);
    return at instanceof Element ? at.getAttribute('data-test') : null;
  });

describe('the test sheet on a phone', () => {
  it('judges each reading as it is entered, goes on by Enter, is undone, works without a connection, and moves no price', async () => {
    const { page, context, troubles } = await stage.open('phone', '/jobs/saltglass3/papers');
    await page.getByRole('button', { name: 'Tests' }).click();
    await page.getByRole('heading', { name: /^Ring, end to end/ }).waitFor();
    await page.getByText('0 of 53 read.').waitFor();
    const sheet = page.locator('test-sheet');
    expect(await sheet.getByText(/Part both ends of the ring at the board/).count()).toBe(1);

    await read(page, 'ends/r1', '0.45');
    await verdict(page, 'ends/r1').getByText('Fits.').waitFor();
    expect(await testsNow(page)).toBe('ring-house/ends/rn');
    await read(page, 'ends/rn', '0.62');
    await verdict(page, 'ends/rn')
      .getByText(/0\.17\sΩ more than expected/)
      .waitFor();
    await page.locator('[data-check="ring-alike"][data-outcome="look"]').waitFor();

    // What cannot be read keeps the hand there, with the reason.
    await read(page, 'ends/r2', 'abc');
    await row(page, 'ends/r2').getByRole('alert').waitFor();
    expect(await testsNow(page)).toBe('ring-house/ends/r2');
    await read(page, 'ends/r2', '0.74');

    await context.setOffline(true);
    await read(page, 'zs/w1-living1', '1.2');
    await verdict(page, 'zs/w1-living1')
      .getByText(/The limit is at most 1\.09/)
      .waitFor();
    await page.locator('[data-check="loop"][data-outcome="fails"]').waitFor();
    await read(page, 'zs/w1-living1', '0.52');
    await verdict(page, 'zs/w1-living1').getByText('Fits.').waitFor();
    await page.locator('[data-check="loop"][data-outcome="holds"]').waitFor();
    await context.setOffline(false);

    await row(page, 'polarity/w1-living1').getByText('No', { exact: true }).click();
    await verdict(page, 'polarity/w1-living1').getByText('Fails.').waitFor();
    await page.getByRole('button', { name: /^Undo: .*Polarity: W1/ }).click();
    await verdict(page, 'polarity/w1-living1').waitFor({ state: 'detached' });
    await page.getByText(/^4 of 53 read; 1 to look into\.$/).waitFor();
    await expectUsable(page, 'the test sheet on a phone');

    await allKept(page);
    await page.reload({ waitUntil: 'networkidle' });
    await verdict(page, 'ends/rn').getByText('Look into it.').waitFor();
    const answer = await fetch(new URL('/api/jobs/saltglass3', stage.server.address));
    const { readings } = (await answer.json()) as { readings: { phase: string; kind: string }[] };
    expect(readings.filter(({ phase }) => phase === 'after').map(({ kind }) => kind)).toEqual([
      'loop',
      'loop',
      'loop',
      'zs',
    ]);
    // Emptied, a reading is gone.
    await row(page, 'ends/rn').locator('input').fill('');
    await row(page, 'ends/rn').locator('input').press('Enter');
    await page.getByText('3 of 53 read; none off its band or limit.').waitFor();
    expect(troubles.filter((trouble) => !/ERR_INTERNET_DISCONNECTED|Failed to fetch/.test(trouble))).toEqual(
      [],
    );
    await context.close();
  });
});

describe('the test sheet at a desk', () => {
  it('says what has to be read next, and the price stays whatever was read', async () => {
    const { page, context, troubles } = await stage.open('desk', tests);
    await page.getByRole('heading', { name: /^Insulation/ }).waitFor();
    const before = await priceOn(page);
    await read(page, 'insulation/LN-cpc', '0.5');
    await verdict(page, 'insulation/LN-cpc').getByText('Fails.').waitFor();
    await page.locator('[data-check="insulation"][data-outcome="fails"]').waitFor();
    expect(await priceOn(page)).toBe(before);
    await page.getByRole('button', { name: /^Next: / }).click();
    expect(await testsNow(page)).toBe('ring-house/ends/rn');
    await expectUsable(page, 'the test sheet at a desk');
    await page.emulateMedia({ media: 'print' });
    await page.getByRole('heading', { name: 'Tests, RW-0001' }).waitFor();
    expect(await row(page, 'ends/r1').locator('input').isVisible()).toBe(false);
    expect(await row(page, 'ends/r1').locator('.written').innerText()).toMatch(/0\.45/);
    expect(troubles).toEqual([]);
    await context.close();
  });
});
