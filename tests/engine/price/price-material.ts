import fc from 'fast-check';
import { knownTasks } from '#engine/labour/known-tasks.ts';
import type { LabourTask } from '#engine/labour/task.ts';
import { taskMinutes } from '#engine/labour/task-minutes.ts';
import type { PriceRequest } from '#engine/price/price-scheme.ts';
import type { TakeoffLine } from '#engine/takeoff/line.ts';
import type { Terms } from '#model/job.ts';
import type { Library, Price } from '#model/library.ts';

/** A line of a take-off that a test speaks of. */
export function takeoffLine(item: string, quantity: number, spread: Partial<TakeoffLine> = {}): TakeoffLine {
  return {
    item,
    description: `Description of ${item}`,
    group: 'sundries',
    unit: 'each',
    measured: quantity,
    wastePercent: 0,
    quantity,
    lowQuantity: quantity,
    highQuantity: quantity,
    pieces: [],
    causes: ['p1'],
    ...spread,
  };
}

/** A price that a test speaks of: any number, at 100 pence each. */
export function listedPrice(item: string, spread: Partial<Price> = {}): Price {
  return { item, unit: 'each', pricePence: 100, perQuantity: 1, charge: 'used', ...spread };
}

/** A library with one norm (`test-circuit`, 10/20/30 minutes), £30 an hour and the sums `notification` and `parking`. */
export function smallLibrary(items: readonly Price[], terms: Partial<Terms> = {}): Library {
  return {
    firm: { name: 'An invented firm', address: [], contact: 'nobody' },
    prices: { source: 'invented', date: '2026-11-01', vat: 'excluded', items: [...items] },
    norms: {
      source: 'invented',
      ratePencePerHour: 3000,
      tasks: [{ task: 'test-circuit', unit: 'circuit', lowMin: 10, typicalMin: 20, highMin: 30 }],
      sums: [
        { sum: 'notification', pence: 4000 },
        { sum: 'parking', pence: 500 },
      ],
      waste: { cable: 5, containment: 10, fixings: 15, fillers: 20 },
    },
    limits: {},
    terms: { labour: 'typical', vat: 'standard', ...terms },
  };
}

/** A task that a test speaks of, with minutes by the library's norms. */
export function labourTask(task: string, quantity: number, library: Library): LabourTask {
  return {
    task,
    description: `Description of ${task}`,
    stage: 'test',
    quantity,
    lowQuantity: quantity,
    highQuantity: quantity,
    unit: 'circuit',
    ...taskMinutes(task, quantity, library.norms),
    causes: ['c1'],
  };
}

/** Everything that a price is made of; what a test does not name is empty, and no contingency. */
export function priceRequest(library: Library, spread: Partial<PriceRequest> = {}): PriceRequest {
  return {
    takeoff: [],
    labour: [],
    library,
    terms: { labour: 'typical', vat: 'standard' },
    stock: [],
    sums: [],
    gaps: [],
    ...spread,
  };
}

const tenths = (most: number) => fc.integer({ min: 0, max: most * 10 }).map((steps) => steps / 10);
const hundredths = (most: number) => fc.integer({ min: 0, max: most * 100 }).map((steps) => steps / 100);

const anyPrice = fc.record({
  pricePence: fc.integer({ min: 0, max: 20_000 }),
  perQuantity: fc.constantFrom(1, 3, 5, 10, 25, 50, 100),
  packQuantity: fc.option(fc.constantFrom(0.5, 1, 3, 5, 10, 25, 100), { nil: undefined }),
  charge: fc.constantFrom('packs' as const, 'used' as const),
});

const anyLine = fc
  .record({ low: tenths(30), more: tenths(10), most: tenths(20), price: anyPrice, stock: tenths(15) })
  .map(({ low, more, most, price, stock }) => {
    const sum = (...parts: number[]) => Math.round(parts.reduce((a, b) => a + b, 0) * 10) / 10;
    return { low, quantity: sum(low, more), high: sum(low, more, most), price, stock };
  });

const anyOverhead = fc.oneof(
  fc.constant({}),
  hundredths(40).map((percent) => ({ overhead: { percent } })),
  fc
    .record({ pencePerDay: fc.nat({ max: 20_000 }), hoursPerDay: fc.constantFrom(6, 7.5, 8) })
    .map((overhead) => ({ overhead })),
);

