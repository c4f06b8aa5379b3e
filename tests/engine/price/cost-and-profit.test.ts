import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { minutesPence } from '#engine/price/minutes-price.ts';
import { hourPence } from '#engine/price/overhead.ts';
import { priceScheme } from '#engine/price/price-scheme.ts';
import type { PriceBuildUp } from '#engine/price/totals.ts';
import type { Terms } from '#model/job.ts';
import type { Norms } from '#model/library.ts';
import {
  anyPriceRequest,
  labourTask,
  listedPrice,
  priceRequest,
  smallLibrary,
  takeoffLine,
} from './price-material.ts';

/** £100 of materials, one hour at £30, half an hour of travel. */
function priced(norms: Partial<Norms>, terms: Partial<Terms> = {}): PriceBuildUp {
  const plain = smallLibrary([listedPrice('cable')]);
  const library = { ...plain, norms: { ...plain.norms, ...norms } };
  return priceScheme(
    priceRequest(library, {
      takeoff: [takeoffLine('cable', 100)],
      labour: [labourTask('test-circuit', 3, library)],
      terms: { labour: 'typical', vat: 'standard', markupPercent: 20, travelMin: 30, ...terms },
    }),
  );
}

const lines = ({ other }: PriceBuildUp) => other.map(({ sum, pence }) => [sum, pence]);
const cost = { rateBasis: 'cost' } as const;

describe('an hourly rate that is what the customer is charged', () => {
  it('is what a library without a word of it means: no penny moves', () => {
    const { totals, ...rest } = priced({});
    expect(priced({ rateBasis: 'charged' })).toEqual({ totals, ...rest });
    expect(totals).toMatchObject({ materialsPence: 12_000, labourPence: 3000, otherPence: 1500 });
  });

  it('bears its overhead: a percentage falls on materials alone, a sum a day on nothing, and both say why', () => {
    const percent = priced({ overhead: { percent: 7 } });
    expect(lines(percent)).toEqual([
      ['travel', 1500],
      ['overhead', 700],
    ]);
    const day = priced({ overhead: { pencePerDay: 4286, hoursPerDay: 8 } });
    expect(lines(day)).toEqual([['travel', 1500]]);
    for (const { refused } of [percent, day])
      expect(refused).toEqual([expect.stringContaining('No overhead is put on labour')]);
  });

  it('has its profit in it: a mark-up on all is put on materials, and says why', () => {
    const price = priced({}, { profitOn: 'all' });
    expect(price).toMatchObject({ profitOn: 'materials', totals: priced({}).totals });
    expect(price.refused).toEqual([expect.stringContaining('No mark-up or margin is put on labour')]);
  });

  it('tells no cost and no margin of the job: nobody knows what the hour costs', () => {
    expect(priced({})).toMatchObject({ costPence: null, jobMarginPercent: null });
  });
});

describe('an hourly rate that is what the hour costs the firm', () => {
  it('takes overhead on materials, labour and travel, then the mark-up on all', () => {
    const price = priced({ ...cost, overhead: { percent: 10 } });
    // £100 + £30 + £15 = £145; £14.50 of overhead; 20 % of £159.50 is £31.90.
    expect(lines(price)).toEqual([
      ['travel', 1500],
      ['overhead', 1450],
      ['profit', 3190],
    ]);
    expect(price.totals).toMatchObject({ materialsPence: 10_000, labourPence: 3000, netPence: 19_140 });
    expect(price.refused).toEqual([]);
  });

  it('takes so much a day by the hours of work and of travel', () => {
    const price = priced({ ...cost, overhead: { pencePerDay: 8000, hoursPerDay: 8 } });
    expect(price.overheadPence).toBe(1500);
  });

  it('keeps to materials where the terms say so', () => {
    const price = priced(cost, { profitOn: 'materials' });
    expect(price.totals).toMatchObject({ materialsPence: 12_000, otherPence: 1500 });
  });

  it('tells what the job costs, and what is left of the net without its contingency', () => {
    const { markupPercent: _none, ...terms } = {
      markupPercent: 0,
      marginPercent: 25,
      contingencyPercent: 10,
    };
    const plain = smallLibrary([listedPrice('cable')]);
    const library = { ...plain, norms: { ...plain.norms, ...cost } };
    const price = priceScheme(
      priceRequest(library, {
        takeoff: [takeoffLine('cable', 90)],
        terms: { labour: 'typical', vat: 'standard', ...terms },
      }),
    );
    expect(price).toMatchObject({ costPence: 9000, profitPence: 3000, jobMarginPercent: 25 });
    expect(price.totals.contingencyPence).toBe(1200);
  });

  it('leaves nothing without a mark-up, and says so', () => {
    expect(priced(cost, { markupPercent: 0 }).jobMarginPercent).toBe(0);
  });

  it('weighs ways by the hour with the overhead that falls on it, a percentage being on all alike', () => {
    const rate = { ratePencePerHour: 3000 };
    const overhead = { pencePerDay: 8000, hoursPerDay: 8 };
    expect(hourPence({ ...rate, ...cost, overhead })).toBe(4000);
    expect(hourPence({ ...rate, overhead })).toBe(3000);
    expect(hourPence({ ...rate, ...cost, overhead: { percent: 10 } })).toBe(3000);
  });
});

