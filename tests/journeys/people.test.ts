import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ownLibrary } from '#tests/engine/own-library.ts';
import { openBrowser, openWindow, type Size, type Window } from '../../scripts/product/browser.ts';
import { type RunningServer, startForOthers } from '../../scripts/product/running-server.ts';
import { saltglass, variantOf } from '../http/test-app.ts';
import { allKept, expectUsable } from './stage.ts';

const owner = { name: 'Olive Owner', email: 'olive@firm.example', password: 'copper and oak boards' };
const JOB = 'shared-job';

let server: RunningServer;
let browser: Browser;
beforeAll(async () => {
  [server, browser] = await Promise.all([startForOthers(owner), openBrowser()]);
});
// A password is slow to look into by design; on a busy machine half a second may take twenty.
const LONG_MS = 300_000;
afterAll(async () => {
  await browser.close();
  await server.close();
});

/** A device that nobody used before. */
async function device(size: Size, path = '/'): Promise<Window> {
  const window = await openWindow(browser, server.address, size);
  window.page.setDefaultTimeout(90_000);
  await window.page.goto(path, { waitUntil: 'networkidle' });
  return window;
}

async function signIn(page: Page, { email, password } = owner): Promise<void> {
  await page.getByLabel('E-mail address').fill(email);
  await page.getByLabel('Password').fill(password);
  await page.getByRole('button', { name: 'Sign in', exact: true }).click();
}

/** A device on which the owner is signed in. */
async function owners(size: Size, path = '/'): Promise<Window> {
  const window = await device(size, path);
  await signIn(window.page);
  await window.page.locator('app-shell').waitFor();
  return window;
}

/** Has a link made on the people's page, and gives it. */
async function linkFor(page: Page, name: string, role: string): Promise<string> {
  await page.getByLabel('Whom').fill(name);
  await page.getByLabel(/^What they may/).selectOption(role);
  await page.getByRole('button', { name: 'Make a link to pass on' }).click();
  return page.locator('link-once code').innerText();
}

/** A job with an issued quotation, kept through the interface as the owner who is signed in there. */
async function issue({ request }: Page): Promise<void> {
  const send = async (method: 'post' | 'put', path: string, data: unknown, base?: string) => {
    const answer = await request[method](path, {
      data: JSON.stringify(data),
      headers: { 'content-type': 'application/json', ...(base === undefined ? {} : { 'if-match': base }) },
    });
    expect([path, answer.ok()]).toEqual([path, true]);
    return answer.headers().etag ?? '';
  };
  const prices = (await request.get('/api/library')).headers().etag ?? '';
  const library = await send('put', '/api/library', ownLibrary(), prices);
  const job = JSON.parse(variantOf(saltglass, { id: JOB, quoting: { schemes: ['spurs-rcbo'] } }));
  const etag = await send('post', '/api/jobs', job);
  const date = new Date().toISOString().slice(0, 10);
  await send('post', `/api/jobs/${JOB}/quotations`, { id: 'q1', date, library }, etag);
}

