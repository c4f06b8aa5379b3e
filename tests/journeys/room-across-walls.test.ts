import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Hand } from './hand.ts';
import { allKept, expectUsable, type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

const row = (page: Page, name: string, sides: string) =>
  page.locator('room-list .row').filter({ hasText: name }).filter({ hasText: sides });

/** A hall, a living room on its right and a narrow kitchen above it: an L. */
async function drawL(page: Page, hand: Hand): Promise<void> {
  await hand.press(page.getByRole('button', { name: 'New job' }).first());
  await page.waitForURL(/\/jobs\//);
  await hand.press(page.locator('as-found-step summary').filter({ hasText: 'Rooms and walls' }));
  await hand.type('Across the plan', '1.80');
  await hand.type('Up the plan', '4.30');
  await hand.press(page.getByRole('button', { name: 'Draw Hall' }));
  await row(page, 'Hall', '1.80 × 4.30 m').waitFor();
  await hand.press(page.getByRole('button', { name: 'Draw another room' }));
  for (const [use, along, away, where] of [
    ['Living room', '4.30', '3.70', 'right of Hall'],
    ['Kitchen', '1.80', '3.00', 'above Hall'],
  ] as const) {
    await hand.choose('What room', use);
    await hand.type('Along that wall', along);
    await hand.type('Away from it', away);
    await hand.choose('Where', where);
    await hand.press(page.getByRole('button', { name: `Draw ${use}` }));
    await row(page, use, '').waitFor();
  }
}

describe.each(['phone', 'desk'] as const)('rooms above an L, on a %s', (size) => {
  it('go into the corners of either arm; one across a wall is refused with what crosses it, and drawn as it fits', async () => {
    const { page, troubles, context } = await stage.open(size);
    const hand = new Hand(page, size);
    await drawL(page, hand);
    await hand.press(page.getByRole('button', { name: 'Storey above: outer walls' }));
    await page.getByText('First floor', { exact: true }).first().waitFor();

    // The arm above the kitchen is 1.80 m wide: a bedroom of 3.00 m is through its wall.
    await hand.choose('What room', 'Bedroom');
    await hand.choose('In which corner of the outer walls', 'upper right, the left one');
    await hand.type('Across the plan', '3.00');
    await hand.type('Up the plan', '2.50');
    await hand.press(page.getByRole('button', { name: 'Draw Bedroom' }));
    const refusal = page.getByRole('alert').filter({ hasText: 'would run through Bedroom' });
    await refusal.waitFor();
    expect(await refusal.innerText()).toMatch(/An outer wall .* make the room \d+ mm less there/);
    await expectUsable(page, `a room across a wall on a ${size}`);
    await hand.press(page.getByRole('button', { name: /^Draw it \d+ × 2500 mm$/ }));
    await row(page, 'Bedroom', '1.80 × 2.50 m').waitFor();

    // The corner is taken now; the other arm's is there for the next.
    const corners = await page.getByLabel('Where', { exact: true }).locator('option').allInnerTexts();
    const ofWalls = corners.map((text) => text.trim()).filter((text) => text.startsWith('in a corner'));
    expect(ofWalls).toContain('in a corner of the outer walls: upper right');
    expect(ofWalls.some((text) => text.includes('left one'))).toBe(false);
    await hand.choose('What room', 'Bathroom');
    await hand.choose('Where', 'in a corner of the outer walls: upper right');
    await hand.type('Along that wall', '2.00');
    await hand.type('Away from it', '2.20');
    await hand.press(page.getByRole('button', { name: 'Draw Bathroom' }));
    await row(page, 'Bathroom', '2.00 × 2.20 m').waitFor();
    await expectUsable(page, `rooms in two corners on a ${size}`);
    await allKept(page);
    expect(troubles).toEqual([]);
    await context.close();
  });
});
