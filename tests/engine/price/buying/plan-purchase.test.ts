import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { billOf } from '#engine/price/bill.ts';
import { planPurchase } from '#engine/price/buying/plan-purchase.ts';
import type { PurchaseLine } from '#engine/price/buying/purchase.ts';
import type { Piece, TakeoffLine } from '#engine/takeoff/line.ts';
import type { Stock } from '#model/job.ts';
import type { Price, Prices } from '#model/library.ts';
import { anyPriceRequest, listedPrice, takeoffLine } from '../price-material.ts';

const pricesOf = (...items: Prices['items']): Prices => ({
  source: 'invented',
  date: '2026-11-01',
  vat: 'excluded',
  items,
});

const cableRow: Price = listedPrice('cable', {
  unit: 'm',
  pricePence: 112,
  packQuantity: 1,
  charge: 'packs',
  counter: 'cable',
  packs: [
    { kind: 'coil', quantity: 25, pricePence: 1720 },
    { kind: 'coil', quantity: 50, pricePence: 3240 },
  ],
});

const piece = (cause: string, lengthMm: number, unbroken = true): Piece => ({
  cause,
  lengthMm,
  lowMm: lengthMm,
  highMm: lengthMm,
  unbroken,
});

function cutTo(item: string, pieces: readonly Piece[], spread: Partial<TakeoffLine> = {}): TakeoffLine {
  const measured = pieces.reduce((sum, { lengthMm }) => sum + lengthMm, 0) / 1e3;
  const quantity = Math.ceil(measured * 10) / 10;
  return takeoffLine(item, quantity, { unit: 'm', group: 'cable', measured, pieces, ...spread });
}

function onlyLine(line: TakeoffLine, row: Price, stock: readonly Stock[] = []): PurchaseLine {
  const { lines } = planPurchase({ takeoff: [line], prices: pricesOf(row), stock, depth: 'whole' });
  const [only] = lines;
  if (only === undefined || lines.length > 1) throw new Error(`${lines.length} lines`);
  return only;
}

describe('what is bought of cable', () => {
  it('holds each run in one, waste in it, with cut list, leftovers and proof', () => {
    const line = cutTo('cable', [piece('n2', 2000), piece('n1', 5000)], { wastePercent: 5 });
    expect(onlyLine(line, cableRow)).toMatchObject({
      needed: 7.35,
      fromVan: 0,
      boughtQuantity: 8,
      leftOver: 0.65,
      pence: 896,
      packs: [{ offer: { key: 'cut-1' }, count: 8, pence: 896 }],
      cuts: [
        {
          from: 'cut-1/1',
          cuts: [
            { cause: 'n1', lengthMm: 5250 },
            { cause: 'n2', lengthMm: 2100 },
          ],
          leftMm: 650,
        },
      ],
      nearMisses: [],
      proof: { optimal: true, boundPence: 896, gap: 0 },
      counter: 'cable',
    });
  });

  it('says how short a coil would be of 27 m, and what it would save', () => {
    expect(onlyLine(cutTo('cable', [piece('n', 27_000)]), cableRow)).toMatchObject({
      boughtQuantity: 27,
      nearMisses: [{ words: '25 m coil', shortMm: 2000, wouldSavePence: 1304 }],
    });
  });

  it('comes from the van’s lengths that are long enough, and from a sum of which no lengths are told as from one', () => {
    const line = cutTo('cable', [piece('a', 8000), piece('b', 8000)]);
    const offCuts = [{ item: 'cable', quantity: 21, lengthsM: [7, 7, 7] }];
    expect(onlyLine(line, cableRow, offCuts)).toMatchObject({ fromVan: 0, boughtQuantity: 25 });
    const one = [
      { item: 'cable', quantity: 9 },
      { item: 'other', quantity: 90 },
    ];
    expect(onlyLine(line, cableRow, one)).toMatchObject({
      needed: 16,
      fromVan: 8,
      boughtQuantity: 8,
      cuts: [{ from: 'van/1', leftMm: 1000 }, { from: 'cut-1/1' }],
    });
  });

  it('names the run that nothing on the list is long enough for', () => {
    const { packs: _, ...row } = cableRow;
    const coils: Price = { ...row, kind: 'coil', packQuantity: 25, pricePence: 1720, perQuantity: 25 };
    expect(onlyLine(cutTo('cable', [piece('a', 27_000), piece('b', 9000)]), coils)).toMatchObject({
      unserved: [{ cause: 'a', lengthMm: 27_000 }],
      boughtQuantity: 25,
      pence: 1720,
    });
  });

  it('of a tube is put together only where the tube is longer than what is sold', () => {
    const tube = listedPrice('tube', {
      unit: 'm',
      pricePence: 214,
      perQuantity: 3,
      packQuantity: 3,
      charge: 'packs',
    });
    const pieces = [piece('a', 4000, false), piece('b', 2000, false), piece('c', 1600, false)];
    const line = cutTo('tube', pieces, { group: 'containment', wastePercent: 10 });
    expect(onlyLine(line, tube)).toMatchObject({ boughtQuantity: 9, leftOver: 1.4, unserved: [] });
  });
});

