import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Library } from '#model/library.ts';
import { ownLibrary } from '#tests/engine/own-library.ts';
import { tinyPng } from '#tests/http/photos.ts';
import { allKept, expectUsable, type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

const jobId = 'saltglass3';
const papers = `/jobs/${jobId}/papers`;
const api = (path: string): string => `${stage.server.address}/api${path}`;

/** Puts a library in the place of the one that is there, as another window would. */
async function saveLibrary(library: Library): Promise<void> {
  const etag = (await fetch(api('/library'))).headers.get('etag') ?? '';
  const answer = await fetch(api('/library'), {
    method: 'PUT',
    headers: { 'content-type': 'application/json', 'if-match': etag },
    body: JSON.stringify(library),
  });
  expect(answer.status).toBe(200);
}

const dearer = (library: Library): Library => ({
  ...library,
  norms: { ...library.norms, ratePencePerHour: library.norms.ratePencePerHour + 300 },
});

const frozen = async (id: string): Promise<readonly string[]> =>
  Promise.all(
    ['document', 'drawings', 'job', 'library'].map(async (text) =>
      (await fetch(api(`/jobs/${jobId}/quotations/${id}/frozen/${text}`))).text(),
    ),
  );

const listed = async () => (await (await fetch(api(`/jobs/${jobId}/quotations`))).json()).quotations;

const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).first().click();
const card = (page: Page, revision: number) =>
  page.locator('quotation-card').filter({ hasText: `Quotation, revision ${revision}` });

const penceIn = (text: string): number =>
  Math.round(Number(/£([\d,.]+)/.exec(text)?.[1]?.replaceAll(',', '')) * 100);

