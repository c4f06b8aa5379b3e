import { gzipSync } from 'node:zlib';
import type { Page, Response } from 'playwright-core';

const KB = 1000;
const isCode = (response: Response): boolean =>
  ['script', 'stylesheet'].includes(response.request().resourceType());

/**
 * How large script and style are that a browser which has nothing yet fetches until something of a page is seen, kB (1000 bytes) as they go
 * compressed (gzip, level 9). The page never finds time for what comes by itself meanwhile: what is counted is what it needs.
 *
 * @throws where it fetched none, or what is waited for does not come.
 */
export async function codeFetchedKB(page: Page, path: string, seen: string): Promise<number> {
  await page.addInitScript('requestIdleCallback = () => 0');
  const asked: Response[] = [];
  const hear = (response: Response): void => {
    if (isCode(response)) asked.push(response);
  };
  page.on('response', hear);
  await page.goto(path, { waitUntil: 'commit' });
  await page.locator(seen).first().waitFor();
  page.off('response', hear);
  if (asked.length === 0) throw new Error(`The page at ${path} loaded no script.`);
  const sizes = await Promise.all(
    asked.map(async (response) => gzipSync(await response.body(), { level: 9 }).byteLength),
  );
  return sizes.reduce((sum, bytes) => sum + bytes, 0) / KB;
}
