import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planPurchase } from '#engine/price/buying/plan-purchase.ts';
import type { ShoppingEntry } from '#engine/price/shopping/shopping-list.ts';
import { shoppingListOf } from '#engine/price/shopping/shopping-list-of.ts';
import type { Piece, TakeoffLine } from '#engine/takeoff/line.ts';
import type { Stock } from '#model/job.ts';
import type { Prices } from '#model/library.ts';
import { anyPriceRequest, listedPrice, takeoffLine } from '../price-material.ts';

const pricesOf = (...items: Prices['items']): Prices => ({
  source: 'invented',
  date: '2026-11-01',
  vat: 'excluded',
  items,
});

const piece = (cause: string, lengthMm: number): Piece => ({
  cause,
  lengthMm,
  lowMm: lengthMm,
  highMm: lengthMm,
  unbroken: true,
});

function cable(...pieces: readonly Piece[]): TakeoffLine {
  const measured = pieces.reduce((sum, { lengthMm }) => sum + lengthMm, 0) / 1e3;
  return takeoffLine('cable', measured, { unit: 'm', group: 'cable', measured, pieces });
}

const cableRow = listedPrice('cable', {
  unit: 'm',
  pricePence: 112,
  packQuantity: 1,
  counter: 'cable',
  code: 'C1',
  packs: [{ kind: 'coil', quantity: 25, pricePence: 1720, code: 'C25' }],
});

function listOf(takeoff: readonly TakeoffLine[], prices: Prices, stock: readonly Stock[] = []) {
  const purchase = planPurchase({ takeoff, prices, stock, depth: 'whole' });
  return { purchase, list: shoppingListOf(purchase, prices) };
}

/** Each entry as group, words and name. */
function read(takeoff: readonly TakeoffLine[], prices: Prices, stock: readonly Stock[] = []) {
  return listOf(takeoff, prices, stock).list.groups.flatMap(({ title, entries }) =>
    entries.map(({ asks, item }) => `${title}: ${asks.map(({ words }) => words).join(' and ')}, ${item}`),
  );
}

const listed = (item: string, spread: Parameters<typeof listedPrice>[1] = {}) =>
  pricesOf(listedPrice(item, spread));

describe('what is asked for', () => {
  it('is a number of what is sold singly, packs by what they hold, kilograms and sets by their names', () => {
    expect(read([takeoffLine('a', 4)], listed('a', { counter: 'boxes' }))).toEqual(['Boxes: 4, a']);
    const packs = [{ kind: 'pack' as const, quantity: 20, pricePence: 30 }];
    const clips = listed('a', { pricePence: 100, perQuantity: 100, packQuantity: 100, packs });
    expect(read([takeoffLine('a', 130)], clips)).toEqual([
      'No counter named: 1 pack of 100 and 2 packs of 20, a',
    ]);
    const plaster = takeoffLine('a', 6.8, { unit: 'kg' });
    expect(read([plaster], listed('a', { unit: 'kg', packQuantity: 5 }))).toEqual([
      'No counter named: 2 packs of 5 kg, a',
    ]);
    expect(read([plaster], listed('a', { unit: 'kg' }))).toEqual(['No counter named: 6.8 kg, a']);
    expect(read([takeoffLine('a', 2, { unit: 'set' })], listed('a', { unit: 'set' }))).toEqual([
      'No counter named: 2 sets, a',
    ]);
  });

  it('is a coil, or one length that every piece is cut from, with the merchant’s number of that size', () => {
    const short = [cable(piece('n1', 5000), piece('n2', 2000))];
    expect(read(short, pricesOf(cableRow))).toEqual(['Cable: 7 m in one length, cable']);
    const long = [cable(piece('n1', 15_000), piece('n2', 9000))];
    expect(read(long, pricesOf(cableRow))).toEqual(['Cable: 1 coil of 25 m, cable']);
    const codes = [short, long].map((takeoff) =>
      listOf(takeoff, pricesOf(cableRow)).list.groups.flatMap(({ entries }) =>
        entries.flatMap(({ asks }) => asks.map(({ code }) => code)),
      ),
    );
    expect(codes).toEqual([['C1'], ['C25']]);
  });

  it('is so many metres off the reel of what is used in any pieces', () => {
    const tube = takeoffLine('a', 2.3, { unit: 'm' });
    expect(read([tube], listed('a', { unit: 'm' }))).toEqual(['No counter named: 3 m off the reel, a']);
  });
});

