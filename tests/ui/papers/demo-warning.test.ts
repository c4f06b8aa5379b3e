import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { ownLibrary } from '#tests/engine/own-library.ts';
import { demoWarnings } from '../../../ui/elements/papers/demo-warning.ts';

const demo = demoLibrary();
const own = ownLibrary();
const scheme = {
  price: { bill: [{ item: 'socket-twin', priced: true }], other: [] },
  labour: [{ task: 'set-up' }],
};

describe('the warning before papers go out', () => {
  it('is silent once nothing of the demo is left', () => {
    expect(demoWarnings(own, scheme)).toEqual([]);
    expect(demoWarnings(own, null)).toEqual([]);
  });

  it('says in whose name the papers go out while it is the demo firm’s', () => {
    expect(demoWarnings({ ...own, firm: demo.firm }, scheme)).toEqual([
      expect.stringMatching(
        /in the name of “Tin Kettle Electrical.*name, address, contact and VAT number are/,
      ),
    ]);
    const contact = { ...own.firm, contact: demo.firm.contact };
    expect(demoWarnings({ ...own, firm: contact }, null)).toEqual([
      expect.stringMatching(/^The demo firm’s contact is still in them/),
    ]);
  });

  it('counts the lines and tasks whose figures are the demo’s, however the lists are called', () => {
    const reworded = { ...own, prices: { ...demo.prices, source: 'My merchant' } };
    expect(demoWarnings(reworded, scheme)).toEqual([expect.stringMatching(/^1 of 1 lines of this bill/)]);
    expect(demoWarnings({ ...own, norms: { ...demo.norms, source: 'Mine' } }, scheme)).toEqual([
      expect.stringMatching(/1 of 1 tasks.*hourly rate/),
    ]);
  });

  it('says so where the list alone still calls itself the demo’s', () => {
    const prices = { ...own.prices, source: demo.prices.source };
    expect(demoWarnings({ ...own, prices }, scheme)).toEqual([expect.stringMatching(/price list/)]);
  });
});
