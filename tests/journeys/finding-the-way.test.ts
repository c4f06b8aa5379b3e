import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

/** The label of the field that has the focus, through all shadow roots. */
const focusedField = (): string | null => {
  let at = document.activeElement;
  while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
  const root = at?.getRootNode();
  return root instanceof ShadowRoot ? ((root.host as unknown as { label?: string }).label ?? null) : null;
};

describe.each(['desk', 'phone'] as const)('a question of the survey at the %s', (width) => {
  it('leads to the very field that answers it', async () => {
    const { page, troubles, context } = await stage.open(width, '/');
    await page.getByRole('heading', { name: /^3 Saltglass Row: quoting visit/ }).click();
    const questions = page.locator('survey-list');
    await questions.locator('summary', { hasText: 'Above and below the rooms' }).click();
    await questions.getByRole('button', { name: /^Find out whether the floors lift/ }).click();
    const field = questions.getByRole('combobox', { name: 'First floor: the boards lift', exact: true });
    await field.focus();
    const box = await field.boundingBox();
    expect(box?.y ?? -1).toBeGreaterThan(0);
    expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThan(page.viewportSize()?.height ?? 0);
    expect(troubles).toEqual([]);
    await context.close();
  });
});

describe('a job of one’s own, without a plan', () => {
  it('is begun room by room, at the field that comes first', async () => {
    const { page, troubles, context } = await stage.open('desk', '/');
    await page.getByRole('button', { name: 'New job' }).click();
    await page.getByRole('button', { name: 'List points by room' }).click();
    await expect.poll(() => page.evaluate(focusedField)).toBe('Room');
    await page.getByRole('button', { name: 'Add it', exact: true }).click();
    await page.getByText('Name the room first').waitFor();
    await expect.poll(() => page.evaluate(focusedField)).toBe('Room');
    await page.keyboard.type('Hall');
    await page.getByRole('button', { name: 'Add it', exact: true }).click();
    await page.getByRole('button', { name: /^Hall 1/ }).waitFor();
    expect(troubles).toEqual([]);
    await context.close();
  });
});

describe('the shown scheme', () => {
  it('stays the shown one, and its name follows what is made of it', async () => {
    const { page, troubles, context } = await stage.open('desk', '/');
    await page.getByRole('heading', { name: /^18 Fernlow Close/ }).click();
    await page.getByRole('link', { name: /^Ways/ }).click();
    await page.getByRole('button', { name: /^All behind one fused unit/ }).click();
    const shown = page.locator('scheme-card button[aria-pressed=true]');
    await expect.poll(() => shown.innerText()).toContain('A fused branch');
    await page.getByRole('combobox', { name: 'B3 is joined by' }).selectOption('spur');
    await expect.poll(() => shown.innerText()).toContain('A spur and a fused branch');
    await page.getByRole('link', { name: /^Wanted/ }).click();
    await page.getByRole('button', { name: /wall from a list/ }).click();
    await expect.poll(() => shown.innerText()).toContain('A spur and a fused branch');
    expect(await shown.innerText()).not.toContain('about');
    const label = (await page.locator('wanted-step .row .name').last().innerText()).trim();
    await page.getByRole('link', { name: /^Ways/ }).click();
    await page.getByRole('combobox', { name: `${label} is joined by` }).selectOption('spur');
    await expect.poll(() => shown.innerText()).toMatch(/about\s+\d+\.\d m cable/);
    expect(troubles).toEqual([]);
    await context.close();
  });
});
