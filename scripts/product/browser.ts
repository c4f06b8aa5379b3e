import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { browser as browserProgram, findProgram } from './find-program.ts';

/** The widths that every page is made for: a desk and a phone. */
export const sizes = {
  desk: { width: 1440, height: 900 },
  phone: { width: 390, height: 844 },
} as const;
export type Size = keyof typeof sizes;

/** Starts the browser; its own sandbox cannot be had as root, where only our own pages are opened. */
export async function openBrowser(): Promise<Browser> {
  const executablePath = findProgram(browserProgram);
  if (executablePath === null) throw new Error('Chromium is missing: npm run -s pretest says how to get it.');
  const asRoot = process.getuid?.() === 0;
  return chromium.launch({
    executablePath,
    args: [
      '--disable-gpu',
      '--disable-dev-shm-usage',
      '--force-color-profile=srgb',
      ...(asRoot ? ['--no-sandbox'] : []),
    ],
  });
}

/** A window of the product, with everything that went wrong in it. */
export interface Window {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Errors of scripts and of the content policy since it was opened. */
  readonly troubles: readonly string[];
}

/**
 * Opens a window on the product; a phone has touch.
 *
 * @param keepsFiles true: the browser keeps the product's files, so that it opens without a connection. Without, every page
 *   comes from the server, as a test that stands between the two wants it.
 */
export async function openWindow(
  browser: Browser,
  address: string,
  size: Size,
  keepsFiles = false,
): Promise<Window> {
  const context = await browser.newContext({
    baseURL: address,
    viewport: sizes[size],
    hasTouch: size === 'phone',
    isMobile: size === 'phone',
    acceptDownloads: true,
    locale: 'en-GB',
    serviceWorkers: keepsFiles ? 'allow' : 'block',
  });
  const page = await context.newPage();
  // On a busy machine half a second may take ten; what is not there after thirty is not coming, and a test says what it waited for.
  page.setDefaultTimeout(30_000);
  const troubles: string[] = [];
  page.on('pageerror', (error) => troubles.push(String(error)));
  page.on('console', (message) => {
    if (message.type() === 'error') troubles.push(message.text());
  });
  return { page, context, troubles };
}