describe('a server that others reach', { timeout: LONG_MS }, () => {
  it('shows nothing before somebody signs in, says when that fails, and goes where they wanted to', async () => {
    const { page, context, troubles } = await device('phone', '/firm');
    await page.getByRole('heading', { name: 'Sign in to Ringwright' }).waitFor();
    expect(await page.locator('app-shell').count()).toBe(0);
    await expectUsable(page, 'sign-in');
    await signIn(page, { ...owner, password: 'not the one' });
    await page.getByRole('alert').filter({ hasText: 'do not go together' }).waitFor();
    await signIn(page);
    await page.locator('firm-page h1').waitFor();
    await page.locator('account-line').getByText('Olive Owner').waitFor();
    expect(troubles.filter((words) => !words.includes('401'))).toEqual([]);
    await context.close();
  });

  it('lets in whom an owner invites, who reads and is offered no change', async () => {
    const { page, context } = await owners('desk', '/people');
    const link = await linkFor(page, 'Ada Apprentice', 'read-only');
    await expectUsable(page, 'people');
    await page.getByRole('button', { name: 'Withdraw the link for Ada Apprentice' }).waitFor();

    const theirs = await device('phone', link);
    await theirs.page.getByLabel('Your e-mail address').fill('ada@firm.example');
    await theirs.page.getByLabel('Password, 12').fill('a ladder and a torch');
    await theirs.page.getByLabel('The same again').fill('a ladder and a torch');
    await expectUsable(theirs.page, 'invitation');
    await theirs.page.getByRole('button', { name: 'Set the password' }).click();
    await theirs.page.getByRole('heading', { name: 'Jobs' }).waitFor();
    await theirs.page.locator('account-line').getByText('You read here, and change nothing').waitFor();
    await theirs.page.locator('job-row').first().waitFor();
    expect(await theirs.page.getByRole('button', { name: /New job|Copy|Delete/ }).count()).toBe(0);
    await theirs.page.goto('/jobs/saltglass3/price', { waitUntil: 'networkidle' });
    expect(await theirs.page.getByRole('textbox', { name: 'Travel, there and back' }).isDisabled()).toBe(
      true,
    );
    const refused = await theirs.page.request.delete('/api/jobs/saltglass3', {
      headers: { 'if-match': '"1-x"' },
    });
    expect(refused.status()).toBe(403);

    // Used once: the same link is no way in for anybody else.
    const late = await device('phone', link);
    await late.page.getByRole('alert').filter({ hasText: 'Ask whoever sent it' }).waitFor();
    await page.reload({ waitUntil: 'networkidle' });
    await page.getByText('ada@firm.example').waitFor();
    await page.getByRole('button', { name: 'Close the account of Ada Apprentice' }).click();
    await page.getByRole('button', { name: 'Yes: close it' }).click();
    await page.getByRole('heading', { name: 'Closed' }).waitFor();
    await theirs.page.reload({ waitUntil: 'networkidle' });
    await theirs.page.getByText('You are signed out.').waitFor();
    for (const one of [late.context, theirs.context, context]) await one.close();
  });

  it('loses nothing when a session ends in the middle of work, and sends it once they sign in again', async () => {
    const { page, context } = await owners('phone', '/jobs/saltglass3/price');
    const travel = page.getByRole('textbox', { name: 'Travel, there and back' });
    await allKept(page);
    await context.clearCookies();
    await travel.fill('93');
    await travel.press('Enter');
    await page.getByText('You are signed out.').waitFor();
    await expectUsable(page, 'signed out in the middle');
    await page.getByRole('button', { name: 'Later' }).click();
    await page.locator('keeping-line[here]').getByText('On this device').waitFor();
    await page.reload({ waitUntil: 'networkidle' });
    expect(await travel.inputValue()).toBe('93');
    await signIn(page);
    await allKept(page);
    await page.getByText('You are signed out.').waitFor({ state: 'detached' });
    const kept = await (await page.request.get('/api/jobs/saltglass3')).json();
    expect(kept.terms.travelMin).toBe(93);
    await context.close();
  });

  it('has a customer read one quotation by a link, and nothing else, until it is withdrawn', async () => {
    const { page, context } = await owners('desk');
    await issue(page);
    await page.goto(`/jobs/${JOB}/papers`, { waitUntil: 'networkidle' });
    await page.getByRole('button', { name: 'Link for the customer' }).click();
    const link = await page.locator('customer-link link-once code').innerText();
    expect(link).toMatch(/\/q#[\w-]{43}$/);

    const theirs = await device('phone', link);
    await theirs.page.getByText('What you asked for').waitFor();
    await expectUsable(theirs.page, 'shared quotation');
    expect(theirs.troubles).toEqual([]);
    expect(await theirs.context.cookies()).toEqual([]);
    expect(await theirs.page.locator('a[href^="/"]').count()).toBe(0);
    expect((await theirs.page.request.get(`/api/jobs/${JOB}`)).status()).toBe(401);
    const [download] = await Promise.all([
      theirs.page.waitForEvent('download'),
      theirs.page.getByRole('button', { name: 'Save as PDF' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('quotation.pdf');

    await page.getByRole('button', { name: 'Withdraw the link' }).click();
    await page.getByRole('button', { name: 'Withdraw the link' }).waitFor({ state: 'detached' });
    await theirs.page.reload({ waitUntil: 'networkidle' });
    await theirs.page.getByRole('heading', { name: 'This link shows nothing' }).waitFor();
    for (const one of [theirs.context, context]) await one.close();
  });

  it('has what a device kept removed with signing out, and shows it to nobody before they sign in', async () => {
    const { page, context } = await owners('phone', '/account');
    await expectUsable(page, 'account');
    await page.getByText('Everything is sent.').waitFor();
    await page.getByRole('button', { name: 'Sign out' }).click();
    await page.getByRole('heading', { name: 'Sign in to Ringwright' }).waitFor();
    await page.route('**/api/**', (route) => route.abort());
    await page.goto('/', { waitUntil: 'networkidle' });
    await page.getByRole('heading', { name: 'Sign in to Ringwright' }).waitFor();
    await context.close();
  });
});
