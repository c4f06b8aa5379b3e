import { openBrowser, openWindow } from '../../product/browser.ts';
import { codeFetchedKB } from '../../product/code-fetched.ts';
import { startServer } from '../../product/running-server.ts';
import type { FigureGroup } from '../measuring.ts';

/** Script and style that a browser which has nothing yet fetches until the list of jobs is there, as they go compressed. */
export const loadFigures: FigureGroup = {
  name: 'load',
  measure: async () => {
    const [server, browser] = await Promise.all([startServer(), openBrowser()]);
    try {
      const { page } = await openWindow(browser, server.address, 'desk');
      return { firstLoadKBGzip: await codeFetchedKB(page, '/', 'job-row') };
    } finally {
      await browser.close();
      await server.close();
    }
  },
};
