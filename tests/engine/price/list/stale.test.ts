import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { estimate } from '#engine/estimate.ts';
import { staleAge, staleItems } from '#engine/price/list/stale.ts';
import { demoJob, findingsOf, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { ownLibrary } from '#tests/engine/own-library.ts';
import { listOf, priceOfOne } from './list-material.ts';

describe('a price', () => {
  const list = { date: '2026-08-28' };

  it('is old past the limit, and not at it', () => {
    expect(staleAge({}, list, '2026-11-26')).toBeNull();
    expect(staleAge({}, list, '2026-11-27')).toBe(91);
  });

  it('goes by its own day before the list’s, and by the firm’s limit before the usual one', () => {
    expect(staleAge({ date: '2026-11-01' }, list, '2026-11-27')).toBeNull();
    expect(staleAge({ date: '2026-11-01' }, { ...list, staleDays: 10 }, '2026-11-27')).toBe(26);
  });

  it('of the demo is invented, and no older for it', () => {
    expect(staleAge({ origin: 'demo' }, list, '2030-01-01')).toBeNull();
  });

  it('of a day that is none is not judged', () => {
    expect(staleAge({}, list, 'today')).toBeNull();
  });

  it('is that of an item’s first row', () => {
    const rows = [priceOfOne('a', 1, { date: '2026-11-20' }), priceOfOne('a', 1, { date: '2020-01-01' })];
    expect([...staleItems(listOf(rows), '2026-11-26')]).toEqual([]);
  });
});

describe('[PL2] the age of prices', () => {
  const job = demoJob('saltglass-row');
  const saidOn = (date: string, library = ownLibrary()) =>
    findingsOf(schemeOf(estimate(job, library, { date, revision: 1 }), 'spurs-rcbo'), 'PL2');

  it('[PL2] is told of once a bill, as advice that keeps nothing from complying', () => {
    const [finding, ...others] = saidOn('2027-06-01');
    expect(others).toEqual([]);
    expect(finding).toMatchObject({
      outcome: 'advice',
      messageId: 'old',
      actual: 212,
      limit: 90,
      gates: false,
    });
    expect(finding?.message).not.toMatch(/[{}]/);
  });

  it('[PL2] is silent at the limit, and of the demo’s prices', () => {
    expect(saidOn('2027-01-30')).toEqual([]);
    expect(saidOn('2027-01-31')).toHaveLength(1);
    expect(saidOn('2027-06-01', demoLibrary())).toEqual([]);
  });

  it('[PL2] counts lines of the bill, not of the list', () => {
    const library = ownLibrary();
    const { bill } = schemeOf(
      estimate(job, library, { date: '2026-11-25', revision: 1 }),
      'spurs-rcbo',
    ).price;
    const items = library.prices.items.map((price) =>
      price.item === bill[0]?.item ? { ...price, date: '2026-01-01' } : price,
    );
    const [finding] = saidOn('2026-11-25', { ...library, prices: { ...library.prices, items } });
    expect(finding?.message).toContain(`1 of the ${bill.length} lines`);
  });
});
