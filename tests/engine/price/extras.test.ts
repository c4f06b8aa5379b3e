import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { labelsOf } from '#drawing/label-of.ts';
import { estimate } from '#engine/estimate.ts';
import { extraTasks } from '#engine/labour/extra-work.ts';
import { minutesPence } from '#engine/price/minutes-price.ts';
import { priceEnds } from '#engine/price/price-range.ts';
import { priceScheme } from '#engine/price/price-scheme.ts';
import type { Extra } from '#model/extra.ts';
import type { Job } from '#model/job.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { anyPriceRequest, labourTask, priceRequest, smallLibrary } from './price-material.ts';

const SEED = 20_261_127;
const when = { date: '2026-11-27', revision: 1 };
const library = demoLibrary();
const plain = demoJob('saltglass-row');
const joist: Extra = { id: 'x1', words: 'Double the rotten joist', typicalMin: 75, materialsPence: 1849 };

const withExtras = (extras: readonly Extra[]): Job => ({ ...plain, extras: [...extras] });
const estimated = (job: Job) => estimate(job, library, when, { depth: 'live' });

/** Half up in whole pence, of a fraction of whole numbers: an oracle that shares nothing with the engine. */
const halfUp = (num: bigint, den: bigint): bigint => (2n * num + den) / (2n * den);

const anyExtra = fc.record({
  hundredths: fc.integer({ min: 1, max: 100_000 }),
  materialsPence: fc.integer({ min: 0, max: 100_000 }),
});

describe('work that is not on the drawing', () => {
  it(`adds its minutes at the rate, and its pence through mark-up and VAT, and nothing else (seed ${SEED})`, () => {
    const small = smallLibrary([]);
    fc.assert(
      fc.property(
        fc.array(anyExtra, { minLength: 1, maxLength: 4 }),
        fc.integer({ min: 0, max: 9000 }),
        fc.integer({ min: 0, max: 9900 }),
        fc.constantFrom('standard' as const, 'reduced' as const, 'zero' as const),
        (any, rate, markupHundredths, vat) => {
          const extras = any.map(
            ({ hundredths, materialsPence }, index): Extra => ({
              id: `x${index}`,
              words: 'Something',
              typicalMin: hundredths / 100,
              materialsPence,
            }),
          );
          const { totals } = priceScheme(
            priceRequest(
              { ...small, norms: { ...small.norms, ratePencePerHour: rate } },
              {
                extras,
                labour: extraTasks(extras),
                terms: {
                  labour: 'typical',
                  vat,
                  markupPercent: markupHundredths / 100,
                  contingencyPercent: 0,
                },
              },
            ),
          );
          const minutes = any.reduce((sum, { hundredths }) => sum + BigInt(hundredths), 0n);
          const cost = any.reduce((sum, one) => sum + BigInt(one.materialsPence), 0n);
          const labour = halfUp(minutes * BigInt(rate), 6000n);
          const materials = halfUp(cost * (10_000n + BigInt(markupHundredths)), 10_000n);
          const net = labour + materials;
          const percent = { standard: 20n, reduced: 5n, zero: 0n }[vat];
          expect(totals.labourPence).toBe(Number(labour));
          expect(totals.materialsPence).toBe(Number(materials));
          expect(totals.netPence).toBe(Number(net));
          expect(totals.grossPence).toBe(Number(net + halfUp(net * percent, 100n)));
        },
      ),
      { seed: SEED, numRuns: 200 },
    );
  });

  it('costs a firm that is not registered what it pays over the counter', () => {
    const request = priceRequest(smallLibrary([]), {
      extras: [joist],
      terms: { labour: 'typical', vat: 'not-registered', contingencyPercent: 0 },
    });
    // 18.49 and a fifth of it are 22.188.
    expect(priceScheme(request).totals.grossPence).toBe(2219);
  });

  it('comes in beside all else without changing it, and is gone without a trace', () => {
    const [before, after] = [estimated(plain), estimated(withExtras([joist]))];
    for (const [index, scheme] of after.schemes.entries()) {
      const was = before.schemes[index];
      expect(scheme.takeoff).toEqual(was?.takeoff);
      expect(scheme.purchase).toEqual(was?.purchase);
      expect(scheme.runs).toEqual(was?.runs);
      expect(scheme.labour.slice(0, -1)).toEqual(was?.labour);
      expect(scheme.price.bill.slice(0, -1)).toEqual(was?.price.bill);
      expect(scheme.price.labourMin - (was?.price.labourMin ?? 0)).toBeCloseTo(75, 9);
      expect(scheme.price.materialsCostPence - (was?.price.materialsCostPence ?? 0)).toBe(1849);
    }
    expect(JSON.stringify(estimated({ ...plain }))).toBe(JSON.stringify(before));
    const { extras: _gone, ...restored } = withExtras([joist]);
    expect(JSON.stringify(estimated(restored))).toBe(JSON.stringify(before));
    // An empty list is a job without any, but for the job file itself, which the estimate carries along.
    const emptied = estimated(withExtras([])).schemes.map(({ worked: _, ...scheme }) => scheme);
    expect(emptied).toEqual(before.schemes.map(({ worked: _, ...scheme }) => scheme));
  });

  it('keeps its own minutes, whatever makes the rest of the job slower', () => {
    const job = withExtras([joist]);
    const slow = { ...job, terms: { ...job.terms, multipliers: ['alone', 'fragile-finishes'] } };
    const own = estimated(slow).schemes[0]?.labour.at(-1);
    expect(own).toMatchObject({ description: joist.words, stage: 'first-fix', typicalMin: 75, lowMin: 75 });
  });

  it('is done with the stage of the task it was taken from', () => {
    const fault: Extra = { id: 'x', words: 'Find the fault', task: 'fault-finding', typicalMin: 60 };
    expect(extraTasks([fault])[0]?.stage).toBe('before');
  });

  it('takes one figure at all levels, and no end on the wrong side of it', () => {
    const minutesOf = (given: Partial<Extra>) => {
      const [task] = extraTasks([{ id: 'x', words: 'It', ...given }]);
      return task === undefined ? null : [task.lowMin, task.typicalMin, task.highMin];
    };
    expect(minutesOf({ typicalMin: 40 })).toEqual([40, 40, 40]);
    expect(minutesOf({ lowMin: 20, typicalMin: 40, highMin: 90 })).toEqual([20, 40, 90]);
    expect(minutesOf({ lowMin: 50, typicalMin: 40, highMin: 30 })).toEqual([40, 40, 40]);
    expect(minutesOf({ materialsPence: 100 })).toBeNull();
  });

  it(`keeps every range in order: low, typical, high (seed ${SEED})`, () => {
    fc.assert(
      fc.property(
        anyPriceRequest,
        fc.array(fc.nat({ max: 900 }), { minLength: 3, maxLength: 3 }),
        (any, minutes) => {
          const [lowMin = 0, typicalMin = 0, highMin = 0] = minutes;
          const extras: readonly Extra[] = [{ ...joist, lowMin, typicalMin, highMin }];
          const request = { ...any, extras, labour: [...any.labour, ...extraTasks(extras)] };
          const { lowPence, highPence } = priceEnds(request);
          const { grossPence } = priceScheme(request).totals;
          expect(lowPence).toBeLessThanOrEqual(grossPence);
          expect(highPence).toBeGreaterThanOrEqual(grossPence);
        },
      ),
      { seed: SEED, numRuns: 150 },
    );
  });

  it('is caused by where it is, else by itself, and both have a name', () => {
    const at = plain.points[0];
    const [scheme] = estimated(withExtras([joist, { ...joist, id: 'x2', at: at?.id ?? '' }])).schemes;
    if (scheme === undefined || at === undefined) throw new Error('The job has a scheme and points.');
    const causes = scheme.price.bill.slice(-2).flatMap((line) => line.causes);
    expect(causes.map(labelsOf(scheme.worked))).toEqual(['Work not on the drawing', at.label]);
  });
});

