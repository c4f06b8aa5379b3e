import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Job } from '#model/job.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { readPdf } from '#tests/exports/pdf-reader.ts';
import { expectUsable, type Stage, setStage } from './stage.ts';

const unsafe: Job = {
  ...demoJob('saltglass-row'),
  id: 'unsafe-board',
  reference: 'RW-DANGER',
  answers: [{ question: 'board-condition', value: 'unsafe', certainty: 'seen' }],
};

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
  const answer = await fetch(`${stage.server.address}/api/jobs`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(unsafe),
  });
  expect(answer.status).toBe(201);
});
afterAll(() => stage.close());

describe.each(['desk', 'phone'] as const)('papers on a %s', (size) => {
  it('begin with what was found dangerous, with the letter to the customer, and have the record', async () => {
    const { page, context, troubles } = await stage.open(size, `/jobs/${unsafe.id}/papers`);
    const warning = page.locator('danger-warning');
    await warning
      .getByRole('heading', { name: 'Dangerous as found: tell the customer in writing' })
      .waitFor();
    await warning.getByText('A dangerous fuse box or supply').waitFor();
    const topOf = async (selector: string): Promise<number> =>
      (await page.locator(selector).first().boundingBox())?.y ?? Number.NaN;
    expect(await topOf('danger-warning section')).toBeLessThan(await topOf('quotation-part'));
    await expectUsable(page, `papers of a house with an unsafe board on a ${size}`);

    const href = async (name: string | RegExp): Promise<string> =>
      (await page.getByRole('link', { name }).getAttribute('href')) ?? '';
    const fetched = async (path: string): Promise<Response> => fetch(new URL(path, stage.server.address));
    const letter = await fetched(await href('Fetch PDF: letter on the dangerous condition'));
    const words = (await readPdf(new Uint8Array(await letter.arrayBuffer()))).pages.join(' ');
    expect(words).toContain('What must not be done until it is put right');
    const record = await fetched(await href('Fetch PDF: Record for the certificate'));
    expect((await readPdf(new Uint8Array(await record.arrayBuffer()))).pages.join(' ')).toContain(
      'This is no certificate.',
    );
    const data = await (await fetched(await href('Fetch JSON: Record as data'))).json();
    expect(data.toSettle[0]).toMatch(/^Stop gate, state of the board/);
    expect(troubles).toEqual([]);
    await context.close();
  });
});

describe('papers of a house in which nothing dangerous was found', () => {
  it('have no such letter', async () => {
    const { page, context } = await stage.open('desk', '/jobs/saltglass3/papers');
    await page.getByRole('link', { name: 'Fetch PDF: Record for the certificate' }).waitFor();
    expect(await page.locator('danger-warning section').count()).toBe(0);
    await context.close();
  });
});
