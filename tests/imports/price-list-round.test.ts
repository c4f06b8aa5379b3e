import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { findList } from '#engine/price/list/find-columns.ts';
import { importPlan } from '#engine/price/list/import-plan.ts';
import { ownReading, priceListCsv } from '#engine/price/list/own-list.ts';
import { knownItems } from '#engine/takeoff/items.ts';
import { readSheets } from '#imports/read-sheets.ts';
import type { Pack, Price, Prices } from '#model/library.ts';
import { listOf } from '#tests/engine/price/list/list-material.ts';

async function takenIn(bytes: Uint8Array, into: Prices) {
  const read = await readSheets(bytes);
  if (!read.ok) throw new Error(read.fault.message);
  const found = findList(read.sheets, []);
  if (found === null) throw new Error('no list');
  expect(found.how).toBe('own');
  return importPlan(found.rows, into, ownReading, { date: '2026-11-26', leftOut: new Set() });
}
const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

const unowned = (prices: readonly Price[]): readonly object[] =>
  prices.map(({ origin: _origin, packs, ...row }) => ({
    ...row,
    ...(packs === undefined ? {} : { packs: packs.map(({ origin: _whose, ...pack }) => pack) }),
  }));

const words = fc
  .oneof(
    fc.string({ unit: 'grapheme', maxLength: 14 }),
    fc.constantFrom(
      '=1+1',
      "'=x",
      '-5',
      '@SUM(A1)',
      '=HYPERLINK("http://x","y")',
      'a;=1',
      'שקע כפול',
      '"quoted", so',
      '+44',
      '＝1',
    ),
  )
  // What is read has no blanks at its ends, no double ones, and nothing unseen in it.
  .map((text) => text.replace(/[\p{C}\p{Z}\s]+/gu, ' ').trim());
const some = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });
const quantity = fc.integer({ min: 1, max: 100_000 }).map((thousandths) => thousandths / 1000);
const pence = fc.integer({ min: 0, max: 5_000_000 });
const day = fc.integer({ min: 1, max: 28 }).map((date) => `2026-10-${String(date).padStart(2, '0')}`);
const kind = fc.constantFrom<Pack['kind'][]>('each', 'pack', 'length', 'cut', 'coil', 'drum');
const filled = some(words.filter((text) => text !== ''));

const pack: fc.Arbitrary<Pack> = fc.record({
  kind,
  quantity,
  pricePence: pence,
  leastQuantity: some(quantity),
  code: filled,
  date: some(day),
});
const price: fc.Arbitrary<Price> = fc.record({
  item: fc.constantFrom(...knownItems.map(({ id }) => id)),
  unit: fc.constant('each' as const),
  pricePence: pence,
  perQuantity: quantity,
  packQuantity: some(quantity),
  charge: fc.constantFrom('packs' as const, 'used' as const),
  kind: some(kind),
  packs: some(
    fc.uniqueArray(pack, { minLength: 1, maxLength: 3, selector: (one) => `${one.kind} ${one.quantity}` }),
  ),
  counter: filled,
  supplier: filled,
  code: filled,
  supplierWords: filled,
  discountPercent: some(fc.integer({ min: 0, max: 9900 }).map((hundredths) => hundredths / 100)),
  date: some(day),
});
const unitOf = new Map(knownItems.map(({ id, unit }) => [id, unit]));
const plain = <T extends object>(group: T): T => JSON.parse(JSON.stringify(group)) as T;
const list = fc
  .uniqueArray(price, { maxLength: 8, selector: ({ item }) => item })
  .map((prices) => listOf(prices.map((one) => plain({ ...one, unit: unitOf.get(one.item) ?? 'each' }))));

describe('a price list that goes out and comes in again', () => {
  it('changes nothing in the list it came from', async () => {
    const { prices } = demoLibrary();
    const plan = await takenIn(bytesOf(priceListCsv(prices)), prices);
    expect(plan.faults).toEqual([]);
    expect([plan.changes, plan.unmatched]).toEqual([[], []]);
    expect(plan.items).toEqual(prices.items);
  });

  it('is the same list where there was none, but for whose it says it is', async () => {
    const { prices } = demoLibrary();
    const plan = await takenIn(bytesOf(priceListCsv(prices)), { ...prices, items: [] });
    expect(plan.faults).toEqual([]);
    expect(plan.items).toEqual(unowned(prices.items));
  });

  it('is the same whatever stands in it', async () => {
    await fc.assert(
      fc.asyncProperty(list, async (prices) => {
        const bytes = bytesOf(priceListCsv(prices));
        const fresh = await takenIn(bytes, { ...prices, items: [] });
        expect(fresh.faults).toEqual([]);
        expect(fresh.items).toEqual(prices.items);
        const again = await takenIn(bytes, prices);
        expect([again.changes, again.items]).toEqual([[], prices.items]);
      }),
      { numRuns: 150 },
    );
  });
});
