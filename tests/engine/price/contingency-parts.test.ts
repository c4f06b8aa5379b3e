import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contingencyParts } from '#engine/price/contingency-parts.ts';
import { priceScheme } from '#engine/price/price-scheme.ts';
import { anyPriceRequest } from './price-material.ts';

const all = ['circuits', 'lengths', 'ways', 'boxes', 'floors'] as const;

describe('the parts of a contingency', () => {
  it('share it equally, to a penny', () => {
    expect(contingencyParts(100, ['ways', 'boxes', 'floors'])).toEqual([
      { gap: 'ways', pence: 33 },
      { gap: 'boxes', pence: 34 },
      { gap: 'floors', pence: 33 },
    ]);
  });

  it('are none without a gap', () => {
    expect(contingencyParts(0, [])).toEqual([]);
  });

  it('add up to it, none a penny from its share', () => {
    fc.assert(
      fc.property(fc.nat({ max: 1e7 }), fc.subarray([...all], { minLength: 1 }), (pence, gaps) => {
        const parts = contingencyParts(pence, gaps);
        expect(parts.reduce((sum, part) => sum + part.pence, 0)).toBe(pence);
        for (const part of parts) expect(Math.abs(part.pence - pence / gaps.length)).toBeLessThanOrEqual(1);
      }),
    );
  });

  it('add up to what is charged by the survey, and are none where a person set it', () => {
    fc.assert(
      fc.property(anyPriceRequest, (request) => {
        const price = priceScheme(request);
        const sum = price.contingencyParts.reduce((pence, part) => pence + part.pence, 0);
        expect(sum).toBe(price.contingencySource === 'survey' ? price.totals.contingencyPence : 0);
      }),
    );
  });
});