const anyTerms: fc.Arbitrary<Terms> = fc
  .record({
    labour: fc.constantFrom('low' as const, 'typical' as const, 'high' as const),
    vat: fc.constantFrom('standard' as const, 'reduced' as const, 'zero' as const, 'not-registered' as const),
    profit: fc.oneof(
      hundredths(80).map((markupPercent) => ({ markupPercent })),
      hundredths(60).map((marginPercent) => ({ marginPercent })),
      fc.constant({}),
    ),
    contingency: fc.option(fc.constantFrom(0, 2.5, 5, 12.5), { nil: null }),
    travelMin: fc.integer({ min: 0, max: 120 }),
    minimumPence: fc.constantFrom(0, 9000, 40_000),
    profitOn: fc.constantFrom({}, { profitOn: 'materials' as const }, { profitOn: 'all' as const }),
    callOutPence: fc.constantFrom(0, 4500),
    deposit: fc.oneof(
      fc.constant({}),
      hundredths(100).map((depositPercent) => ({ depositPercent })),
      fc.nat({ max: 60_000 }).map((depositPence) => ({ depositPence })),
    ),
  })
  .map(({ profit, contingency, profitOn, deposit, ...terms }) => ({
    ...terms,
    ...profit,
    ...profitOn,
    ...deposit,
    ...(contingency === null ? {} : { contingencyPercent: contingency }),
  }));

/** Prices of any kind: some items not listed, some norms missing, lists with and without tax. */
export const anyPriceRequest: fc.Arbitrary<PriceRequest> = fc
  .record({
    lines: fc.array(anyLine, { maxLength: 12 }),
    unlisted: fc.nat({ max: 12 }),
    norms: fc.array(fc.tuple(tenths(40), tenths(40), tenths(40)), { minLength: 1, maxLength: 5 }),
    quantities: fc.array(fc.tuple(tenths(10), tenths(10), tenths(10)), { maxLength: 5 }),
    listVat: fc.constantFrom('excluded' as const, 'included' as const),
    rate: fc.integer({ min: 0, max: 9000 }),
    basis: fc.constantFrom({}, { rateBasis: 'charged' as const }, { rateBasis: 'cost' as const }),
    overhead: anyOverhead,
    terms: anyTerms,
    sums: fc.subarray(['notification', 'parking', 'scaffold']),
    gaps: fc.subarray(['circuits', 'lengths', 'ways', 'boxes', 'floors'] as const),
  })
  .map((any) => {
    const prices = any.lines.flatMap(({ price: { packQuantity, ...price } }, index) =>
      index === any.unlisted
        ? []
        : [
            listedPrice(`item-${index}`, {
              ...price,
              ...(packQuantity === undefined ? {} : { packQuantity }),
            }),
          ],
    );
    const plain = smallLibrary(prices);
    const library: Library = {
      ...plain,
      prices: { ...plain.prices, vat: any.listVat },
      norms: {
        ...plain.norms,
        ratePencePerHour: any.rate,
        ...any.basis,
        ...any.overhead,
        tasks: any.norms.map((minutes, index) => {
          const [lowMin = 0, typicalMin = 0, highMin = 0] = minutes.toSorted((a, b) => a - b);
          return { task: knownTasks[index]?.id ?? '', unit: 'each', lowMin, typicalMin, highMin };
        }),
      },
    };
    const labour = any.quantities.map((ends, index) => {
      const [lowQuantity = 0, quantity = 0, highQuantity = 0] = ends.toSorted((a, b) => a - b);
      return { ...labourTask(knownTasks[index]?.id ?? '', quantity, library), lowQuantity, highQuantity };
    });
    return priceRequest(library, {
      takeoff: any.lines.map(({ quantity, low, high }, index) =>
        takeoffLine(`item-${index}`, quantity, { lowQuantity: low, highQuantity: high }),
      ),
      labour,
      terms: any.terms,
      stock: any.lines.map(({ stock }, index) => ({ item: `item-${index}`, quantity: stock })),
      sums: any.sums,
      gaps: any.gaps,
    });
  });
