import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boughtOf } from '#engine/price/bought.ts';
import { priceScheme } from '#engine/price/price-scheme.ts';
import { anyPriceRequest } from './price-material.ts';

const line = (quantity: number, packQuantity: number | null, fromStock = 0) => ({
  quantity,
  packQuantity,
  fromStock,
});

describe('what is bought for a line of the bill', () => {
  it('is whole packs after the van’s stock, with what is left over', () => {
    expect(boughtOf(line(13.2, 50))).toEqual({ packs: 1, quantity: 50, leftOver: 36.8 });
    expect(boughtOf(line(100, 50))).toEqual({ packs: 2, quantity: 100, leftOver: 0 });
    expect(boughtOf(line(100.1, 50, 0.1))).toEqual({ packs: 2, quantity: 100, leftOver: 0 });
    expect(boughtOf(line(5, 50, 5))).toEqual({ packs: 0, quantity: 0, leftOver: 0 });
  });

  it('is what is wanted where it is sold in any quantity', () => {
    expect(boughtOf(line(13.2, null, 3))).toEqual({ packs: null, quantity: 10.2, leftOver: 0 });
  });

  it('is what is charged where whole packs are and the van has none, and never less than is used', () => {
    fc.assert(
      fc.property(anyPriceRequest, (request) => {
        for (const one of priceScheme(request).bill) {
          const bought = boughtOf(one);
          expect(bought.quantity - bought.leftOver).toBeCloseTo(one.quantity - one.fromStock, 6);
          expect(bought.leftOver).toBeGreaterThanOrEqual(0);
          if (one.charge !== 'packs') continue;
          expect(bought.quantity).toBeLessThanOrEqual(one.chargedQuantity);
          expect(boughtOf({ ...one, fromStock: 0 }).quantity).toBe(one.chargedQuantity);
        }
      }),
      { numRuns: 60 },
    );
  });
});
