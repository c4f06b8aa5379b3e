import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { openBrowser, openWindow, type Size, sizes } from './product/browser.ts';
import { startServer } from './product/running-server.ts';

// Takes a picture of every step of every demo job, and of the other pages, at a desk's and a phone's width.
const { values } = parseArgs({
  options: { out: { type: 'string', default: 'out/screenshots' }, only: { type: 'string', default: '' } },
});
const steps = [
  'as-found',
  'wanted',
  'ways',
  'kit',
  'price',
  'papers',
  'ways/compare',
  'kit?view=circuit',
  'kit?view=drop',
  'kit?part=shopping',
  'kit?part=cuts',
  'papers?part=connections',
  'papers?part=tasks',
  'papers?part=tests',
];

await mkdir(values.out, { recursive: true });
const server = await startServer();
const browser = await openBrowser();
let faulty = 0;
try {
  const answer = await fetch(new URL('/api/jobs', server.address));
  const { jobs } = (await answer.json()) as { jobs: { id: string; reference: string }[] };
  const pages = [
    { name: 'jobs', path: '/' },
    { name: 'firm', path: '/firm' },
    { name: 'missing', path: '/no-such-page' },
    ...jobs.flatMap(({ id, reference }) =>
      steps.map((step) => ({
        name: `${reference || id}-${step}`.toLowerCase().replace(/[^a-z0-9]+/g, '-'),
        path: `/jobs/${id}/${step}`,
      })),
    ),
  ].filter(({ name }) => name.includes(values.only));
  for (const size of Object.keys(sizes) as Size[]) {
    const { page, troubles, context } = await openWindow(browser, server.address, size);
    for (const { name, path } of pages) {
      await page.goto(path, { waitUntil: 'networkidle' });
      await page.waitForTimeout(300);
      await page.screenshot({ path: join(values.out, `${name}-${size}.png`) });
      console.log(`${name}-${size}.png`);
    }
    for (const trouble of troubles) console.error(`${size}: ${trouble}`);
    faulty += troubles.length;
    await context.close();
  }
} finally {
  await browser.close();
  await server.close();
}
process.exitCode = faulty === 0 ? 0 : 1;