describe('where it is had', () => {
  it('is the van first, then the counter, and what is too long for both is asked for elsewhere', () => {
    const { packs: _, ...row } = cableRow;
    const coils = pricesOf({ ...row, kind: 'coil', packQuantity: 10 });
    const takeoff = [cable(piece('a', 8000), piece('b', 8000), piece('c', 12_000))];
    expect(read(takeoff, coils, [{ item: 'cable', quantity: 9 }])).toEqual([
      'Take from the van: 9 m in one length, cable',
      'Cable: 1 coil of 10 m, cable',
      'Not on the price list: 12 m in one length, cable',
    ]);
  });

  it('is nowhere on the list where no price is: all of it is asked for by its pieces', () => {
    const takeoff = [cable(piece('a', 8000), piece('b', 8000), piece('c', 2000)), takeoffLine('x', 3)];
    expect(read(takeoff, pricesOf(), [{ item: 'x', quantity: 1 }])).toEqual([
      'Take from the van: 1, x',
      'Not on the price list: 2 lengths of 8 m and 2 m in one length, cable',
      'Not on the price list: 2, x',
    ]);
  });

  it('goes by merchant, then by counter, those without a name last', () => {
    const rows = [
      listedPrice('a'),
      listedPrice('b', { counter: 'boxes' }),
      listedPrice('c', { counter: 'fixings', supplier: 'Merchant two' }),
      listedPrice('d', { counter: 'fixings', supplier: 'Merchant one' }),
      listedPrice('e', { supplier: 'Merchant one' }),
    ];
    const takeoff = ['a', 'b', 'c', 'd', 'e'].map((item) => takeoffLine(item, 1));
    expect(listOf(takeoff, pricesOf(...rows)).list.groups.map(({ title }) => title)).toEqual([
      'Merchant one: fixings',
      'Merchant one',
      'Merchant two: fixings',
      'Boxes',
      'No counter named',
    ]);
  });
});

/** Lengths to cut, some longer than anything there is; coils of two sizes, cut lengths or neither; off-cuts in the van. */
const anyCutting = fc.record({
  lengthsMm: fc.array(fc.integer({ min: 100, max: 30_000 }), { minLength: 1, maxLength: 8 }),
  kind: fc.constantFrom('cut' as const, 'coil' as const),
  coils: fc.subarray([10, 25, 50]),
  vanM: fc.array(fc.integer({ min: 1, max: 12 }), { maxLength: 3 }),
  isListed: fc.boolean(),
});

describe('the list as a whole', () => {
  const entriesOf = (groups: readonly { readonly entries: readonly ShoppingEntry[] }[]) =>
    groups.flatMap(({ entries }) => entries);

  it('holds every line of the purchase, once in each place, and what its entries use is what the line needs', () => {
    fc.assert(
      fc.property(anyPriceRequest, ({ takeoff, library, stock }) => {
        const { purchase, list } = listOf(takeoff, library.prices, stock);
        const entries = entriesOf(list.groups);
        expect(new Set(entries.map(({ key }) => key)).size).toBe(entries.length);
        for (const line of purchase.lines) {
          const own = entries.filter(({ item }) => item === line.item);
          expect(own.length).toBeGreaterThan(0);
          expect(own.reduce((sum, { used }) => sum + used, 0)).toBeCloseTo(line.needed, 6);
        }
        const items = new Set(purchase.lines.map(({ item }) => item));
        expect(entries.filter(({ item }) => !items.has(item))).toEqual([]);
        expect(list.pence).toBe(purchase.pence);
        expect(list.groups.filter((group) => group.entries.length === 0)).toEqual([]);
      }),
    );
  });

  it('of what is cut accounts for every metre and cuts every piece once, on the list or not, long or short', () => {
    fc.assert(
      fc.property(anyCutting, ({ lengthsMm, kind, coils, vanM, isListed }) => {
        const { packs: _, ...row } = cableRow;
        const packs = coils.map((quantity) => ({
          kind: 'coil' as const,
          quantity,
          pricePence: 90 * quantity,
        }));
        const size = kind === 'coil' ? 5 : 1;
        const price = { ...row, kind, packQuantity: size, perQuantity: size, packs };
        const takeoff = [cable(...lengthsMm.map((mm, i) => piece(`n${i}`, mm)))];
        const stock = vanM.map((lengthM) => ({ item: 'cable', quantity: lengthM, lengthsM: [lengthM] }));
        const { purchase, list } = listOf(takeoff, isListed ? pricesOf(price) : pricesOf(), stock);
        const entries = entriesOf(list.groups);
        const needed = purchase.lines[0]?.needed ?? Number.NaN;
        expect(entries.reduce((sum, { used }) => sum + used, 0)).toBeCloseTo(needed, 6);
        const cuts = entries.flatMap((entry) => entry.cuts.flatMap((from) => from.cuts));
        const tooLong = entries.filter(({ place }) => place === 'unlisted');
        const asked = tooLong.flatMap(({ asks }) => asks);
        const without = asked.reduce((sum, { count }) => sum + count, 0);
        expect(cuts.length + without).toBe(lengthsMm.length);
        for (const entry of entries.filter(({ place }) => place !== 'unlisted')) {
          const lengthM = entry.asks.reduce((sum, { count, quantity }) => sum + count * quantity, 0);
          expect(lengthM).toBeCloseTo(entry.cuts.reduce((sum, { lengthMm }) => sum + lengthMm, 0) / 1e3, 6);
        }
      }),
    );
  });

  it('asks for as much as is used and left over', () => {
    fc.assert(
      fc.property(anyPriceRequest, ({ takeoff, library, stock }) => {
        for (const { place, asks, used, leftOver } of entriesOf(
          listOf(takeoff, library.prices, stock).list.groups,
        )) {
          const asked = asks.reduce((sum, { count, quantity }) => sum + count * quantity, 0);
          if (place !== 'van') expect(asked).toBeCloseTo(used + leftOver, 6);
          expect(asked + 1e-6).toBeGreaterThanOrEqual(used);
        }
      }),
    );
  });
});
