import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Job } from '#model/job.ts';
import { ownLibrary } from '#tests/engine/own-library.ts';
import { readPdf } from '#tests/exports/pdf-reader.ts';
import { allKept, expectUsable, type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
  const etag = await etagOf('/library');
  await put('/library', ownLibrary(), etag);
});
afterAll(() => stage.close());

const api = (path: string): string => `${stage.server.address}/api${path}`;
const etagOf = async (path: string): Promise<string> => (await fetch(api(path))).headers.get('etag') ?? '';

async function put(path: string, body: object, etag: string, method = 'PUT'): Promise<void> {
  const answer = await fetch(api(path), {
    method,
    headers: { 'content-type': 'application/json', 'if-match': etag },
    body: JSON.stringify(body),
  });
  expect([path, answer.ok]).toEqual([path, true]);
}

const listed = async (jobId: string) =>
  (await (await fetch(api(`/jobs/${jobId}/quotations`))).json()).quotations;

/** Issues a quotation of a job as it stands. */
async function issue(jobId: string, id: string): Promise<void> {
  const body = { id, date: '2026-11-26', library: await etagOf('/library') };
  await put(`/jobs/${jobId}/quotations`, body, await etagOf(`/jobs/${jobId}`), 'POST');
}

const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).first().click();
const by = (page: Page) => page.getByLabel('Who said so');

/** Away to another step and back, without a reload. */
async function awayAndBack(page: Page, jobId: string): Promise<void> {
  await page.locator(`step-run a[href*="/jobs/${jobId}/price"]`).first().click();
  await page
    .getByRole('heading', { name: /^Price/ })
    .first()
    .waitFor();
  await page.goBack();
  await page.locator('issued-quotations').waitFor();
}

describe.each([
  ['phone', 'saltglass3'],
  ['desk', 'fernlow018'],
] as const)('papers, later, on a %s', (size, jobId) => {
  it('keep an answer that is being typed, give a variation as a PDF, and are erased', async () => {
    await issue(jobId, 'q1');
    const { page, troubles } = await stage.open(size, `/jobs/${jobId}/papers`);
    page.setDefaultTimeout(30_000);
    await press(page, /^Record an acceptance/);
    await by(page).fill('W. Saltglass');
    await page.getByLabel('How', { exact: true }).selectOption('telephone');
    await awayAndBack(page, jobId);
    expect(await by(page).inputValue()).toBe('W. Saltglass');
    await page.reload({ waitUntil: 'networkidle' });
    expect(await by(page).inputValue()).toBe('W. Saltglass');
    expect(await page.getByLabel('How', { exact: true }).inputValue()).toBe('telephone');
    await press(page, 'Not now');
    await page.reload({ waitUntil: 'networkidle' });
    await page.getByRole('button', { name: /^Record an acceptance/ }).waitFor();

    // One that came to nothing is erased; the next is revision 2 all the same.
    await press(page, /^Withdraw/);
    await press(page, 'Record: withdrawn');
    await press(page, /^Erase it/);
    await page.getByText(/nobody can bring them back/).waitFor();
    await expectUsable(page, `a quotation about to be erased on a ${size}`);
    await press(page, 'Yes: erase it for good');
    await page.locator('quotation-card').getByText('Erased', { exact: true }).waitFor();
    await press(page, 'Issue revision 2');
    await press(page, 'Yes: issue revision 2');
    await page.locator('quotation-card').getByText('Issued, no answer yet').waitFor();
    await press(page, /^Record an acceptance/);
    await by(page).fill('W. Saltglass');
    await press(page, 'Record the acceptance');
    await page.locator('quotation-card').getByText('Accepted', { exact: true }).waitFor();

    // On site.
    const job: Job = await (await fetch(api(`/jobs/${jobId}`))).json();
    const changed = { ...job, terms: { ...job.terms, filling: 'bonding-and-finish' } };
    await put(`/jobs/${jobId}`, changed, await etagOf(`/jobs/${jobId}`));
    await page.reload({ waitUntil: 'networkidle' });
    await page
      .getByLabel('What was found and what is done about it, in words for the customer')
      .fill('The plaster is blown.');
    await awayAndBack(page, jobId);
    const found = page.getByLabel('What was found and what is done about it, in words for the customer');
    await expect.poll(() => found.inputValue()).toBe('The plaster is blown.');
    await press(page, 'Put it to the customer');
    await page.getByText('Waits for the customer’s answer: do not go on with it').waitFor();
    const href = await page.getByRole('link', { name: /^PDF for the customer/ }).getAttribute('href');
    const read = await readPdf(
      new Uint8Array(await (await fetch(`${stage.server.address}${href}`)).arrayBuffer()),
    );
    expect(read.pages.join(' ')).toContain('The plaster is blown.');
    await press(page, 'The customer refuses');
    await by(page).fill('The neighbour');
    await awayAndBack(page, jobId);
    expect(await by(page).inputValue()).toBe('The neighbour');
    await press(page, 'Record: refused');
    await page
      .locator('variation-card')
      .getByText(/^Refused/)
      .waitFor();

    // They ask that what names them goes.
    const [, accepted] = await listed(jobId);
    await press(page, 'Erase the customer’s data');
    await page.getByText('Erase the customer’s data?').waitFor();
    await expectUsable(page, `a customer about to be erased on a ${size}`);
    await press(page, 'Yes: erase it for good');
    await page
      .locator('quotation-card')
      .getByText(/\(erased\)/)
      .first()
      .waitFor();
    await allKept(page);
    const [, after] = await listed(jobId);
    expect(after.contractPence).toBe(accepted.contractPence);
    expect(JSON.stringify(after)).not.toMatch(/W\. Saltglass|neighbour|blown/);
    const kept = await (await fetch(api(`/jobs/${jobId}`))).json();
    expect(kept.site).toMatchObject({ customer: '(erased)', address: [] });
    expect(await page.getByRole('button', { name: /^Undo: / }).count()).toBe(0);
    expect(troubles).toEqual([]);
    await page.close();
  }, 240_000);
});
