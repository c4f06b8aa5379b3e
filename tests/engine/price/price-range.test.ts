import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { priceEnds } from '#engine/price/price-range.ts';
import { type PriceRequest, priceScheme } from '#engine/price/price-scheme.ts';
import {
  anyPriceRequest,
  labourTask,
  listedPrice,
  priceRequest,
  smallLibrary,
  takeoffLine,
} from './price-material.ts';

const library = smallLibrary([listedPrice('thing')]);

const priceRange = (request: PriceRequest) => ({
  ...priceEnds(request),
  typicalPence: priceScheme(request).totals.grossPence,
});

describe('the range of a price', () => {
  it('takes low and high quantities at the agreed pace and lets the pace stray, tax included', () => {
    const task = { ...labourTask('test-circuit', 2, library), lowQuantity: 1, highQuantity: 4 };
    const request = priceRequest(library, {
      takeoff: [takeoffLine('thing', 10, { lowQuantity: 5, highQuantity: 20 })],
      labour: [task],
    });
    // By the norm 10, 20 and 30 min each: one, two and four pieces at 20 min, then 20 min either way by pace.
    // 5.00 + 0 min at 30.00; 10.00 + 40 min; 20.00 + 100 min; a fifth on top.
    expect(priceRange(request)).toEqual({ lowPence: 600, typicalPence: 3600, highPence: 8400 });
  });

  it('adds the stray of independent tasks as squares', () => {
    const three = labourTask('test-circuit', 3, library);
    const four = { ...labourTask('test-circuit', 4, library), task: 'test-circuit' };
    const alone = priceRange(priceRequest(library, { labour: [three] }));
    const both = priceRange(priceRequest(library, { labour: [three, four] }));
    // 30 min and 40 min stray to 50 min together, at 30.00 an hour with a fifth on top.
    expect(alone.highPence - alone.typicalPence).toBe(1800);
    expect(both.highPence - both.typicalPence).toBe(3000);
  });

  it('counts work that may turn out to be needed at its high end only', () => {
    const task = { ...labourTask('test-circuit', 0, library), highQuantity: 1 };
    const range = priceRange(priceRequest(library, { labour: [task] }));
    expect(range).toEqual({ lowPence: 0, typicalPence: 0, highPence: 1200 });
  });

  it('always holds the price between its ends', () => {
    fc.assert(
      fc.property(anyPriceRequest, (request) => {
        const { lowPence, typicalPence, highPence } = priceRange(request);
        expect(lowPence).toBeLessThanOrEqual(typicalPence);
        expect(typicalPence).toBeLessThanOrEqual(highPence);
      }),
    );
  });
});