describe('a quotation, from the office to the site', () => {
  it('is issued, moves in money and says why, is issued anew, accepted and varied; what went out stays as it was', async () => {
    await saveLibrary(ownLibrary());
    const { page, troubles } = await stage.open('phone', papers);
    // Every step works a dozen estimates out: on a busy machine more than ten seconds.
    page.setDefaultTimeout(30_000);
    await page.getByText('Nothing is issued yet.').waitFor();
    await expectUsable(page, 'papers before anything is issued');
    await press(page, 'Issue it to the customer');
    await page.getByText(/cannot be changed or taken away/).waitFor();
    await press(page, 'Yes: issue it to the customer');
    await card(page, 1).getByText('Issued, no answer yet').waitFor();
    await page.getByText('Nothing has changed since it was issued').waitFor();
    const [first] = await listed();
    const sent = await frozen(first.id);

    // The office puts its rate up, and the way there turns out longer.
    await saveLibrary(dearer(ownLibrary()));
    await page.goto(`/jobs/${jobId}/price`);
    await page.getByLabel('Travel, there and back').fill('95');
    await page.keyboard.press('Enter');
    await allKept(page);
    await page.goto(papers);
    await page.getByText(/have changed since/).waitFor();
    await page.getByText('Why, line by line').click();
    const moved = page.locator('money-moved');
    await moved.getByText('Hourly rate').waitFor();
    await moved.getByText('Travel', { exact: false }).first().waitFor();
    const sums = (await moved.locator('td.number').allInnerTexts()).map(
      (text) => penceIn(text) * (text.startsWith('−') ? -1 : 1),
    );
    const [before = 0, ...rest] = sums;
    expect(before + rest.slice(0, -1).reduce((sum, pence) => sum + pence, 0)).toBe(rest.at(-1));
    await expectUsable(page, 'what has moved');

    await press(page, 'Issue revision 2');
    await page.getByText('Revision 1 then counts as replaced.').waitFor();
    await press(page, 'Yes: issue revision 2');
    await card(page, 2).getByText('Issued, no answer yet').waitFor();
    await page.getByText('Earlier: 1').click();
    await card(page, 1).getByText('Replaced by a later one').waitFor();

    // The customer says yes.
    await press(page, /^Record an acceptance/);
    await page.getByLabel('Who said so').fill('');
    await press(page, 'Record the acceptance');
    await page.getByText('Name who said so').waitFor();
    await page.getByLabel('Who said so').fill('W. Saltglass');
    await page.getByLabel('How', { exact: true }).selectOption('signed');
    await page.getByText('Yes', { exact: true }).last().click();
    await expectUsable(page, 'an acceptance being recorded');
    await press(page, 'Record the acceptance');
    await card(page, 2).getByText('Accepted', { exact: true }).waitFor();
    await card(page, 2)
      .getByText(/W\. Saltglass/)
      .waitFor();
    const contract = penceIn(await card(page, 2).locator('.contract').innerText());
    expect(contract).toBe(rest.at(-1));

    // On site: the chases want another filling than was thought.
    await page.getByText('Nothing has changed so far.').waitFor();
    await page.goto(`/jobs/${jobId}/price`);
    await page.getByLabel('Chases are filled with').selectOption('bonding-and-finish');
    await allKept(page);
    await page.goto(papers);
    await page.getByText('Plaster for cuts in walls').waitFor();
    await page.locator('variation-form input[type=file]').setInputFiles({
      name: 'wall.png',
      mimeType: 'image/png',
      buffer: Buffer.from(tinyPng),
    });
    await page.getByAltText('Photo 1 for this variation').waitFor();
    await press(page, 'Put it to the customer');
    await page.getByText('Say what was found').waitFor();
    await page
      .getByLabel('What was found and what is done about it, in words for the customer')
      .fill('The plaster is blown behind the skirting.');
    await expectUsable(page, 'a variation being made');
    await page.context().setOffline(true);
    await press(page, 'Put it to the customer');
    await page.getByText(/not put to the customer yet/).waitFor();
    expect(
      await page
        .getByLabel('What was found and what is done about it, in words for the customer')
        .inputValue(),
    ).toBe('The plaster is blown behind the skirting.');
    await page.context().setOffline(false);
    await press(page, 'Put it to the customer');
    await page.getByText('Waits for the customer’s answer: do not go on with it').waitFor();
    await page.getByAltText('Photo 1 of variation 1').waitFor();
    expect(
      await page
        .getByAltText('Photo 1 of variation 1')
        .evaluate((image: HTMLImageElement) => image.naturalWidth),
    ).toBe(1);
    // The photo went out as a smaller one, drawn anew: nothing that the camera wrote into the file went along.
    const [{ variations }] = (await listed()).slice(-1);
    const kept = await fetch(api(`/assets/${variations[0].photos[0]}`));
    expect(kept.headers.get('content-type')).toBe('image/jpeg');
    await press(page, 'The customer agrees');
    await page.getByLabel('How', { exact: true }).selectOption('message');
    await press(page, 'Record: agreed');
    await page.locator('variation-card').getByText('Agreed', { exact: true }).waitFor();
    await expectUsable(page, 'an agreed variation');
    const [, second] = await listed();
    const [variation] = second.variations;
    expect(penceIn(await card(page, 2).locator('.contract').innerText())).toBe(second.contractPence);
    expect(second.contractPence).toBe(contract + variation.afterPence - variation.beforePence);
    await page.getByText('Nothing has changed so far.').waitFor();

    // A slip of the thumb: it comes back, and goes in again.
    await press(page, /^Take back what was recorded last/);
    await page.getByText('Waits for the customer’s answer: do not go on with it').waitFor();
    await press(page, 'The customer agrees');
    await press(page, 'Record: agreed');
    await page.locator('variation-card').getByText('Agreed', { exact: true }).waitFor();

    expect(await frozen(first.id)).toEqual(sent);
    await card(page, 2)
      .getByRole('button', { name: /^Read it as issued/ })
      .click();
    await page.locator('issued-quotations quotation-view').waitFor();
    await page.getByRole('button', { name: 'Put it away' }).last().click();
    await page.locator('issued-quotations quotation-view').waitFor({ state: 'detached' });
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      card(page, 2)
        .getByRole('link', { name: /^PDF as issued/ })
        .click(),
    ]);
    expect(download.suggestedFilename()).toMatch(/^.+-2\.pdf$/);
    expect(troubles.filter((words) => !/ERR_INTERNET_DISCONNECTED/.test(words))).toEqual([]);
  }, 180_000);

  it('is worked by keyboard at a desk, and says what it wants before it goes out', async () => {
    const { page, troubles } = await stage.open('desk', '/jobs/fernlow018/papers');
    await page.getByText('Nothing is issued yet.').waitFor();
    await page.getByRole('button', { name: 'Issue it to the customer' }).focus();
    await page.keyboard.press('Enter');
    const yes = page.getByRole('button', { name: 'Yes: issue it to the customer' });
    await yes.waitFor();
    expect(await page.evaluate('document.activeElement !== document.body')).toBe(true);
    await yes.focus();
    await page.keyboard.press('Enter');
    await page.locator('quotation-card').getByText('Issued, no answer yet').waitFor();
    await expectUsable(page, 'issued at a desk');
    expect(troubles).toEqual([]);
    await page.close();
  });

  it('is not issued while the firm has no name, and says so', async () => {
    const { page } = await stage.open('desk', '/jobs/quarrelct5/papers');
    const library = ownLibrary();
    await saveLibrary({ ...library, firm: { ...library.firm, name: '' } });
    await page.reload({ waitUntil: 'networkidle' });
    await press(page, 'Issue it to the customer');
    await press(page, 'Yes: issue it to the customer');
    await page.locator('issued-quotations [role=alert]').waitFor();
    await page.getByText('Nothing is issued yet.').waitFor();
    await page.close();
  });
});
