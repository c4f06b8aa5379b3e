import { readFile, writeFile } from 'node:fs/promises';
import { openBrowser } from './product/browser.ts';

/** The icons of a home screen, drawn from the mark: how large each is, and what part of its width the mark takes. */
const icons = [
  { name: 'icon-192', sizePx: 192, markRatio: 0.86 },
  { name: 'icon-512', sizePx: 512, markRatio: 0.86 },
  // A device may cut it to any shape that holds a circle of four fifths. Source: W3C, Web Application Manifest, icon masks.
  { name: 'icon-maskable-512', sizePx: 512, markRatio: 0.64 },
] as const;

const SHEET = '#fcfaf5';

const mark = await readFile(new URL('../ui/mark.svg', import.meta.url), 'base64');
const browser = await openBrowser();
for (const { name, sizePx, markRatio } of icons) {
  const page = await browser.newPage({ viewport: { width: sizePx, height: sizePx } });
  const markPx = Math.round(sizePx * markRatio);
  await page.setContent(
    `<body style="margin:0;display:grid;place-items:center;height:100vh;background:${SHEET}">
      <img width="${markPx}" height="${markPx}" src="data:image/svg+xml;base64,${mark}"></body>`,
    { waitUntil: 'load' },
  );
  const png = await page.screenshot();
  await writeFile(new URL(`../ui/fixed/${name}.png`, import.meta.url), png);
  await page.close();
}
await browser.close();
