import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { priceRange } from '#engine/price/price-range.ts';
import { priceScheme } from '#engine/price/price-scheme.ts';
import {
  anyPriceRequest,
  labourTask,
  listedPrice,
  priceRequest,
  smallLibrary,
  takeoffLine,
} from './price-material.ts';

const library = smallLibrary([listedPrice('thing')]);

describe('the range of a price', () => {
  it('takes low quantities at low norms and high quantities at high norms, tax included', () => {
    const task = { ...labourTask('test-circuit', 2, library), lowQuantity: 1, highQuantity: 4 };
    const request = priceRequest(library, {
      takeoff: [takeoffLine('thing', 10, { lowQuantity: 5, highQuantity: 20 })],
      labour: [task],
    });
    // 5.00 + 10 min at 30.00; 10.00 + 40 min; 20.00 + 120 min; a fifth on top.
    expect(priceRange(request)).toEqual({ lowPence: 1200, typicalPence: 3600, highPence: 9600 });
  });

  it('counts work that may turn out to be needed at its high end only', () => {
    const task = { ...labourTask('test-circuit', 0, library), highQuantity: 1 };
    const range = priceRange(priceRequest(library, { labour: [task] }));
    expect(range).toEqual({ lowPence: 0, typicalPence: 0, highPence: 1800 });
  });

  it('always holds the price between its ends', () => {
    fc.assert(
      fc.property(anyPriceRequest, (request) => {
        const { lowPence, typicalPence, highPence } = priceRange(request);
        expect(typicalPence).toBe(priceScheme(request).totals.grossPence);
        expect(lowPence).toBeLessThanOrEqual(typicalPence);
        expect(typicalPence).toBeLessThanOrEqual(highPence);
      }),
    );
  });
});
