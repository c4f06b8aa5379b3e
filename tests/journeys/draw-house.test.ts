import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildPlan } from '#engine/plan/build-plan.ts';
import type { Job } from '#model/job.ts';
import { Hand } from './hand.ts';
import { allKept, expectUsable, type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

/** As a laser showed them: what room, along the wall it shares, away from it, where, in line with which end of that wall. */
const ground = [
  ['Living room', '4.30', '3.70', 'right of Hall', 'its lower end'],
  ['Kitchen', '5.60', '4.00', 'above Hall', 'its left end'],
] as const;
const first = [
  ['Bedroom', '4.30', '2.50', 'right of Bedroom', 'its lower end'],
  ['Bathroom', '5.60', '4.00', 'above Bedroom', 'its left end'],
] as const;

async function drawRooms(
  page: Page,
  hand: Hand,
  rooms: readonly (readonly [string, string, string, string, string])[],
) {
  for (const [use, along, away, where, end] of rooms) {
    await hand.choose('What room', use);
    await hand.type('Along that wall', along);
    await hand.type('Away from it', away);
    await hand.choose('Where', where);
    // Nothing to choose: the end that is offered first is the lower or the left one on the plan.
    expect(
      await page
        .getByLabel('In line with', { exact: true })
        .evaluate((list: HTMLSelectElement) => list.selectedOptions[0]?.text.trim()),
    ).toBe(end);
    await hand.press(page.getByRole('button', { name: /^Draw (?!another)/ }));
    expect(await page.getByRole('alert').count()).toBe(0);
  }
}

async function newJob(page: Page, hand: Hand): Promise<string> {
  await hand.press(page.getByRole('button', { name: 'New job' }).first());
  await page.waitForURL(/\/jobs\//);
  return /jobs\/([^/]+)/.exec(page.url())?.[1] ?? '';
}

const kept = async (id: string): Promise<Job> =>
  (await (await fetch(`${stage.server.address}/api/jobs/${id}`)).json()) as Job;

describe.each(['phone', 'desk'] as const)('a house drawn from a list of measurements on a %s', (size) => {
  it('has six rooms in less than sixty actions, each as it was measured', async () => {
    const { page, troubles } = await stage.open(size);
    const hand = new Hand(page, size);
    const id = await newJob(page, hand);
    await hand.press(page.locator('as-found-step summary').filter({ hasText: 'Rooms and walls' }));
    await hand.type('Across the plan', '1.80');
    await hand.type('Up the plan', `14' 1 1/4"`);
    await hand.press(page.getByRole('button', { name: 'Draw Hall' }));
    await page.locator('room-list .row').filter({ hasText: '1.80 × 4.30 m' }).waitFor();
    await expectUsable(page, `a first room on a ${size}`);
    await hand.press(page.getByRole('button', { name: 'Draw another room' }));
    await drawRooms(page, hand, ground);
    await hand.press(page.getByRole('button', { name: 'Storey above: outer walls' }));
    await page.getByText('First floor', { exact: true }).first().waitFor();
    await hand.choose('What room', 'Bedroom');
    await hand.type('Across the plan', '3.00');
    await hand.type('Up the plan', '4.30');
    await hand.press(page.getByRole('button', { name: 'Draw Bedroom' }));
    await page.locator('room-list .row').filter({ hasText: '3.00 × 4.30 m' }).waitFor();
    await drawRooms(page, hand, first);
    await page.locator('room-list .row').filter({ hasText: 'Bathroom' }).waitFor();
    await expectUsable(page, `six rooms on a ${size}`);
    await allKept(page);
    const job = await kept(id);
    const rooms = [...buildPlan(job).roomById.values()].map(({ room, areaMm2 }) => [
      room.name,
      Math.round(areaMm2 / 1e4) / 100,
    ]);
    expect(rooms.toSorted()).toEqual(
      [
        ['Bathroom', 22.4],
        ['Bedroom', 12.9],
        ['Bedroom 2', 10.75],
        ['Hall', 7.74],
        ['Kitchen', 22.4],
        ['Living room', 15.91],
      ].toSorted(),
    );
    // Parted where they meet: five lines below; above also where the bedrooms’ wall stands away from the one below it.
    expect(job.storeys.map(({ walls }) => walls.length)).toEqual([10, 11]);
    expect(hand.actions).toBeLessThan(60);
    expect(troubles).toEqual([]);
  });
});
