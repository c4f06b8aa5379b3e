import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { minutesPence } from '#engine/price/minutes-price.ts';
import { priceEnds } from '#engine/price/price-range.ts';
import { priceScheme } from '#engine/price/price-scheme.ts';
import { dayHoursOf, daysOf, visitsOf } from '#engine/price/visits.ts';
import { labourTask, priceRequest, smallLibrary } from './price-material.ts';

const library = smallLibrary([], { travelMin: 30 });

/** So many circuits at 20 minutes each. */
const worked = (circuits: number, terms = {}) =>
  priceScheme(
    priceRequest(library, {
      labour: [labourTask('test-circuit', circuits, library)],
      terms: { labour: 'typical', vat: 'standard', ...terms },
    }),
  );

const travelOf = (price: ReturnType<typeof worked>) => price.other.find(({ sum }) => sum === 'travel');

describe('how often a job is travelled to', () => {
  it.each([
    [0, 8, 1],
    [1, 8, 1],
    [480, 8, 1],
    // 8.00 h to the hundredth, as it is shown.
    [480.2, 8, 1],
    [481, 8, 2],
    [960, 8, 2],
    [961, 8, 3],
    [450, 7.5, 1],
    [451, 7.5, 2],
    [-30, 8, 1],
  ])('%d min at %d h a day are %d days', (minutes, dayHours, days) => {
    expect(daysOf(minutes, dayHours)).toBe(days);
  });

  it('is once a day of the work, and its travel with it', () => {
    // 24 × 20 min are 8 h; one circuit more is a second day. 30 min at 30.00 an hour are 15.00.
    expect(worked(24).visits.count).toBe(1);
    expect(travelOf(worked(24))).toMatchObject({ description: 'Travel, 30 min', pence: 1500 });
    expect(worked(25).visits.count).toBe(2);
    expect(travelOf(worked(25))).toMatchObject({
      description: 'Travel, 2 × 30 min: 2 days of 8 h',
      pence: 3000,
    });
  });

  it('goes by the working day that the job, the firm or its overhead says', () => {
    const { norms } = library;
    const byDay = { ...norms, overhead: { pencePerDay: 4000, hoursPerDay: 7 } };
    expect(dayHoursOf({ dayHours: 6 }, byDay)).toBe(6);
    expect(dayHoursOf({ dayHours: null }, byDay)).toBe(7);
    expect(dayHoursOf({ dayHours: null }, { ...norms, overhead: { percent: 10 } })).toBe(8);
    expect(dayHoursOf({ dayHours: null }, norms)).toBe(8);
    expect(worked(24, { dayHours: 4 }).visits.count).toBe(2);
  });

  it('adds each time that plaster is come back for, whose minutes fall on no day of work', () => {
    const labour = [
      { task: 'fill-chase', quantity: 9, minutes: 480 },
      { task: 'return-visit', quantity: 1, minutes: 30 },
    ];
    expect(visitsOf(labour, 510, 8)).toEqual({ dayHours: 8, workMin: 480, days: 1, returns: 1, count: 2 });
    const none = labour.map((one) => ({ ...one, quantity: 0, minutes: 0 }));
    expect(visitsOf(none, 510, 8)).toMatchObject({ workMin: 510, days: 2, returns: 0, count: 2 });
  });

  it('is as many days as taking a day of work off at a time counts', () => {
    const counted = (minutes: number, dayMin: number): number =>
      minutes <= dayMin ? 1 : 1 + counted(minutes - dayMin, dayMin);
    fc.assert(
      fc.property(fc.nat({ max: 9000 }), fc.constantFrom(4, 6, 7, 7.5, 8, 10), (minutes, dayHours) => {
        expect(daysOf(minutes, dayHours)).toBe(counted(minutes, dayHours * 60));
      }),
    );
  });

  it('brings the travel of a day more into the high end, and into what the pace accounts for', () => {
    const task = labourTask('test-circuit', 24, library);
    const request = priceRequest(library, { labour: [task] });
    const price = priceScheme(request);
    // 24 × 10 min either way: 4 h and 12 h of work, so a second day at the high end.
    expect(priceEnds(request)).toEqual({ lowPence: (12_000 + 1500) * 1.2, highPence: (36_000 + 3000) * 1.2 });
    expect(minutesPence(240, price)).toBe((12_000 + 1500) * 1.2);
    expect(minutesPence(-240, price)).toBe(-12_000 * 1.2);
  });
});
