import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Job } from '#model/job.ts';
import { Hand } from './hand.ts';
import { allKept, expectUsable, type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

const ground = async () => {
  const job = (await (await fetch(`${stage.server.address}/api/jobs/saltglass3`)).json()) as Job;
  const [storey] = job.storeys;
  if (storey === undefined) throw new Error('The job has no storey.');
  return storey;
};

/** A field of a list, the last of its name: that of what is to be added. */
async function typeLast(page: Page, list: string, label: string, text: string): Promise<void> {
  const field = page.locator(list).getByLabel(label).last();
  await field.fill(text);
  await field.blur();
}

describe.each(['phone', 'desk'] as const)('what a room has, on a %s', (size) => {
  it('is told in its form and drawn: a hob, a floor of its own with its joists, stairs', async () => {
    const { page, troubles, context } = await stage.open(size, '/jobs/saltglass3/as-found');
    const hand = new Hand(page, size);
    const before = await ground();
    await hand.press(page.locator('as-found-step summary').filter({ hasText: 'Rooms and walls' }));
    await hand.press(page.locator('room-list .row').filter({ hasText: 'Dining room' }));

    await hand.press(page.locator('room-form summary').filter({ hasText: 'Fixtures' }));
    await hand.choose('What is fixed there', 'Hob');
    await hand.press(page.getByRole('button', { name: 'Put the hob there' }));
    await page.getByText('Say how far it is from the left corner.').waitFor();
    await typeLast(page, 'fixture-list', 'From its left corner', '0.4');
    await hand.press(page.getByRole('button', { name: 'Put the hob there' }));
    await page
      .locator('fixture-list .row')
      .filter({ hasText: 'Hob' })
      .filter({ hasText: '400–1000' })
      .waitFor();
    await expectUsable(page, `fixtures on a ${size}`);

    await hand.press(page.locator('room-floor > details > summary, room-floor summary').first());
    await hand.choose('Its floor', 'Its own');
    await hand.choose('Joists run', 'Short side, up the plan');
    // A line straight up has no width, which the browser's driver takes for hidden.
    await page.locator('plan-view .joists path').first().waitFor({ state: 'attached' });
    await expectUsable(page, `a room’s own floor on a ${size}`);

    await hand.press(page.locator('room-list summary').filter({ hasText: 'Stairs that come up here' }));
    await hand.choose('Measured in', 'Hall');
    await typeLast(page, 'stairwell-list', 'From its left corner', '0');
    await page.locator('stairwell-list').getByLabel('Along the wall').last().fill('850');
    await hand.press(page.getByRole('button', { name: 'Put the stairwell there' }));
    await page.getByRole('button', { name: 'Remove the stairwell' }).waitFor();
    await expectUsable(page, `a stairwell on a ${size}`);
    await allKept(page);

    const after = await ground();
    const hob = after.fixtures.at(-1);
    expect(hob).toMatchObject({ kind: 'hob', toMm: 910, certainty: { outline: 'assumed', toMm: 'assumed' } });
    expect(after.rooms.find(({ name }) => name === 'Dining room')?.floor).toMatchObject({ joistsRunDeg: 90 });
    expect(after.stairwells).toHaveLength(before.stairwells.length + 1);

    // Folded up, nothing of the floor is drawn any more.
    await hand.press(page.locator('room-list .row').filter({ hasText: 'Dining room' }));
    await page.locator('plan-view .joists').waitFor({ state: 'detached' });
    for (let step = 0; step < 4; step += 1) await page.keyboard.press('Control+z');
    await expect.poll(ground).toEqual(before);
    expect(troubles).toEqual([]);
    await context.close();
  });
});