describe('parking', () => {
  const small = smallLibrary([], { travelMin: 0 });
  const parked = (circuits: number, parking?: 'each-visit' | number) =>
    priceScheme(
      priceRequest(small, {
        labour: [labourTask('test-circuit', circuits, small)],
        terms: { labour: 'typical', vat: 'standard', ...(parking === undefined ? {} : { parking }) },
      }),
    );
  const lineOf = (price: ReturnType<typeof parked>) => price.other.find(({ sum }) => sum === 'parking');

  it('is charged for each day on site, so that it follows the hours', () => {
    // 24 × 20 min are 8 h; one circuit more is a second day, and the library asks 5.00 a day.
    expect(lineOf(parked(24, 'each-visit'))).toMatchObject({
      description: 'Parking, 1 day at £5.00',
      pence: 500,
    });
    expect(lineOf(parked(25, 'each-visit'))).toMatchObject({
      description: 'Parking, 2 days at £5.00',
      pence: 1000,
    });
  });

  it('is in what some minutes more cost, where they begin another day', () => {
    // 20 min at 30.00 an hour and a day's parking of 5.00 are 15.00 net, 18.00 with VAT.
    expect(minutesPence(20, parked(24, 'each-visit'))).toBe(1800);
    expect(minutesPence(20, parked(24, 'each-visit'))).toBe(
      parked(25, 'each-visit').totals.grossPence - parked(24, 'each-visit').totals.grossPence,
    );
    expect(minutesPence(20, parked(24, 2))).toBe(1200);
  });

  it('is charged for as many days as are said, and for none where nobody says so', () => {
    expect(lineOf(parked(24, 3))?.pence).toBe(1500);
    expect(lineOf(parked(24, 0))).toBeUndefined();
    expect(lineOf(parked(24))).toBeUndefined();
  });

  it('is the firm’s habit where the job says nothing, and says where the library has no charge', () => {
    const bare = {
      ...small,
      norms: { ...small.norms, sums: [] },
      terms: { ...small.terms, parking: 'each-visit' as const },
    };
    const price = priceScheme(priceRequest(bare));
    expect(lineOf(price)).toMatchObject({
      description: 'Parking, 1 day: not priced, the library has no such sum',
      pence: 0,
    });
  });
});
