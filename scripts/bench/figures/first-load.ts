import { gzipSync } from 'node:zlib';
import type { Response } from 'playwright-core';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { openBrowser, openWindow } from '../../product/browser.ts';
import { startServer } from '../../product/running-server.ts';
import type { FigureGroup } from '../measuring.ts';

const KB = 1000;
const isCode = (response: Response): boolean =>
  ['script', 'stylesheet'].includes(response.request().resourceType());

/** Script and style that a browser which has nothing yet fetches until the list of jobs is there, as they go compressed. */
export const loadFigures: FigureGroup = {
  name: 'load',
  measure: async () => {
    const [server, browser] = await Promise.all([startServer(), openBrowser()]);
    try {
      const { page } = await openWindow(browser, server.address, 'desk');
      const asked: Response[] = [];
      page.on('response', (response) => {
        if (isCode(response)) asked.push(response);
      });
      await page.goto('/', { waitUntil: 'commit' });
      await page.getByText(demoJob('saltglass-row').reference).first().waitFor();
      const needed = [...asked];
      const bytes = await Promise.all(
        needed.map(async (response) => gzipSync(await response.body(), { level: 9 }).byteLength),
      );
      if (bytes.length === 0) throw new Error('The first page loaded no script.');
      return { firstLoadKBGzip: bytes.reduce((sum, each) => sum + each, 0) / KB };
    } finally {
      await browser.close();
      await server.close();
    }
  },
};
