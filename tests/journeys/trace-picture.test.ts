import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Job } from '#model/job.ts';
import { roomSides } from '../../ui/house/room-sides.ts';
import { MARGIN } from '../../ui/house/straighten.ts';
import { drawPicture } from './pictures.ts';
import { allKept, expectUsable, type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

const jobOf = async (id: string): Promise<Job> =>
  (await (await fetch(`${stage.server.address}/api/jobs/${id}`)).json()) as Job;

type Point = readonly [x: number, y: number];

/** The drawn house, inside its outer walls, m; y goes down, as on the picture. */
const [WIDE, DEEP] = [8, 6];
const [WIDTH_PX, HEIGHT_PX] = [1600, 1200];

/** Where the picture shows a place of the house: a sheet on a table, seen askew by a camera. */
function seen([x, y]: Point): Point {
  const [sx, sy] = [x - WIDE / 2, y - DEEP / 2];
  const [tilt, pan, lens, away] = [0.45, 0.25, 1500, 10.5];
  const [y1, z1] = [sy * Math.cos(tilt), sy * Math.sin(tilt)];
  const [x2, z2] = [sx * Math.cos(pan) + z1 * Math.sin(pan), z1 * Math.cos(pan) - sx * Math.sin(pan)];
  const px = lens / (z2 + away);
  return [WIDTH_PX / 2 + x2 * px, HEIGHT_PX / 2 + y1 * px];
}

const box = (left: number, upper: number, right: number, lower: number): readonly Point[] =>
  (
    [
      [left, upper],
      [right, upper],
      [right, lower],
      [left, lower],
    ] as const
  ).map(seen);

/** Outer walls about the inside, and a wall across it from 4.9 to 5.0 m. */
const filled = [
  { at: box(-0.3, -0.3, WIDE + 0.3, DEEP + 0.3), grey: 40 },
  { at: box(0, 0, WIDE, DEEP), grey: 250 },
  { at: box(4.9, 0, 5, DEEP), grey: 40 },
];

const corners = [
  [0, 0],
  [WIDE, 0],
  [WIDE, DEEP],
  [0, DEEP],
].map(([x = 0, y = 0]) => seen([x, y]));
const names = ['Upper left', 'Upper right', 'Lower right', 'Lower left'];

/** Taps a place of the house where the straightened picture under the plan shows it. */
async function tapHouse(page: Page, [x, y]: Point, size: 'phone' | 'desk'): Promise<void> {
  const at = await page.locator('plan-view image.underlay').evaluate(
    (image: SVGImageElement, [u, v]) => {
      const matrix = image.getScreenCTM();
      if (matrix === null) throw new Error('The picture is not drawn.');
      const place = new DOMPoint(u * image.width.baseVal.value, v * image.height.baseVal.value);
      const { x, y } = place.matrixTransform(matrix);
      return { x, y };
    },
    [(MARGIN + x / WIDE) / (1 + 2 * MARGIN), (MARGIN + y / DEEP) / (1 + 2 * MARGIN)] as const,
  );
  if (size === 'phone') await page.touchscreen.tap(at.x, at.y);
  else await page.mouse.click(at.x, at.y);
}

describe.each(['phone', 'desk'] as const)('a picture that is traced on a %s', (size) => {
  it('is straightened, brought to scale, and rooms tapped over it are as long as in truth', async () => {
    const { page, troubles } = await stage.open(size);
    await page.getByRole('button', { name: 'New job' }).first().click();
    await page.waitForURL(/\/jobs\//);
    const id = /jobs\/([^/]+)/.exec(page.url())?.[1] ?? '';
    await page.locator('as-found-step summary').filter({ hasText: 'Rooms and walls' }).click();
    await page.locator('room-list summary').filter({ hasText: 'Trace a picture' }).click();
    const buffer = await drawPicture(page, { width: WIDTH_PX, height: HEIGHT_PX, filled });
    await page
      .locator('underlay-form input[type=file]')
      .last()
      .setInputFiles({ name: 'plan.png', mimeType: 'image/png', buffer });
    await page.locator('plan-view image.underlay').waitFor({ state: 'attached' });
    await expectUsable(page, `a picture under the plan on a ${size}`);

    await page.getByRole('button', { name: 'Straighten it' }).click();
    await page.locator('picture-corners image').waitFor({ state: 'attached' });
    await expectUsable(page, `corners of a picture on a ${size}`);
    // One mark by the mouse or the finger's place, the others by figures.
    const handle = page.locator('picture-corners .handle').first();
    await handle.focus();
    await page.keyboard.press('ArrowRight');
    await page.locator('picture-corners summary').click();
    for (const [i, [x, y]] of corners.entries())
      for (const [axis, value] of [
        ['from the left', x],
        ['from the top', y],
      ] as const) {
        const field = page.getByLabel(`${names[i]}: px ${axis}`);
        await field.fill(String(Math.round(value)));
        await field.press('Tab');
      }
    await page.getByRole('button', { name: 'Straighten', exact: true }).click();
    await page.locator('picture-corners dialog').waitFor({ state: 'detached' });
    await expect
      .poll(
        async () => {
          await allKept(page);
          return (await jobOf(id)).assets.map(({ name }) => name);
        },
        { timeout: 60_000 },
      )
      .toEqual(['Picture under Ground floor, straightened']);

    await page.getByRole('button', { name: 'To scale: tap two places' }).click();
    await page.locator('tool-bar').waitFor();
    await tapHouse(page, [0, 3], size);
    await tapHouse(page, [WIDE, 3], size);
    const length = page.getByLabel('How far apart they are in truth');
    await length.fill(`26' 3"`);
    await length.press('Enter');
    await expect.poll(() => page.locator('underlay-form .length').count()).toBe(0);

    for (const [left, right] of [
      [0, 4.9],
      [5, WIDE],
    ] as const) {
      await page.getByRole('button', { name: /^Trace .*: tap its inner corners/ }).click();
      await page.locator('tool-bar').waitFor();
      for (const corner of [
        [left, 0],
        [right, 0],
        [right, DEEP],
        [left, DEEP],
      ] as const) {
        await tapHouse(page, corner, size);
        // Two taps in one place within the time of a double tap are none.
        await page.waitForTimeout(50);
      }
      await page.locator('tool-bar').getByRole('button', { name: 'Draw it' }).click();
    }
    await expect.poll(() => page.locator('room-list .row').count()).toBe(2);
    await expectUsable(page, `rooms that were traced on a ${size}`);
    await allKept(page);
    const { storeys } = await jobOf(id);
    const [storey] = storeys;
    if (storey === undefined) throw new Error('The storey is gone.');
    const lengths = storey.rooms.map((room) =>
      roomSides(storey, room).map(({ lengthMm }) => lengthMm / 1000),
    );
    const truth = [
      [4.9, DEEP],
      [3, DEEP],
    ];
    for (const [i, [across = 1, up = 1]] of truth.entries()) {
      const sides = (lengths[i] ?? []).toSorted((a, b) => a - b);
      expect(sides).toHaveLength(4);
      const [short, long] = [Math.min(across, up), Math.max(across, up)];
      for (const [at, metres] of [
        [0, short],
        [3, long],
      ] as const)
        expect(Math.abs((sides[at] ?? 0) / metres - 1), `${sides} for ${across} × ${up}`).toBeLessThan(0.01);
    }

    // All of it is taken back step by step, the picture last.
    await page.keyboard.press('Control+z');
    await expect.poll(() => page.locator('room-list .row').count()).toBe(1);
    await page.getByRole('button', { name: 'Remove the picture' }).click();
    await page.locator('plan-view image.underlay').waitFor({ state: 'detached' });
    await page.keyboard.press('Control+z');
    await page.locator('plan-view image.underlay').waitFor({ state: 'attached' });
    expect(troubles).toEqual([]);
    await page.context().close();
  });
});
