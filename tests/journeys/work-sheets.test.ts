import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readPdf } from '../exports/pdf-reader.ts';
import { allKept, expectUsable, type Stage, setStage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await setStage();
});
afterAll(() => stage.close());

const papers = '/jobs/saltglass3/papers';

describe.each(['desk', 'phone'] as const)('the sheets that are worked from, on a %s', (size) => {
  it('have a card for every place, the circuits in order, and the holds, each at its own address', async () => {
    const { page, context, troubles } = await stage.open(size, papers);
    await page.getByRole('button', { name: 'Connections' }).click();
    await page.getByRole('heading', { name: 'R8, twin socket-outlet' }).waitFor();
    expect(new URL(page.url()).searchParams.get('part')).toBe('connections');
    const cards = page.locator('connection-sheet .cards').first().locator('article');
    expect(await cards.count()).toBe(10);
    const unit = cards.filter({
      has: page.getByRole('heading', { name: /^W4, switched fused connection unit, with flex outlet/ }),
    });
    expect(await unit.innerText()).toMatch(/Fuse: 3 A/);
    const orders = page.locator('circuit-orders');
    expect(await orders.getByText('As it will be').count()).toBe(1);
    await expectUsable(page, `the connection sheet on a ${size}`);

    await page.getByRole('button', { name: 'Tasks' }).click();
    await page.getByText(/Ring proved: .*Else stop/).waitFor();
    expect(await page.locator('task-sheet section').first().getAttribute('data-part')).toBe('before');
    await expectUsable(page, `the tasks on a ${size}`);

    await page.getByRole('button', { name: 'Cuts and floors' }).click();
    await page.getByRole('heading', { name: 'Joists that are cut' }).waitFor();
    expect(await page.locator('floor-sheet li').filter({ hasText: 'H1' }).innerText()).toMatch(
      /16 mm hole on the centre line/,
    );
    await expectUsable(page, `cuts and floors on a ${size}`);
    await page.getByRole('button', { name: 'Tasks' }).click();

    await page.reload({ waitUntil: 'networkidle' });
    await page.getByText(/Ring proved: .*Else stop/).waitFor();
    expect(troubles).toEqual([]);
    await context.close();
  });
});

describe('work that is done', () => {
  it('is said with a tap, told on every paper, taken back by undo, and its pack is fetched as built', async () => {
    const { page, context } = await stage.open('phone', papers);
    await page.getByRole('button', { name: 'The work is done' }).click();
    await page.getByRole('heading', { name: 'The work is done' }).waitFor();
    const words = page.getByRole('textbox', { name: 'What was done otherwise, or is to be known of it' });
    await words.fill('The joint lies a joist further on.');
    await page.getByRole('heading', { name: 'The work is done' }).click();
    await allKept(page);
    await expectUsable(page, 'work that is done, on a phone');
    const address = await page.getByRole('link', { name: /: The pack$/ }).getAttribute('href');
    const answer = await page.request.get(new URL(address ?? '', stage.server.address).href);
    expect(answer.headers()['content-type']).toBe('application/pdf');
    const { pages } = await readPdf(new Uint8Array(await answer.body()));
    expect(pages[0]).toContain('Papers of the work as built');
    expect(pages.join(' ')).toContain('The joint lies a joist further on.');
    await page.getByRole('button', { name: 'It is not done yet' }).click();
    await page.getByRole('button', { name: 'The work is done' }).waitFor();
    await page.keyboard.press('ControlOrMeta+z');
    await words.waitFor();
    expect(await words.inputValue()).toBe('The joint lies a joist further on.');
    await page.getByRole('button', { name: 'It is not done yet' }).click();
    await allKept(page);
    await context.close();
  });
});

describe('on paper', () => {
  it('has the job’s name and state on its head, the cards, and nothing of the screen', async () => {
    const { page, context } = await stage.open('desk', `${papers}?part=connections`);
    await page.getByRole('heading', { name: 'R8, twin socket-outlet' }).waitFor();
    await page.emulateMedia({ media: 'print' });
    await page.getByRole('heading', { name: 'Connections, RW-0001' }).waitFor();
    expect(
      await page
        .locator('connection-sheet .paper-head')
        .getByText(/state [0-9A-Z]{4}-[0-9A-Z]{4}/)
        .isVisible(),
    ).toBe(true);
    expect(await page.getByRole('heading', { name: 'J1, maintenance-free joint' }).isVisible()).toBe(true);
    for (const name of ['Print this sheet', 'Files and quotations'])
      expect(await page.getByRole('button', { name }).isVisible()).toBe(false);
    await context.close();
  });

  it('parts no place between two pages of A4, and has both orders of the ring on one', async () => {
    const { page, context } = await stage.open('desk', `${papers}?part=connections`);
    await page.getByRole('heading', { name: 'R8, twin socket-outlet' }).waitFor();
    const cards = await page
      .locator('connection-sheet .cards')
      .first()
      .locator('article')
      .evaluateAll((all) =>
        all.map((card) => ({
          title: card.querySelector('h4')?.textContent ?? '',
          cables: [...card.querySelectorAll('th[scope=rowgroup]')].map((head) => head.textContent ?? ''),
        })),
      );
    expect(cards).toHaveLength(10);
    const { pages } = await readPdf(new Uint8Array(await page.pdf({ preferCSSPageSize: true })));
    const flat = pages.map((text) => text.replaceAll(/\s+/g, ' '));
    for (const { title, cables } of cards) {
      // Words of a title: one that takes two lines has the next column's between them.
      const wanted = [...title.split(' '), ...cables.map((cable) => cable.split(',')[0] ?? '')];
      const missing = flat.map((text) => wanted.filter((words) => !text.includes(words)));
      expect(
        missing.some((none) => none.length === 0),
        `${title}: ${JSON.stringify(missing)}`,
      ).toBe(true);
    }
    expect(flat.findIndex((text) => text.includes('As found'))).toBe(
      flat.findIndex((text) => text.includes('As it will be')),
    );
    await context.close();
  }, 60_000);

  it('has a line for every reading and to sign, no field of the screen, and nothing of what was not measured', async () => {
    const { page, context } = await stage.open('desk', `${papers}?part=tests`);
    await page.getByRole('heading', { name: 'Ring, end to end dead' }).waitFor();
    const { pages } = await readPdf(new Uint8Array(await page.pdf({ preferCSSPageSize: true })));
    const text = pages.join(' ');
    for (const words of ['Tested by:', 'Day:', 'Conductors at 20 °C', 'Insulation is tested at 500 V'])
      expect(text).toContain(words);
    for (const words of ['Conductors when tested', 'With what was measured', 'Next: r1'])
      expect(text).not.toContain(words);
    await context.close();
  }, 60_000);
});