describe('what is bought of all else', () => {
  it('is the cheapest mix of packs after the van', () => {
    const row = listedPrice('clip', {
      pricePence: 284,
      perQuantity: 100,
      packQuantity: 100,
      packs: [{ kind: 'pack', quantity: 20, pricePence: 70 }],
    });
    const stock = [{ item: 'clip', quantity: 5 }];
    const bought = onlyLine(takeoffLine('clip', 124), row, stock);
    expect(bought).toMatchObject({ needed: 124, fromVan: 5, boughtQuantity: 120, leftOver: 1, pence: 354 });
    expect(bought.packs.map(({ offer, count }) => [offer.key, offer.quantity, count])).toEqual([
      ['pack-100', 100, 1],
      ['pack-20', 20, 1],
    ]);
    expect(bought.cuts).toEqual([]);
  });

  it('costs nothing and is not proved without a price in the line’s unit', () => {
    const row = listedPrice('clip', { unit: 'm' });
    expect(onlyLine(takeoffLine('clip', 3), row)).toMatchObject({
      priced: false,
      packs: [],
      pence: 0,
      leftOver: 0,
      proof: { optimal: false, gap: null },
    });
  });

  it('is what the bill charges whole where the list knows one pack of it and the van has none', () => {
    fc.assert(
      fc.property(anyPriceRequest, ({ takeoff, library, stock }) => {
        const { prices } = library;
        const bill = billOf(
          takeoff,
          prices,
          stock,
          prices.vat === 'excluded' ? 'standard' : 'not-registered',
        );
        const planned = (van: typeof stock) =>
          planPurchase({ takeoff, prices, stock: van, depth: 'whole' }).lines.filter(({ priced }) => priced);
        for (const line of planned(stock)) {
          expect(line.boughtQuantity + line.fromVan - line.leftOver).toBeCloseTo(line.needed, 6);
          expect(line.leftOver).toBeGreaterThanOrEqual(0);
        }
        for (const line of planned([])) {
          const charged = bill.find(({ item }) => item === line.item);
          if (charged?.charge === 'packs' && charged.packQuantity !== null) {
            expect(line.boughtQuantity).toBeCloseTo(charged.chargedQuantity, 6);
            expect(Math.abs(line.pence - charged.costPence)).toBeLessThanOrEqual(1);
          }
        }
      }),
      { seed: 61, numRuns: 150 },
    );
  });
});

describe('the plan', () => {
  const { prices } = demoLibrary();
  const takeoff = [
    cutTo('cable-flat-2.5-1.5', [piece('n', 9000)]),
    takeoffLine('socket-twin', 3, { group: 'accessories' }),
    takeoffLine('caulk', 0, { highQuantity: 1 }),
    takeoffLine('unheard-of', 2),
  ];

  it('comes by counter, lines without one last, and leaves out what may only turn out to be needed', () => {
    const { lines, pence, proved } = planPurchase({ takeoff, prices, stock: [], depth: 'whole' });
    expect(lines.map(({ counter, item }) => `${counter}: ${item}`)).toEqual([
      'cable: cable-flat-2.5-1.5',
      'wiring accessories: socket-twin',
      ': unheard-of',
    ]);
    expect(pence).toBe(lines.reduce((sum, line) => sum + line.pence, 0));
    // What has no price is not promised anything of, and does not take the promise from the rest.
    expect(proved).toBe(true);
  });

  it('is the same for the same arguments, whatever the order of the stock, and never dearer for more of it', () => {
    const stock = [
      { item: 'cable-flat-2.5-1.5', quantity: 9, lengthsM: [9] },
      { item: 'socket-twin', quantity: 1 },
    ];
    const plan = planPurchase({ takeoff, prices, stock, depth: 'whole' });
    expect(planPurchase({ takeoff, prices, stock: stock.toReversed(), depth: 'whole' })).toEqual(plan);
    expect(plan.pence).toBeLessThan(planPurchase({ takeoff, prices, stock: [], depth: 'whole' }).pence);
  });

  it('at first sight serves as well, with a bound that holds', () => {
    const pieces = Array.from({ length: 18 }, (_, i) => piece(`n${i}`, 1500 + ((i * 3701) % 7000)));
    const long = [cutTo('cable-flat-2.5-1.5', pieces)];
    const quick = planPurchase({ takeoff: long, prices, stock: [], depth: 'quick' });
    const whole = planPurchase({ takeoff: long, prices, stock: [], depth: 'whole' });
    expect(whole.proved).toBe(true);
    expect(quick.pence).toBeGreaterThanOrEqual(whole.pence);
    expect(quick.lines[0]?.proof.boundPence).toBeLessThanOrEqual(whole.pence);
  });
});
