import { describe, expect, it } from 'vitest';
import { isOneLength, offersOf } from '#engine/price/buying/offers-of.ts';
import type { Price } from '#model/library.ts';
import { listedPrice } from '../price-material.ts';

const soldAs = (spread: Partial<Price>) => offersOf(listedPrice('thing', spread))[0];

describe('what is on offer', () => {
  it.each([
    ['metres by the metre are cut', { unit: 'm', packQuantity: 1 }, 'cut-1', 1000, 1000],
    ['metres in any quantity are cut to whole ones', { unit: 'm' }, 'cut-1', 1000, 1000],
    ['metres by the half are cut to it', { unit: 'm', packQuantity: 0.5 }, 'cut-0.5', 500, 500],
    ['metres by three are a length', { unit: 'm', packQuantity: 3, perQuantity: 3 }, 'length-3', 3000, null],
    [
      'a drum without a pack is as long as its price says',
      { unit: 'm', kind: 'drum', perQuantity: 100 },
      'drum-100',
      100_000,
      null,
    ],
    ['single ones', { unit: 'each' }, 'each-1', 1, null],
    ['packs', { unit: 'each', packQuantity: 100 }, 'pack-100', 100, null],
    ['kilograms in any quantity go up to a tenth', { unit: 'kg' }, 'each-0.1', 0.1, null],
    ['bags', { unit: 'kg', packQuantity: 2.5 }, 'pack-2.5', 2.5, null],
  ] as const)('%s', (_, spread, key, quantity, least) => {
    expect(soldAs(spread)).toMatchObject({ key, quantity, least });
  });

  it('costs what so much of the row costs, in thousandths of a penny', () => {
    expect(soldAs({ unit: 'm', pricePence: 6200, perQuantity: 100, packQuantity: 1 })?.millipence).toBe(
      62_000,
    );
    expect(soldAs({ pricePence: 284, perQuantity: 100, packQuantity: 1 })?.millipence).toBe(2840);
    expect(soldAs({ pricePence: 100, perQuantity: 3, packQuantity: 1 })?.millipence).toBe(33_333);
  });

  it('is the row and its further sizes, each by a name of its own', () => {
    const price = listedPrice('cable', {
      unit: 'm',
      packQuantity: 1,
      packs: [
        { kind: 'coil', quantity: 50, pricePence: 3240 },
        { kind: 'coil', quantity: 50, pricePence: 3000 },
        { kind: 'cut', quantity: 0.5, pricePence: 40, leastQuantity: 2.2 },
        { kind: 'pack', quantity: 30, pricePence: 500 },
      ],
    });
    const offers = offersOf(price);
    expect(offers.map(({ key }) => key)).toEqual(['cut-1', 'coil-50', 'coil-50-no-2', 'cut-0.5', 'pack-30']);
    expect(offers.map(({ least }) => least)).toEqual([1000, null, null, 2500, null]);
    expect(offers.map(isOneLength)).toEqual([false, true, true, false, false]);
  });
});
