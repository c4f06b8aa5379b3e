import { readFileSync } from 'node:fs';
import type { Browser, Locator, Page } from 'playwright-core';
import { expect } from 'vitest';
import { openBrowser, openWindow, type Size, type Window } from '../../scripts/product/browser.ts';
import { type RunningServer, startServer } from '../../scripts/product/running-server.ts';

/** A server on its first start and a browser, for one file of journeys. */
export interface Stage {
  readonly server: RunningServer;
  readonly open: (size: Size, path?: string) => Promise<Window>;
  readonly close: () => Promise<void>;
}

export async function setStage(): Promise<Stage> {
  const [server, browser]: [RunningServer, Browser] = await Promise.all([startServer(), openBrowser()]);
  return {
    server,
    open: async (size, path = '/') => {
      const window = await openWindow(browser, server.address, size);
      await window.page.goto(path, { waitUntil: 'networkidle' });
      if (path !== 'about:blank') await allOfTheScreen(window);
      keepBeforeClosing(window);
      return window;
    },
    close: async () => {
      await browser.close();
      await server.close();
    },
  };
}

/** Waits until all parts of the screen have come: what is still on its way when a test takes the connection away is told as a trouble. */
async function allOfTheScreen({ page }: Window): Promise<void> {
  await page.locator('app-shell[whole]').waitFor({ state: 'attached' });
}

/** Closing a window waits for what is on its way to the server, so that the next test finds the job as this one left it. */
function keepBeforeClosing({ context }: Window): void {
  const close = context.close.bind(context);
  context.close = async (options) => {
    for (const page of context.pages()) {
      await page.locator('keeping-line[keeping=keeping]').first().waitFor({ state: 'detached' });
    }
    await close(options);
  };
}

/** The price in sight, in pence. */
export async function priceOn(page: Page): Promise<number> {
  const text = await page.locator('price-block .total').innerText();
  const [, pounds = '0', pence = '0'] = /£([\d,]+)\.(\d\d)/.exec(text) ?? [];
  return Number(pounds.replaceAll(',', '')) * 100 + Number(pence);
}

/** A thing of the plan, by the id of what it shows. */
export const onPlan = (page: Page, subject: string): Locator =>
  page.locator(`plan-view g[role=button][data-subject="${subject}"]`);

/** Waits until everything is kept by the server. */
export async function allKept(page: Page): Promise<void> {
  await page.locator('keeping-line[keeping=kept]').waitFor();
}

const axeSource = readFileSync('node_modules/axe-core/axe.min.js', 'utf8');

interface AxeViolation {
  readonly id: string;
  readonly impact: string;
  readonly nodes: readonly { readonly target: unknown; readonly failureSummary: string }[];
}

/** Expects that axe finds nothing on the page that a keyboard or a screen reader could not use. */
export async function expectUsable(page: Page, name: string): Promise<void> {
  // As a script of the test's own: the page's content policy would let no such tag in, and rightly.
  await page.evaluate(axeSource);
  const violations = (await page.evaluate(
    'axe.run(document, { resultTypes: ["violations"] }).then((result) => result.violations)',
  )) as readonly AxeViolation[];
  const told = violations.map(({ id, impact, nodes }) => ({
    id,
    impact,
    nodes: nodes
      .slice(0, 4)
      .map(({ target, failureSummary }) => `${JSON.stringify(target)} ${failureSummary}`),
  }));
  expect(told, name).toEqual([]);
}

/** Starts adding up how much the page's parts jump about; what it comes to is read by `shiftOf`. */
export async function watchShift(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const shift = { sum: 0 };
    Object.assign(globalThis, { shift });
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries() as (PerformanceEntry & {
        value: number;
        hadRecentInput: boolean;
      })[])
        if (!entry.hadRecentInput) shift.sum += entry.value;
    }).observe({ type: 'layout-shift', buffered: true });
  });
}

/** Cumulative layout shift so far, as browsers reckon it: moves after an input of the person do not count. */
export const shiftOf = async (page: Page): Promise<number> =>
  (await page.evaluate('globalThis.shift.sum')) as number;
