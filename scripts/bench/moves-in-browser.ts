import type { CDPSession, Locator, Page } from 'playwright-core';
import type { Job } from '#model/job.ts';
import { type DemoName, demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { withSixWanted } from '#tests/engine/schemes/search/six-wanted.ts';
import { openBrowser, openWindow } from '../product/browser.ts';
import { startServer } from '../product/running-server.ts';
import { medianOf } from './growth.ts';

/** What moving one of six wanted points takes in the browser. */
export interface MovesInBrowser {
  readonly name: DemoName;
  /** Main-thread work of one move before ways were asked for: the plan, and the shown scheme worked out anew, ms. */
  readonly moveMs: number;
  /** The same while ways are searched again at each move, their answers drawn, ms. */
  readonly moveAndSearchMs: number;
  /** First answers that came to be seen, by move. */
  readonly answersPerMove: number;
}

/** Moves of one drag, so far apart in time and on screen. */
const MOVES = 40;
const PACE_MS = 150;
const STEP_PX = 2;
/** Drags each way, of which the middle counts. */
const DRAGS = 3;
const SECOND_MS = 1000;

/** The demo with three more wanted points or as many as make six, its schemes kept: what stands on the plan is worked out too. */
function sixWanted(name: DemoName): Job {
  const job = demoJob(name);
  return { ...withSixWanted(job), id: `bench-${name}`, schemes: job.schemes };
}

/** Moves the last wanted point of each job by the keyboard, as a person would, in the built screen. */
export async function movesInBrowser(names: readonly DemoName[]): Promise<readonly MovesInBrowser[]> {
  const [server, browser] = await Promise.all([startServer(), openBrowser()]);
  try {
    const results: MovesInBrowser[] = [];
    for (const name of names) {
      const job = sixWanted(name);
      const stored = await fetch(new URL('/api/jobs', server.address), {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(job),
      });
      if (!stored.ok) throw new Error(`${name} was not stored: ${await stored.text()}`);
      const { page, context } = await openWindow(browser, server.address, 'desk');
      results.push(await timed(page, await context.newCDPSession(page), name, job));
      await context.close();
    }
    return results;
  } finally {
    await browser.close();
    await server.close();
  }
}

async function timed(page: Page, session: CDPSession, name: DemoName, job: Job): Promise<MovesInBrowser> {
  await session.send('Performance.enable', { timeDomain: 'threadTicks' });
  await page.goto(`/jobs/${job.id}/ways`, { waitUntil: 'networkidle' });
  const own = new Set(demoJob(name).points.map(({ id }) => id));
  const last = job.points.findLast(
    ({ id, status, place }) => own.has(id) && status === 'wanted' && place && 'wall' in place,
  );
  const point = page.locator(`plan-view g[role=button][data-subject="${last?.id}"]`);
  const drags = async () => {
    const all: number[] = [];
    for (let i = 0; i < DRAGS; i += 1) all.push(await workOfDrag(page, session, point, i % 2 === 0 ? 1 : -1));
    return medianOf(all) / MOVES;
  };
  const moveMs = await drags();
  await page.getByRole('button', { name: 'Find ways' }).click();
  const ways = page.locator('find-ways');
  await ways.locator('[aria-busy=false]').waitFor({ timeout: 60 * SECOND_MS });
  await ways.evaluate(countAnswers);
  const moveAndSearchMs = await drags();
  const answers = (await page.evaluate('globalThis.answersSeen')) as number;
  return { name, moveMs, moveAndSearchMs, answersPerMove: answers / (DRAGS * MOVES) };
}

/** Main-thread work of one drag to the right and down, or back, ms; what follows once the hand rests is not in it. */
async function workOfDrag(page: Page, session: CDPSession, point: Locator, sign: 1 | -1): Promise<number> {
  const box = await point.boundingBox();
  if (box === null) throw new Error('The point is not on the plan.');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + sign * 8, y + sign * 8);
  await page.waitForTimeout(PACE_MS);
  const before = await workMs(session);
  for (let i = 1; i <= MOVES; i += 1) {
    // Aslant: along its wall whichever way that runs.
    const byPx = sign * (8 + i * STEP_PX);
    await page.mouse.move(x + byPx, y + byPx);
    await page.waitForTimeout(PACE_MS);
  }
  const worked = (await workMs(session)) - before;
  await page.mouse.up();
  await page.waitForTimeout(2 * SECOND_MS);
  const after = await point.boundingBox();
  if (after === null || Math.hypot(after.x - box.x, after.y - box.y) < STEP_PX)
    throw new Error('The point did not follow the hand, so nothing was timed.');
  return worked;
}

/** Counts each time that another first answer is written, in the page. */
function countAnswers(ways: unknown): void {
  const { renderRoot } = ways as { readonly renderRoot: Node };
  const page = globalThis as unknown as { answersSeen: number };
  page.answersSeen = 0;
  let before = '';
  new MutationObserver(() => {
    const now = (renderRoot as unknown as ParentNode).querySelector('.hint')?.textContent ?? '';
    if (now.includes('£') && now !== before) page.answersSeen += 1;
    before = now;
  }).observe(renderRoot, { subtree: true, childList: true, characterData: true });
}

/** What the page's main thread has worked so far, ms. */
async function workMs(session: CDPSession): Promise<number> {
  const { metrics } = await session.send('Performance.getMetrics');
  return (metrics.find(({ name }) => name === 'TaskDuration')?.value ?? Number.NaN) * SECOND_MS;
}
