import { describe, expect, it } from 'vitest';
import { agreedTerms } from '#engine/price/agreed-terms.ts';
import { priceScheme } from '#engine/price/price-scheme.ts';
import type { Terms } from '#model/job.ts';
import { labourTask, priceRequest, smallLibrary } from './price-material.ts';

const terms = (vat: Terms['vat']): Terms => ({ labour: 'typical', vat });

describe('the terms that a job is priced on', () => {
  it.each(['standard', 'reduced', 'zero', 'not-registered'] as const)(
    'charge no VAT by a firm that is not registered, whatever the job says: %s',
    (vat) => {
      expect(agreedTerms(terms(vat), terms('not-registered')).vat).toBe('not-registered');
    },
  );

  it.each(['standard', 'reduced', 'zero', 'not-registered'] as const)(
    'charge by the job’s own word where the firm is registered: %s',
    (vat) => {
      expect(agreedTerms(terms(vat), terms('standard')).vat).toBe(vat);
    },
  );

  it('take the tax out of a price, and its recovery with it', () => {
    const registered = smallLibrary([]);
    const library = { ...registered, terms: { ...registered.terms, vat: 'not-registered' as const } };
    const request = priceRequest(library, { labour: [labourTask('test-circuit', 3, library)] });
    const { totals, vat, vatPercent } = priceScheme(request);
    expect({ vat, vatPercent }).toEqual({ vat: 'not-registered', vatPercent: 0 });
    expect(totals.vatPence).toBe(0);
    expect(totals.grossPence).toBe(totals.netPence);
  });
});
