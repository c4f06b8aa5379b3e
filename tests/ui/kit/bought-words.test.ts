import { describe, expect, it } from 'vitest';
import type { BillLine } from '#engine/price/totals.ts';
import { boughtWords } from '../../../ui/elements/kit/bought-words.ts';

const line = (spread: Partial<BillLine>): BillLine => ({
  item: 'thing',
  description: 'Thing',
  group: 'fixings',
  unit: 'each',
  quantity: 60,
  fromStock: 0,
  pricePence: 284,
  perQuantity: 100,
  packQuantity: 100,
  charge: 'packs',
  chargedQuantity: 100,
  costPence: 284,
  priced: true,
  causes: ['c1'],
  ...spread,
});

describe('what Kit says of buying', () => {
  it.each<[Partial<BillLine>, string, string]>([
    [{}, '1 pack of 100', 'charged whole; 40 left over'],
    [{ charge: 'used', chargedQuantity: 60 }, '1 pack of 100', '60 used and charged; 40 left for the van'],
    [{ quantity: 200, chargedQuantity: 200 }, '2 packs of 100', ''],
    [{ unit: 'm', quantity: 13.2, packQuantity: 50 }, '1 pack of 50 m', 'charged whole; 36.8 m left over'],
    [{ packQuantity: null, charge: 'used', chargedQuantity: 60 }, '60', ''],
    [{ packQuantity: 1, unit: 'm', quantity: 2.4 }, '3 m', 'charged whole; 0.6 m left over'],
    [{ fromStock: 60, chargedQuantity: 0 }, 'none: the van has it', ''],
    [{ quantity: 0, chargedQuantity: 0 }, 'none; may turn out to be needed', ''],
  ])('%j', (spread, buy, rest) => {
    expect(boughtWords(line(spread))).toEqual({ buy, rest });
  });
});