describe('call-out and deposit', () => {
  it('charges a call-out once, without overhead and profit', () => {
    const without = priced({ ...cost, overhead: { percent: 10 } });
    const price = priced({ ...cost, overhead: { percent: 10 } }, { callOutPence: 4500 });
    expect(price.totals.netPence - without.totals.netPence).toBe(4500);
    expect(price.costPence).toBe(without.costPence);
  });

  it('asks for a deposit of the sum with VAT, in percent before pounds, and never for more than it', () => {
    const { totals } = priced({});
    expect(priced({}, { depositPercent: 33 }).depositPence).toBe(Math.round(totals.grossPence * 0.33));
    expect(priced({}, { depositPence: 5000 }).depositPence).toBe(5000);
    expect(priced({}, { depositPence: 10_000_000 }).depositPence).toBe(totals.grossPence);
    expect(priced({}, { depositPercent: 10, depositPence: 5000 }).depositPence).toBe(1980);
    for (const none of [{}, { depositPercent: 0 }, { depositPence: 0 }])
      expect(priced({}, none).depositPence).toBeNull();
  });
});

describe('any price with cost and profit', () => {
  const always = (law: (price: PriceBuildUp) => void) =>
    fc.assert(
      fc.property(anyPriceRequest, (request) => law(priceScheme(request))),
      { numRuns: 500 },
    );
  const penceOf = (price: PriceBuildUp, sum: string) =>
    price.other.find((line) => line.sum === sum)?.pence ?? 0;

  it('adds up to the net: cost, overhead, profit and all beside them', () => {
    always((price) => {
      const { totals, materialsCostPence, profitPence } = price;
      const besides = price.other
        .filter(({ sum }) => sum !== 'profit')
        .reduce((sum, { pence }) => sum + pence, 0);
      expect(materialsCostPence + totals.labourPence + besides + profitPence + totals.contingencyPence).toBe(
        totals.netPence,
      );
    });
  });

  it('has the margin that it tells, to a penny, on what it is put on', () => {
    always((price) => {
      const base =
        price.profitOn === 'materials'
          ? price.materialsCostPence
          : price.materialsCostPence +
            price.totals.labourPence +
            penceOf(price, 'travel') +
            price.overheadPence;
      const { marginPercent, markupPercent, profitPence } = price;
      const share =
        marginPercent === null ? (base * markupPercent) / 100 : ((base + profitPence) * marginPercent) / 100;
      // Half a penny of rounding, and of that the margin.
      expect(Math.abs(profitPence - share)).toBeLessThanOrEqual(1);
    });
  });

  it('leaves of the net what it says, where the cost is known', () => {
    always(({ costPence, jobMarginPercent, totals, rateBasis }) => {
      expect(costPence === null).toBe(rateBasis === 'charged');
      if (costPence === null || jobMarginPercent === null) return;
      const soldFor = totals.netPence - totals.contingencyPence;
      expect((soldFor * (100 - jobMarginPercent)) / 100).toBeCloseTo(costPence, 4);
    });
  });

  it('prices an hour more as the hour alone, to the pence of rounding', () => {
    fc.assert(
      fc.property(anyPriceRequest, ({ labour: _labour, stock: _stock, takeoff: _takeoff, ...request }) => {
        const bare = {
          ...request,
          takeoff: [],
          labour: [],
          stock: [],
          terms: { ...request.terms, minimumPence: 0 },
        };
        const before = priceScheme({ ...bare, strayMin: 60 });
        const after = priceScheme({ ...bare, strayMin: 120 });
        const more = after.totals.grossPence - before.totals.grossPence;
        expect(Math.abs(more - minutesPence(60, before))).toBeLessThanOrEqual(6);
      }),
    );
  });
});
