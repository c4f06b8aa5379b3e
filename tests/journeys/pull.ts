import type { Page } from 'playwright-core';
import type { Hand } from './hand.ts';

/** A place of the window, or a way in it, px. */
export type Px = readonly [number, number];

/** Presses a place, pulls it, and lets it go: with a mouse, or with a finger that holds it first. What is to be looked at while it is held is `before`. */
export async function pull(
  page: Page,
  size: 'phone' | 'desk',
  [[x, y], [dx, dy]]: readonly [from: Px, by: Px],
  before: () => Promise<void> = async () => {},
): Promise<void> {
  const steps = [1, 2, 3, 4, 5].map((step) => [x + (dx * step) / 5, y + (dy * step) / 5] as const);
  if (size === 'desk') {
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (const [toX, toY] of steps) await page.mouse.move(toX, toY);
    await before();
    await page.mouse.up();
    return;
  }
  const touch = await page.context().newCDPSession(page);
  const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', at: readonly Px[]) =>
    touch.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: at.map(([pointX, pointY]) => ({ x: pointX, y: pointY })),
    });
  await send('touchStart', [[x, y]]);
  await page.waitForTimeout(600);
  for (const at of steps) await send('touchMove', [at]);
  await before();
  await send('touchEnd', []);
}

/** Opens the rooms and has their walls, corners and fixtures moved on the plan. */
export async function takeUpReshaping(page: Page, hand: Hand): Promise<void> {
  await hand.press(page.locator('as-found-step summary').filter({ hasText: 'Rooms and walls' }));
  await hand.press(page.getByRole('button', { name: 'Move walls, corners and fixtures on the plan' }));
  await page.locator('plan-view svg.hand circle.handle').first().waitFor();
}

/** Where places of the house are on the plan, px of the window: read off two handles of corners whose places are known. */
export async function placeOnScreen(page: Page, corners: readonly Px[]): Promise<(at: Px) => Px> {
  const handles = page.locator('plan-view svg.hand circle.handle');
  const boxes = await handles.evaluateAll((all) =>
    all.map((one) => {
      const { x, y, width, height } = one.getBoundingClientRect();
      return [x + width / 2, y + height / 2];
    }),
  );
  // Handles are drawn in the order of the corners; the two that are furthest apart across the plan give the scale.
  const known = corners.flatMap((at, i): { readonly at: Px; readonly px: Px }[] => {
    const px = boxes[i];
    return px === undefined ? [] : [{ at, px: [px[0] ?? 0, px[1] ?? 0] }];
  });
  const byX = known.toSorted((a, b) => a.at[0] - b.at[0]);
  const [first, last] = [byX[0], byX.at(-1)];
  if (first === undefined || last === undefined) throw new Error('No corners on the plan.');
  const pxPerMm = (last.px[0] - first.px[0]) / (last.at[0] - first.at[0]);
  return ([x, y]) => [first.px[0] + (x - first.at[0]) * pxPerMm, first.px[1] - (y - first.at[1]) * pxPerMm];
}
