import type { CDPSession, Locator, Page } from 'playwright-core';
import type { Job } from '#model/job.ts';
import { type DemoName, demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { withSixWanted } from '#tests/engine/schemes/search/six-wanted.ts';
import { openBrowser, openWindow } from '../product/browser.ts';
import { startServer } from '../product/running-server.ts';
import { lastWanted, store, tenRooms, tenRoomsName } from './drag-ground.ts';
import { medianOf, shareOf } from './growth.ts';

/** Main-thread work of single moves of a drag, from the pointer's event to the commit of all that it changes on screen, ms. */
export interface DragWork {
  readonly median: number;
  /** Of a hundred moves five take longer. */
  readonly p95: number;
}

/** What moving a wanted point takes in the browser, in a job in which nothing was searched for. */
export interface DragInBrowser {
  readonly name: string;
  readonly dragWorkMs: DragWork;
}

/** What moving one of six wanted points takes in the browser. */
export interface MovesInBrowser extends DragInBrowser {
  /** Main-thread work of one move before ways were asked for: the plan, and what is seen of the job worked out anew, ms. */
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

/** Drags of wanted points in the built screen. */
export interface BrowserDrags {
  /** Of demo jobs with six wanted points, in the order asked for. */
  readonly moves: readonly MovesInBrowser[];
  /** Of an invented house of ten rooms and eighty points. */
  readonly house: DragInBrowser;
}

/** Drags the last wanted point of each job with the mouse, as a person would, in the built screen. */
export async function dragsInBrowser(names: readonly DemoName[]): Promise<BrowserDrags> {
  const [server, browser] = await Promise.all([startServer(), openBrowser()]);
  const inJob = async <R>(job: Job, then: (page: Page, session: CDPSession) => Promise<R>): Promise<R> => {
    await store(server.address, job);
    const { page, context } = await openWindow(browser, server.address, 'desk');
    const session = await context.newCDPSession(page);
    await session.send('Performance.enable', { timeDomain: 'threadTicks' });
    await page.goto(`/jobs/${job.id}/ways`, { waitUntil: 'networkidle' });
    const result = await then(page, session);
    await context.close();
    return result;
  };
  try {
    const moves: MovesInBrowser[] = [];
    for (const name of names) {
      const job = sixWanted(name);
      moves.push(await inJob(job, (page, session) => timed(page, session, name, job)));
    }
    const job = tenRooms();
    const name = tenRoomsName(job);
    const drags = await inJob(job, (page, session) => workOfDrags(page, session, lastWanted(page, job)));
    return { moves, house: { name, dragWorkMs: dragWorkOf(drags) } };
  } finally {
    await browser.close();
    await server.close();
  }
}

/** The works of each of its moves, drag by drag. */
type Drags = readonly (readonly number[])[];

async function workOfDrags(page: Page, session: CDPSession, point: Locator): Promise<Drags> {
  await point.waitFor({ timeout: 60 * SECOND_MS });
  const all: number[][] = [];
  for (let i = 0; i < DRAGS; i += 1) all.push(await workOfDrag(page, session, point, i % 2 === 0 ? 1 : -1));
  return all;
}

const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);
const moveMsOf = (drags: Drags): number => medianOf(drags.map(sumOf)) / MOVES;
const dragWorkOf = (drags: Drags): DragWork => ({
  median: medianOf(drags.flat()),
  p95: shareOf(drags.flat(), 0.95),
});

async function timed(page: Page, session: CDPSession, name: DemoName, job: Job): Promise<MovesInBrowser> {
  const point = lastWanted(page, job);
  const before = await workOfDrags(page, session, point);
  await page.getByRole('button', { name: 'Find ways' }).click();
  const ways = page.locator('find-ways');
  await ways.locator('[aria-busy=false]').waitFor({ timeout: 60 * SECOND_MS });
  await ways.evaluate(countAnswers);
  const searching = await workOfDrags(page, session, point);
  const answers = (await page.evaluate('globalThis.answersSeen')) as number;
  return {
    name,
    dragWorkMs: dragWorkOf(before),
    moveMs: moveMsOf(before),
    moveAndSearchMs: moveMsOf(searching),
    answersPerMove: answers / (DRAGS * MOVES),
  };
}

/** Main-thread work of each move of one drag to the right and down, or back, ms; what follows once the hand rests is in none. */
async function workOfDrag(page: Page, session: CDPSession, point: Locator, sign: 1 | -1): Promise<number[]> {
  const box = await point.boundingBox();
  if (box === null) throw new Error('The point is not on the plan.');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + sign * 8, y + sign * 8);
  await page.waitForTimeout(PACE_MS);
  const works: number[] = [];
  let before = await workMs(session);
  for (let i = 1; i <= MOVES; i += 1) {
    // Aslant: along its wall whichever way that runs.
    const byPx = sign * (8 + i * STEP_PX);
    await page.mouse.move(x + byPx, y + byPx);
    await page.waitForTimeout(PACE_MS);
    const now = await workMs(session);
    works.push(now - before);
    before = now;
  }
  await page.mouse.up();
  await page.waitForTimeout(2 * SECOND_MS);
  const after = await point.boundingBox();
  if (after === null || Math.hypot(after.x - box.x, after.y - box.y) < STEP_PX)
    throw new Error('The point did not follow the hand, so nothing was timed.');
  return works;
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
