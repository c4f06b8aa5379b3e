import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

const steps = ['as-found', 'wanted', 'ways', 'kit', 'price', 'papers'] as const;

/**
 * Windows in which a job is worked on. A desk's window of 1440 × 900 that is looked at twice as large has 720 × 450
 * CSS pixels, at four times 360 × 225: WCAG 2.2, success criteria 1.4.4 (Resize Text) and 1.4.10 (Reflow).
 */
const windows = [
  { name: 'a desk', size: 'desk', width: 1440, height: 900 },
  { name: 'a phone', size: 'phone', width: 390, height: 844 },
  { name: 'a phone on its side', size: 'phone', width: 844, height: 390 },
  { name: 'a desk at twice the size', size: 'desk', width: 720, height: 450 },
  { name: 'a desk at four times the size', size: 'desk', width: 360, height: 225 },
] as const;

const mainParts = (page: Page, step: string): readonly Locator[] => [
  page.getByRole('heading', { level: 1 }),
  page.getByRole('navigation', { name: 'Steps of the job' }).getByRole('link', { name: /^Papers/ }),
  page.locator('plan-view').getByRole('button', { name: 'The whole plan' }),
  page.locator(`${step}-step`).getByRole('heading', { level: 2 }).first(),
  page.locator('price-block .total, price-bar b').first(),
  page.locator(`${step}-step :is(button, a, summary, input, select, h3)`).last(),
];

/** Whether the middle of a part is to be seen and pressed: in the window, and nothing over it. */
const isInTheOpen = (part: Locator): Promise<boolean> =>
  part.evaluate((element) => {
    const { left, right, top, bottom } = element.getBoundingClientRect();
    const [x, y] = [(left + right) / 2, (top + bottom) / 2];
    let there = document.elementFromPoint(x, y);
    while (there?.shadowRoot?.elementFromPoint(x, y)) {
      const inner = there.shadowRoot.elementFromPoint(x, y);
      if (inner === there) break;
      there = inner;
    }
    for (let one: Node | null | undefined = there; one; one = one.parentNode ?? (one as ShadowRoot).host)
      if (one === element) return true;
    return false;
  });

/** How much further than its box what is in the element goes, px: to the side, and down. */
const overflowOf = (element: Locator): Promise<readonly [number, number]> =>
  element.evaluate((box) => [box.scrollWidth - box.clientWidth, box.scrollHeight - box.clientHeight]);

describe.each(windows)('a job on $name, $width × $height', ({ size, width, height }) => {
  // At every size the page itself stays: its sheet scrolls, or, where the window is narrow and low, the job as a whole.
  it('never makes the page longer or wider than the window, and every part of every step can be come to', async () => {
    const { page, context } = await stage.open(size);
    await page.setViewportSize({ width, height });
    for (const step of steps) {
      await page.goto(`/jobs/saltglass3/${step}`, { waitUntil: 'networkidle' });
      await page.locator(`${step}-step h2`).first().waitFor();
      expect(await overflowOf(page.locator('html')), `the page at ${step}`).toEqual([0, 0]);
      const [aside] = await overflowOf(page.locator('main'));
      // Tables of figures keep their columns at four times the size: 1.4.10 leaves out what needs two dimensions.
      if (width !== 360 || step !== 'price')
        expect(aside, `the sheet of ${step} to the side`).toBeLessThanOrEqual(0);
      for (const part of mainParts(page, step)) {
        await part.evaluate((element) => element.scrollIntoView({ block: 'center', behavior: 'instant' }));
        expect(await isInTheOpen(part), `${step}: ${part}`).toBe(true);
      }
    }
    await context.close();
  }, 60_000);
});

describe('text at a larger size of the browser’s own', () => {
  it('grows with it, and still nothing goes beyond the window', async () => {
    const { page, context } = await stage.open('desk', '/jobs/saltglass3/kit');
    const line = page.locator('kit-step button.line').first();
    const sizeOf = (): Promise<number> =>
      line.evaluate((element) => Number.parseFloat(getComputedStyle(element).fontSize));
    const before = await sizeOf();
    // What a person sets in the browser is the size that the root has.
    await page.evaluate("document.documentElement.style.setProperty('font-size', '20px')");
    // 20 px against the usual 16.
    expect(await sizeOf()).toBeCloseTo(before * 1.25, 3);
    expect(await overflowOf(page.locator('html'))).toEqual([0, 0]);
    expect((await overflowOf(page.locator('main')))[0]).toBeLessThanOrEqual(0);
    await context.close();
  });
});
