import { describe, expect, it } from 'vitest';
import { entriesOf } from '#drawing/shopping/shopping-sheet.ts';
import type { BillLine } from '#engine/price/totals.ts';
import { type AskedFor, boughtWords } from '../../../ui/elements/kit/bought-words.ts';
import { saltglassShopped } from '../../drawing/shopping/sheet-of.ts';

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
    [
      { unit: 'm', quantity: 13.2, packQuantity: 50, chargedQuantity: 50 },
      '1 pack of 50 m',
      'charged whole; 36.8 m left over',
    ],
    [{ packQuantity: null, charge: 'used', chargedQuantity: 60 }, '60', ''],
    [
      { packQuantity: 1, unit: 'm', quantity: 2.4, chargedQuantity: 3 },
      '3 m',
      'charged whole; 0.6 m left over',
    ],
    [{ fromStock: 60, chargedQuantity: 0 }, 'none: the van has it', ''],
    [{ quantity: 0, chargedQuantity: 0 }, 'none; may turn out to be needed', ''],
  ])('in the packs of the bill: %j', (spread, buy, rest) => {
    expect(boughtWords(line(spread), null)).toEqual({ buy, rest });
  });

  const ask = (words: string, quantity: number, count = 1): AskedFor['asks'][number] => ({
    ...{ kind: 'cut', count, quantity, words, code: '' },
  });
  const metres = { unit: 'm', quantity: 0.9, packQuantity: 100 } as const;
  it.each<[Partial<BillLine>, AskedFor, string, string]>([
    [
      { ...metres, charge: 'used', chargedQuantity: 0.9 },
      { asks: [ask('1 m off the reel', 1)], leftOver: 0.1 },
      '1 m off the reel',
      '0.9 m used and charged; 0.1 m left for the van',
    ],
    [
      { ...metres, quantity: 13.2, packQuantity: 50, chargedQuantity: 50 },
      { asks: [ask('13.2 m in one length', 13.2)], leftOver: 0 },
      '13.2 m in one length',
      '50 m charged, in whole packs',
    ],
    [
      { quantity: 60, chargedQuantity: 100 },
      { asks: [ask('3 packs of 20', 20, 3)], leftOver: 0 },
      '3 packs of 20',
      '100 charged, in whole packs',
    ],
    [{ fromStock: 60, chargedQuantity: 0 }, { asks: [ask('1', 1)], leftOver: 0 }, 'none: the van has it', ''],
  ])('as the shopping list asks for it: %j', (spread, asked, buy, rest) => {
    expect(boughtWords(line(spread), asked)).toEqual({ buy, rest });
  });

  it('is what the shopping list says, for every line of a demo job', () => {
    const { scheme, sheet } = saltglassShopped();
    const entries = entriesOf(sheet.list).filter(({ place }) => place !== 'van');
    const asked = scheme.price.bill.filter(({ quantity }) => quantity > 0);
    expect(asked.length).toBeGreaterThan(20);
    for (const one of asked) {
      const entry = entries.find(({ item }) => item === one.item);
      expect([one.item, entry === undefined]).toEqual([one.item, false]);
      const { buy } = boughtWords(one, entry ?? null);
      for (const { words } of entry?.asks ?? []) expect(buy).toContain(words);
    }
  });
});
