import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import {
  demoFirmDetails,
  demoMarks,
  demoMarksOf,
  demoNotice,
  demoShare,
  demoShareWords,
} from '#engine/demo-marks.ts';
import { ownLibrary } from './own-library.ts';

const demo = demoLibrary();
const own = ownLibrary();
const reworded = {
  ...demo,
  firm: own.firm,
  prices: { ...demo.prices, source: 'My merchant' },
  norms: { ...demo.norms, source: 'Mine' },
};

describe('what is left of the demo library', () => {
  it('is all of it in the demo library itself, every figure marked', () => {
    expect(demoMarks(demo)).toEqual({ firm: true, prices: true, norms: true });
    const rows = [...demo.prices.items, ...demo.norms.tasks, ...demo.norms.sums];
    expect(rows.filter(({ origin }) => origin !== 'demo')).toEqual([]);
    expect(demo.norms.rateOrigin).toBe('demo');
  });

  it('is nothing once firm, prices and norms are somebody’s own', () => {
    expect(demoMarks(own)).toEqual({ firm: false, prices: false, norms: false });
    expect(demoNotice(demoMarks(own))).toBeNull();
  });

  it('is not gone by calling the lists something else', () => {
    expect(demoMarks(reworded)).toEqual({ firm: false, prices: true, norms: true });
  });

  it.each(['name', 'address', 'vatNumber', 'contact'] as const)(
    'is the firm while it has the demo’s %s',
    (detail) => {
      const firm = { ...own.firm, [detail]: demo.firm[detail] };
      expect(demoMarks({ ...own, firm })).toEqual({ firm: true, prices: false, norms: false });
      expect(demoFirmDetails(firm)).toEqual([detail === 'vatNumber' ? 'VAT number' : detail]);
    },
  );

  it('is the prices, or the norms, while they say of themselves that they are', () => {
    const prices = { ...own.prices, source: demo.prices.source };
    const norms = { ...own.norms, source: demo.norms.source };
    expect(demoMarks({ ...own, prices }).prices).toBe(true);
    expect(demoMarks({ ...own, norms }).norms).toBe(true);
  });

  it('is said of each part that is left, and of no other', () => {
    const none = { firm: false, prices: false, norms: false };
    expect(demoNotice({ ...none, prices: true })).toMatch(/^[^f]*prices/);
    expect(demoNotice({ ...none, norms: true })).toMatch(/^[^f]*minutes and hourly rate/);
    expect(demoNotice({ ...none, firm: true })).toMatch(/firm/);
    expect(demoNotice({ firm: true, prices: true, norms: true })).toMatch(/firm.*prices.*rate/);
  });
});

describe('what of the demo is in a price', () => {
  const line = (item: string, priced = true) => ({ item, priced });
  const scheme = {
    price: { bill: [line('socket-twin'), line('joint-mf-32-3'), line('no-such', false)], other: [] },
    labour: [{ task: 'set-up' }, { task: 'no-such' }],
  };

  it('is counted by the lines that use a figure nobody has set', () => {
    expect(demoShare(scheme, reworded)).toEqual({
      billLines: 3,
      demoBillLines: 2,
      tasks: 2,
      demoTasks: 1,
      demoRate: true,
      demoSums: 0,
    });
    expect(demoShareWords(demoShare(scheme, reworded)).join(' ')).toMatch(
      /2 of 3 lines of this bill.*1 of 2 tasks.*hourly rate/,
    );
    expect(demoShareWords(demoShare(scheme, own))).toEqual([]);
  });

  it('is not a figure of the library that no scheme uses', () => {
    const [unused] = demo.prices.items.filter(({ item }) => item === 'tails-16');
    const prices = { ...own.prices, items: [...own.prices.items, unused ?? expect.fail('no such item')] };
    expect(demoMarks({ ...own, prices }).prices).toBe(true);
    expect(demoMarksOf([scheme], { ...own, prices })).toEqual({ firm: false, prices: false, norms: false });
    expect(demoMarksOf([scheme], reworded)).toEqual({ firm: false, prices: true, norms: true });
  });
});
