import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { onPlan, priceOn, type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

/** Counts in the page, from now on, how often an element is drawn anew; of several of a kind the most. */
function countDrawings(): void {
  type Drawn = { readonly localName: string; readonly isUpdatePending: boolean; performUpdate(): void };
  const page = globalThis as unknown as { drawings: Record<string, number> };
  page.drawings = {};
  const counts = new WeakMap<Drawn, number>();
  const plan = customElements.get('plan-view') as unknown as { readonly prototype: object };
  // What all elements are made from; what it does is left to itself.
  const base = Object.getPrototypeOf(Object.getPrototypeOf(plan.prototype)) as Drawn;
  const own = base.performUpdate;
  base.performUpdate = function (this: Drawn): void {
    const count = (counts.get(this) ?? 0) + (this.isUpdatePending ? 1 : 0);
    counts.set(this, count);
    page.drawings[this.localName] = Math.max(page.drawings[this.localName] ?? 0, count);
    own.call(this);
  };
}

const drawings = (page: Page): Promise<Readonly<Record<string, number>>> =>
  page.evaluate('globalThis.drawings') as Promise<Readonly<Record<string, number>>>;

/** The price once it has not changed for a while: what was moved last has then been worked out. */
async function restedPrice(page: Page): Promise<number> {
  for (let before = Number.NaN; ; ) {
    const now = await priceOn(page);
    if (now === before) return now;
    before = now;
    await page.waitForTimeout(3000);
  }
}

/** What may be drawn anew at every move of a hand: the plan, the price, the checks and the marks in both. */
const follows = ['plan-view', 'price-block', 'finding-list', 'finding-card', 'outcome-mark'];

/** Moves of the hand, and how often what does not follow it may be drawn anew meanwhile. */
const MOVES = 12;
const MOST_OTHERS = 5;

describe('a wanted point that is dragged', () => {
  it('has its plan and its price drawn anew at each move, and the rest of the page is left as it is', async () => {
    const { page, troubles, context } = await stage.open('desk', '/jobs/saltglass3/ways');
    const box = await onPlan(page, 'w1-living1').boundingBox();
    if (box === null) throw new Error('The point is not on the plan.');
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    const before = await priceOn(page);
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.evaluate(countDrawings);
    for (let step = 1; step <= MOVES; step += 1) {
      await page.mouse.move(x, y - 6 * step);
      await page.evaluate('new Promise((then) => requestAnimationFrame(() => requestAnimationFrame(then)))');
    }
    await expect.poll(() => priceOn(page), { timeout: 20_000 }).not.toBe(before);
    const drawn = await drawings(page);
    expect(drawn['plan-view']).toBeGreaterThanOrEqual(MOVES);
    expect(drawn['price-block']).toBeGreaterThanOrEqual(2);
    const others = Object.entries(drawn).filter(([name]) => !follows.includes(name));
    expect(others.map(([name]) => name)).toContain('job-page');
    // Once as the hand takes the point; again where a slow machine has it saved on the way.
    expect(others.filter(([, times]) => times > MOST_OTHERS)).toEqual([]);
    const moving = await restedPrice(page);
    await page.mouse.up();
    // To the penny what it was under the hand.
    await page.locator('scheme-strip ul[aria-busy=false]').waitFor();
    expect(await priceOn(page)).toBe(moving);
    expect(troubles).toEqual([]);
    await context.close();
  });
});
