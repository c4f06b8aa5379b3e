import { describe, expect, it } from 'vitest';
import { billOf } from '#engine/price/bill.ts';
import { planPurchase } from '#engine/price/buying/plan-purchase.ts';
import { demandMillipence } from '#engine/schemes/search/works-cost.ts';
import type { Prices } from '#model/library.ts';
import { listedPrice, smallLibrary, takeoffLine } from './price-material.ts';

function pricesOf(items: Prices['items'], vat: Prices['vat'] = 'excluded'): Prices {
  return { source: 'invented', date: '2026-11-01', vat, items };
}

describe('the bill', () => {
  const clips = listedPrice('clip', { pricePence: 284, perQuantity: 100, packQuantity: 100 });

  it('charges whole packs where the list says so', () => {
    const prices = pricesOf([{ ...clips, charge: 'packs' }]);
    const [line] = billOf([takeoffLine('clip', 101)], prices, [], 'standard');
    expect(line).toMatchObject({ chargedQuantity: 200, costPence: 568, priced: true });
  });

  it('charges what was used where the list says so', () => {
    const [line] = billOf([takeoffLine('clip', 18)], pricesOf([clips]), [], 'standard');
    expect(line).toMatchObject({ chargedQuantity: 18, costPence: 51 });
  });

  it('rounds half a penny up', () => {
    const prices = pricesOf([listedPrice('half', { pricePence: 1, perQuantity: 2 })]);
    const [line] = billOf([takeoffLine('half', 1)], prices, [], 'standard');
    expect(line?.costPence).toBe(1);
  });

  it('charges what is used, whatever of it the van has: the firm has paid for that too', () => {
    for (const charge of ['packs', 'used'] as const) {
      const prices = pricesOf([{ ...clips, charge }]);
      const charged = (stock: readonly { item: string; quantity: number }[]) =>
        billOf([takeoffLine('clip', 120)], prices, stock, 'standard')[0];
      const plain = charged([]);
      expect(plain).toMatchObject({ fromStock: 0, chargedQuantity: charge === 'packs' ? 200 : 120 });
      const some = charged([{ item: 'clip', quantity: 60 }]);
      expect(some).toEqual({ ...plain, fromStock: 60 });
      const enough = charged([
        { item: 'clip', quantity: 60 },
        { item: 'clip', quantity: 70 },
      ]);
      expect(enough).toEqual({ ...plain, fromStock: 120 });
    }
  });

  it('uses the van once for two lines of one item', () => {
    const lines = [takeoffLine('clip', 50), takeoffLine('clip', 50)];
    const bill = billOf(lines, pricesOf([clips]), [{ item: 'clip', quantity: 70 }], 'standard');
    expect(bill.map(({ fromStock }) => fromStock)).toEqual([50, 20]);
  });

  it('needs no second pack for the noise of binary fractions', () => {
    const prices = pricesOf([listedPrice('tube', { unit: 'm', packQuantity: 0.1, charge: 'packs' })]);
    const [line] = billOf([takeoffLine('tube', 0.4 - 0.1, { unit: 'm' })], prices, [], 'standard');
    expect((0.4 - 0.1) / 0.1).toBeGreaterThan(3);
    expect(line?.chargedQuantity).toBe(0.3);
  });

  it('takes the first row of an item that the list has twice, as all that is priced does', () => {
    const prices = pricesOf([clips, { ...clips, pricePence: 1 }]);
    expect(billOf([takeoffLine('clip', 100)], prices, [], 'standard')[0]?.costPence).toBe(284);
    expect(
      planPurchase({ takeoff: [takeoffLine('clip', 100)], prices, stock: [], depth: 'whole' }).pence,
    ).toBe(284);
    const demand = { item: 'clip', unit: 'each', group: 'sundries', measured: 100, causes: ['p1'] } as const;
    expect(demandMillipence(demand, { ...smallLibrary([]), prices })).toBe(284_000);
  });

  it('marks an item that is not listed, or listed in another unit, as not priced', () => {
    const lines = [takeoffLine('unheard-of', 2), takeoffLine('clip', 2, { unit: 'm' })];
    const bill = billOf(lines, pricesOf([clips]), [], 'standard');
    expect(bill.map(({ priced, costPence }) => ({ priced, costPence }))).toEqual([
      { priced: false, costPence: 0 },
      { priced: false, costPence: 0 },
    ]);
  });

  it.each([
    ['excluded', 'standard', 1000],
    ['excluded', 'zero', 1000],
    ['excluded', 'not-registered', 1200],
    ['included', 'standard', 833],
    ['included', 'not-registered', 1000],
  ] as const)(
    'with a list of prices with tax %s and terms %s costs a £10.00 item %d pence',
    (listed, terms, cost) => {
      const prices = pricesOf([listedPrice('thing', { pricePence: 1000 })], listed);
      expect(billOf([takeoffLine('thing', 1)], prices, [], terms)[0]?.costPence).toBe(cost);
    },
  );
});
