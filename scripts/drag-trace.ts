import { parseArgs } from 'node:util';
import type { Browser, Locator, Page } from 'playwright-core';
import type { Job } from '#model/job.ts';
import { lastWanted, store, tenRooms, tenRoomsName } from './bench/drag-ground.ts';
import { medianOf, shareOf } from './bench/growth.ts';
import { type FrameWork, pointerWork, type TraceEvent } from './bench/trace-work.ts';
import { openBrowser, openWindow, type Size, sizes } from './product/browser.ts';
import { startServer } from './product/running-server.ts';

// Drags a point and a wall about in a house of ten rooms and eighty points, and prints what each movement takes of the page's main thread, from the
// pointer's event to the commit of what it changed, by the browser's own tracing. The limit is 12 ms for 95 of a hundred. With --json a line of JSON for each case.
const { values } = parseArgs({
  options: {
    drags: { type: 'string', default: '3' },
    moves: { type: 'string', default: '60' },
    json: { type: 'boolean', default: false },
  },
});
const LIMIT_MS = 12;
/** Movements come so far apart: about as a hand's do on a screen of 60 pictures a second when each is waited for, and so slow that
 * answers of the engine come between them. */
const PACE_MS = { quick: 17, slow: 150 } as const;
const STEP_PX = 2;
const categories = ['devtools.timeline', 'disabled-by-default-devtools.timeline'];

/** What is dragged: how each is made ready, and where it is on the plan. */
const things: Readonly<Record<string, (page: Page, job: Job) => Promise<Locator>>> = {
  'A wanted point': async (page, job) => {
    await page.goto(`/jobs/${job.id}/ways`, { waitUntil: 'networkidle' });
    return lastWanted(page, job);
  },
  'A wall between rooms': async (page, job) => {
    await page.goto(`/jobs/${job.id}/as-found`, { waitUntil: 'networkidle' });
    await page.locator('as-found-step summary').filter({ hasText: 'Rooms and walls' }).click();
    await page.getByRole('button', { name: 'Move walls, corners and fixtures on the plan' }).click();
    const [storey] = job.storeys;
    // One that two rooms share.
    const shared = storey?.walls.find(
      ({ id }) => storey.rooms.filter(({ walls }) => walls.some(({ wall }) => wall === id)).length > 1,
    );
    return page.locator(`plan-view svg.plan [data-wall="${shared?.id}"]`);
  },
};

/** Moves the pointer there and back, aslant, from the middle of a thing; gives what was traced meanwhile. */
async function traced(
  browser: Browser,
  page: Page,
  thing: Locator,
  paceMs: number,
): Promise<readonly TraceEvent[]> {
  const box = await thing.boundingBox();
  if (box === null) throw new Error('What is to be dragged is not on the plan.');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await browser.startTracing(page, { categories });
  const moves = Number(values.moves);
  for (let i = 1; i <= moves; i += 1) {
    const byPx = 8 + STEP_PX * (i <= moves / 2 ? i : moves - i);
    await page.mouse.move(x + byPx, y + byPx);
    await page.waitForTimeout(paceMs);
  }
  const trace = JSON.parse((await browser.stopTracing()).toString()) as {
    traceEvents: readonly TraceEvent[];
  };
  await page.mouse.up();
  await page.waitForTimeout(1500);
  return trace.traceEvents;
}

const shown = (works: readonly FrameWork[], pick: keyof FrameWork, share: number): string =>
  shareOf(
    works.map((work) => work[pick]),
    share,
  )
    .toFixed(1)
    .padStart(6);

function tell(name: string, works: readonly FrameWork[]): boolean {
  const wholes = works.map(({ wholeMs }) => wholeMs);
  const within = shareOf(wholes, 0.95) <= LIMIT_MS;
  if (values.json) {
    console.log(JSON.stringify({ name, movements: works.length, p95Ms: shareOf(wholes, 0.95) }));
    return within;
  }
  console.log(
    `${name}: ${works.length} movements, median ${medianOf(wholes).toFixed(1)} ms, p95 ${shareOf(wholes, 0.95).toFixed(1)} ms (limit ${LIMIT_MS}: ${within ? 'kept' : 'NOT KEPT'}), most ${Math.max(...wholes).toFixed(1)} ms`,
  );
  const parts = ['scriptMs', 'styleMs', 'layoutMs', 'paintMs', 'commitMs'] as const;
  for (const share of [0.5, 0.95])
    console.log(
      `  ${share * 100} % at most: ${parts.map((part) => `${part.replace('Ms', '')} ${shown(works, part, share)}`).join(', ')} ms`,
    );
  return within;
}

const [server, browser] = await Promise.all([startServer(), openBrowser()]);
let kept = true;
try {
  const job = tenRooms();
  await store(server.address, job);
  if (!values.json) console.log(`Dragging in ${tenRoomsName(job)}; time that the page's main thread worked.`);
  for (const size of Object.keys(sizes) as Size[])
    for (const [pace, paceMs] of Object.entries(PACE_MS))
      for (const [name, takeUp] of Object.entries(things)) {
        const { page, context } = await openWindow(browser, server.address, size);
        const thing = await takeUp(page, job);
        await thing.waitFor({ state: 'attached', timeout: 60_000 });
        const works: FrameWork[] = [];
        for (let i = 0; i < Number(values.drags); i += 1)
          works.push(...pointerWork(await traced(browser, page, thing, paceMs)));
        kept = tell(`${name}, ${size}, ${pace} hand`, works) && kept;
        await context.close();
      }
} finally {
  await browser.close();
  await server.close();
}
process.exitCode = kept ? 0 : 1;
