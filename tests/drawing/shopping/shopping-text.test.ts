import { describe, expect, it } from 'vitest';
import { entriesOf } from '#drawing/shopping/shopping-sheet.ts';
import { merchantText, shoppingText } from '#drawing/shopping/shopping-text.ts';
import { whatFor } from '#drawing/shopping/what-for.ts';
import { demoEstimate, demoNames } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { saltglassShopped } from './sheet-of.ts';

const inVan = saltglassShopped({
  job: (job) => ({
    ...job,
    title: 'Line one\n[ ] 100 × something else',
    stock: [
      { item: 'grommet-20', quantity: 2 },
      { item: 'socket-twin', quantity: 1 },
    ],
  }),
  library: (library) => {
    library.prices.items = library.prices.items
      .filter(({ item }) => item !== 'dust-mask')
      .map((price) =>
        price.item === 'socket-twin' ? { ...price, code: '40123', supplierWords: 'SKT 2G' } : price,
      );
    return library;
  },
});

describe('the shopping list as text', () => {
  const text = shoppingText(inVan.sheet);
  const lines = text.split('\n');

  it('has one box to tick for each entry, under the place where it is had', () => {
    expect(lines.filter((line) => line.startsWith('[ ] '))).toHaveLength(entriesOf(inVan.sheet.list).length);
    const van = lines.indexOf('TAKE FROM THE VAN');
    expect(lines.slice(van + 1, van + 4)).toEqual([
      '[ ] 2 × Open grommet 20 mm',
      '    for R8',
      '[ ] 1 × 13 A twin socket-outlet',
    ]);
    const sockets = lines.indexOf('[ ] 2 × 13 A twin socket-outlet');
    expect(lines[sockets + 1]).toBe('    no. 40123, SKT 2G; for W1, W2 and W3');
    expect(lines).toContain('NOT ON THE PRICE LIST');
    expect(lines).toContain('[ ] 3 × Dust mask');
  });

  it('tells what is left over, what it costs and what is not in that sum, and the cut list', () => {
    expect(text).toContain('[ ] 1 pack of 100: Floorboard screw 4 × 50 mm'.replace('100:', '200:'));
    expect(text).toContain('28 needed, 172 left over');
    expect(text).toMatch(/£[\d,]+\.\d\d over the counter, VAT not in it, .*one thing is not on it/);
    expect(text).toContain('CUT LIST');
    expect(text).toContain('    1. 5.28 m  R8–W3');
    expect(text).toContain('    0.45 m left over');
    expect(text).toContain('Work dead');
  });

  it('lets no name pass for a line of the list', () => {
    expect(lines[0]).toBe('Shopping list, RW-0001: Line one [ ] 100 × something else');
  });

  it('says that there is nothing to buy where there is nothing', () => {
    const { sheet } = inVan;
    const list = { ...sheet.list, groups: [] };
    expect(shoppingText({ ...sheet, list })).toContain('Nothing to buy');
    expect(merchantText({ ...sheet, list }, new Set())).toBe('');
  });
});

describe('a message to a merchant', () => {
  it('asks for what is still to be bought, and tells nothing of the customer, of prices or of the van', () => {
    const { sheet } = inVan;
    const message = merchantText(sheet, new Set(['counter/filler']));
    expect(message).toMatch(/^To collect, our reference RW-0001\n\n/);
    expect(message).toContain('- 2 × 13 A twin socket-outlet (no. 40123, SKT 2G)\n');
    expect(message).toContain('Have you these, and what do they cost?\n- 3 × Dust mask\n');
    for (const word of ['£', 'Line one', 'van', 'R8', 'Filler']) expect(message).not.toContain(word);
    const bought = entriesOf(sheet.list).filter(({ place }) => place !== 'van');
    expect(message.split('\n').filter((line) => line.startsWith('- '))).toHaveLength(bought.length - 1);
    expect(merchantText(sheet, new Set(bought.map(({ key }) => key)))).toBe('');
  });
});

describe('what a thing is for', () => {
  it('is told by points, each once, by number; of many only so many, and how many more', () => {
    const words = whatFor(inVan.scheme.worked);
    expect(words(['c1-w3-spur/cable-1', 'w1-living1', 'c1-w1-spur/cable-1'])).toBe('W1 and W3');
    expect(words(['c1-w4-fuse/cable-1'])).toBe('W4');
    expect(words([])).toBe('');
    const points = inVan.scheme.worked.job.points.map(({ id }) => id);
    expect(words(points)).toMatch(/^B?\S+(, \S+){4} and \d+ more$/);
  });

  it.each(demoNames)('has words without ids for everything on the lists of %s', (name) => {
    for (const { worked, purchase } of demoEstimate(name).schemes) {
      const words = whatFor(worked);
      for (const { causes } of purchase.lines) {
        expect(words(causes)).not.toBe('');
        expect(words(causes)).not.toMatch(/[a-z0-9]\/[a-z]/);
      }
    }
  });

  it('tells a firm that is not registered what it pays with the VAT that it does not get back', () => {
    const { sheet } = saltglassShopped({
      job: (job) => ({ ...job, terms: { ...job.terms, vat: 'not-registered' } }),
    });
    const [gross, net] = (
      /^£([\d,.]+) over the counter with VAT, which you do not get back; £([\d,.]+) without it/.exec(
        sheet.costWords,
      ) ?? []
    )
      .slice(1)
      .map((sum) => Number(sum.replaceAll(',', '')));
    // 20 %: Value Added Tax Act 1994 section 2.
    expect(gross).toBeCloseTo(Math.round((net ?? 0) * 120) / 100, 6);
    expect((net ?? 0) * 100).toBeCloseTo(sheet.list.pence, 6);
    expect(sheet.costWords).not.toContain('VAT not in it');
  });
});
