import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type PriceRequest, priceScheme } from '#engine/price/price-scheme.ts';
import type { PriceBuildUp } from '#engine/price/totals.ts';
import {
  anyPriceRequest,
  labourTask,
  listedPrice,
  priceRequest,
  smallLibrary,
  takeoffLine,
} from './price-material.ts';

const library = smallLibrary([listedPrice('thing', { pricePence: 5000 })]);
const small = priceRequest(library, {
  takeoff: [takeoffLine('thing', 2)],
  labour: [labourTask('test-circuit', 3, library)],
});

describe('the price of a scheme', () => {
  it('adds materials with mark-up, labour, other sums and contingency, then tax', () => {
    const price = priceScheme({
      ...small,
      terms: { labour: 'typical', vat: 'standard', markupPercent: 20, contingencyPercent: 10, travelMin: 40 },
      sums: ['notification'],
    });
    // 100.00 × 1.2; 60 min at 30.00; 40.00 and 40 min at 30.00; a tenth of 210.00; a fifth of 231.00.
    expect(price.totals).toEqual({
      hours: 1,
      materialsPence: 12_000,
      labourPence: 3000,
      otherPence: 6000,
      contingencyPence: 2100,
      netPence: 23_100,
      vatPence: 4620,
      grossPence: 27_720,
    });
    expect(price.other.map(({ sum, pence }) => [sum, pence])).toEqual([
      ['notification', 4000],
      ['travel', 2000],
    ]);
  });

  it.each([
    ['low', 30],
    ['typical', 60],
    ['high', 90],
  ] as const)('counts labour by the %s norms: %d minutes', (labour, minutes) => {
    const price = priceScheme({ ...small, terms: { labour, vat: 'zero' } });
    expect(price.labourMin).toBe(minutes);
    expect(price.labourLevel).toBe(labour);
  });

  it('has no time for a task without a norm, and says so by the task itself', () => {
    const unknown = labourTask('unheard-of', 3, library);
    expect(unknown.typicalMin).toBeNull();
    expect(priceScheme({ ...small, labour: [unknown] }).totals.labourPence).toBe(0);
  });

  it.each([
    [[], 0],
    [['boxes'], 5],
    [['ways', 'boxes'], 10],
    [['ways', 'boxes', 'floors', 'circuits'], 15],
  ] as const)('sets aside for a survey that leaves %j open %d percent', (gaps, percent) => {
    const price = priceScheme({ ...small, gaps });
    expect(price.contingencyPercent).toBe(percent);
    expect(price.contingencySource).toBe('survey');
  });

  it('takes the contingency of the terms before that of the survey, nought too', () => {
    const terms = { labour: 'typical', vat: 'standard', contingencyPercent: 0 } as const;
    const price = priceScheme({ ...small, terms, gaps: ['ways', 'boxes', 'floors'] });
    expect(price.totals.contingencyPence).toBe(0);
    expect(price.contingencySource).toBe('terms');
    expect(price.surveyGaps).toEqual(['ways', 'boxes', 'floors']);
  });

  it('takes the firm’s terms where the job is silent, and the job’s where it speaks', () => {
    const firm = smallLibrary(library.prices.items, { markupPercent: 50, travelMin: 60 });
    const silent = priceScheme({ ...small, library: firm });
    const speaking = priceScheme({
      ...small,
      library: firm,
      terms: { labour: 'typical', vat: 'standard', marginPercent: 20, travelMin: 0 },
    });
    expect(silent.markupPercent).toBe(50);
    expect(silent.totals.otherPence).toBe(3000);
    expect(speaking.marginPercent).toBe(20);
    expect(speaking.totals.materialsPence).toBe(12_500);
    expect(speaking.totals.otherPence).toBe(0);
  });

  it('tops a small job up to the minimum charge, net and to the penny', () => {
    const terms = { labour: 'typical', vat: 'standard', minimumPence: 20_000 } as const;
    const price = priceScheme({ ...small, terms });
    expect(price.totals.netPence).toBe(20_000);
    expect(price.other).toEqual([
      { sum: 'minimum-charge', description: 'To the minimum charge', pence: 20_000 - 13_000 },
    ]);
  });

  it('lists no top-up for a job at exactly the minimum charge', () => {
    const terms = { labour: 'typical', vat: 'standard', minimumPence: 13_000 } as const;
    expect(priceScheme({ ...small, terms }).other).toEqual([]);
  });

  it('lists a sum that the library does not know at nothing, in words', () => {
    const price = priceScheme({ ...small, sums: ['scaffold'] });
    expect(price.other[0]).toMatchObject({ sum: 'scaffold', pence: 0 });
    expect(price.other[0]?.description).toContain('not priced');
  });
});

const moneyOf = ({ totals, bill, other, materialsCostPence }: PriceBuildUp): readonly number[] => {
  const { hours: _hours, ...pence } = totals;
  return [
    ...Object.values(pence),
    ...bill.map(({ costPence }) => costPence),
    ...other.map((line) => line.pence),
    materialsCostPence,
  ];
};

/** Asserts a law of any price; fast-check prints the seed of one that breaks it. */
function always(law: (price: PriceBuildUp, request: PriceRequest) => void): void {
  fc.assert(
    fc.property(anyPriceRequest, (request) => law(priceScheme(request), request)),
    { numRuns: 300 },
  );
}

describe('any price', () => {
  it('is in whole pence, none below nought', () => {
    always((price) => {
      expect(moneyOf(price).filter((pence) => !Number.isSafeInteger(pence) || pence < 0)).toEqual([]);
    });
  });

  it('has shares that add up', () => {
    always(({ totals, bill, other, materialsCostPence }) => {
      const { materialsPence, labourPence, otherPence, contingencyPence } = totals;
      expect(materialsPence + labourPence + otherPence + contingencyPence).toBe(totals.netPence);
      expect(totals.netPence + totals.vatPence).toBe(totals.grossPence);
      expect(bill.reduce((sum, line) => sum + line.costPence, 0)).toBe(materialsCostPence);
      expect(other.reduce((sum, line) => sum + line.pence, 0)).toBe(otherPence);
    });
  });

  it('charges tax within half a penny of its rate', () => {
    always(({ totals, vatPercent }) => {
      expect(Math.abs(totals.vatPence - (totals.netPence * vatPercent) / 100)).toBeLessThanOrEqual(
        0.5 + 1e-6,
      );
    });
  });

  it('never charges less than is used', () => {
    always(({ bill }) => {
      const short = bill.filter((line) => line.chargedQuantity < line.quantity - 1e-6);
      expect(short).toEqual([]);
    });
  });

  it('never falls when a quantity, a price, a rate or the mark-up rises', () => {
    always((price, request) => {
      const terms = { ...request.terms };
      delete terms.marginPercent;
      const base = priceScheme({ ...request, terms: { ...terms, markupPercent: 10 } });
      const dearer: PriceRequest = {
        ...request,
        terms: { ...terms, markupPercent: 10.1 },
        takeoff: request.takeoff.map((line) => ({ ...line, quantity: line.quantity + 1 })),
        library: {
          ...request.library,
          norms: { ...request.library.norms, ratePencePerHour: price.ratePencePerHour + 1 },
        },
      };
      expect(priceScheme(dearer).totals.grossPence).toBeGreaterThanOrEqual(base.totals.grossPence);
    });
  });
});
