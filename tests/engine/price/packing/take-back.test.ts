import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lineForAll, type Supplies } from '#engine/price/buying/line-for-all.ts';
import { planOf } from '#engine/price/buying/plan-purchase.ts';
import type { BoughtPacks } from '#engine/price/buying/purchase.ts';
import { type HeldLength, openedLengths } from '#engine/price/packing/opened-lengths.ts';
import { openedPacks } from '#engine/price/packing/opened-packs.ts';
import { type TakeBack, takeBack } from '#engine/price/packing/take-back.ts';
import type { Piece, TakeoffLine } from '#engine/takeoff/line.ts';
import type { Stock } from '#model/job.ts';
import type { Price } from '#model/library.ts';
import { piecesOf } from '../buying/random-cut-list.ts';
import { listedPrice, takeoffLine } from '../price-material.ts';

const cable: Price = listedPrice('cable', {
  unit: 'm',
  pricePence: 112,
  packQuantity: 1,
  charge: 'packs',
  counter: 'cable',
  packs: [{ kind: 'coil', quantity: 25, pricePence: 1720 }],
});
const box = listedPrice('box', { pricePence: 103, packQuantity: 1, charge: 'packs' });
const grommet = listedPrice('grommet', { pricePence: 60, perQuantity: 10, packQuantity: 10 });

const supplies = (stock: readonly Stock[] = []): Supplies => ({
  prices: { source: 'invented', date: '2026-11-01', vat: 'excluded', items: [cable, box, grommet] },
  stock,
  depth: 'whole',
});

function cut(...lengthsM: readonly number[]): TakeoffLine {
  const pieces = lengthsM.map(
    (metres, i): Piece => ({
      cause: `run${i}`,
      lengthMm: metres * 1e3,
      lowMm: metres * 1e3,
      highMm: metres * 1e3,
      unbroken: true,
    }),
  );
  const measured = lengthsM.reduce((sum, metres) => sum + metres, 0);
  return takeoffLine('cable', measured, { unit: 'm', group: 'cable', pieces });
}

/** Bought for all of the cases; then one of them comes true. */
function backOf(
  cases: readonly (readonly TakeoffLine[])[],
  came: number,
  stock: readonly Stock[] = [],
): TakeBack {
  const items = [...new Set(cases.flat().map(({ item }) => item))];
  const lines = items.flatMap((item) => {
    const [first, ...others] = cases.flatMap((one) => one.filter((line) => line.item === item));
    return first === undefined ? [] : [lineForAll([first, ...others], supplies(stock))];
  });
  return takeBack(planOf(lines), cases[came] ?? [], supplies(stock));
}

const lineOf = ({ lines }: TakeBack, item: string) => lines.find((line) => line.item === item);

describe('what goes back', () => {
  it('is what was not opened, at what it cost; what is left of an opened pack stays', () => {
    const back = backOf(
      [
        [takeoffLine('box', 3), takeoffLine('grommet', 12)],
        [takeoffLine('box', 1), takeoffLine('grommet', 4)],
      ],
      1,
    );
    expect(back).toMatchObject({ isServed: true, pence: 206 + 60 });
    expect(lineOf(back, 'box')).toMatchObject({ back: [{ count: 2, pence: 206 }], stays: 0 });
    expect(lineOf(back, 'grommet')).toMatchObject({ back: [{ count: 1, pence: 60 }], stays: 6, lacking: 0 });
  });

  it('is never cable cut to measure, and a whole coil only where nothing is cut from it', () => {
    const long = [cut(24)];
    const short = [cut(4)];
    expect(lineOf(backOf([long, short], 1), 'cable')).toMatchObject({
      back: [],
      stays: 21,
      cuts: [{ from: 'coil-25/1', leftMm: 21_000 }],
    });
    const fromVan = lineOf(backOf([long, short], 1, [{ item: 'cable', quantity: 5 }]), 'cable');
    expect(fromVan).toMatchObject({ back: [{ count: 1, pence: 1720 }], cuts: [{ from: 'van/1' }] });
    expect(lineOf(backOf([[cut(9)], short], 1), 'cable')).toMatchObject({ back: [], backPence: 0, stays: 5 });
  });

  it('says what is lacking in a case that was not bought for', () => {
    const back = backOf([[takeoffLine('box', 1), cut(4)]], 0);
    expect(back.isServed).toBe(true);
    const bought = planOf([
      lineForAll([takeoffLine('box', 1)], supplies()),
      lineForAll([cut(4)], supplies()),
    ]);
    const other = takeBack(bought, [takeoffLine('box', 3), cut(4, 3), takeoffLine('grommet', 2)], supplies());
    expect(other.isServed).toBe(false);
    expect(other.lines.map(({ item, lacking }) => [item, lacking])).toEqual([
      ['cable', 3],
      ['box', 2],
      ['grommet', 2],
    ]);
  });

  it('leaves every case served that was bought for, and never goes back for more than was paid', () => {
    const anyCase = fc
      .record({
        box: fc.integer({ min: 0, max: 4 }),
        grommet: fc.integer({ min: 0, max: 25 }),
        runs: fc.array(fc.integer({ min: 10, max: 130 }), { maxLength: 4 }),
      })
      .map((one) => [
        ...(one.box === 0 ? [] : [takeoffLine('box', one.box)]),
        ...(one.grommet === 0 ? [] : [takeoffLine('grommet', one.grommet)]),
        ...(one.runs.length === 0 ? [] : [cut(...one.runs.map((tenths) => tenths / 10))]),
      ]);
    const anyStock = fc.array(
      fc.record({
        item: fc.constantFrom('box', 'grommet', 'cable'),
        quantity: fc.integer({ min: 0, max: 9 }),
      }),
      { maxLength: 2 },
    );
    fc.assert(
      fc.property(fc.array(anyCase, { minLength: 1, maxLength: 3 }), anyStock, (cases, stock) => {
        for (const [i] of cases.entries()) {
          const back = backOf(cases, i, stock);
          expect(back.isServed).toBe(true);
          expect(back.lines.every(({ stays, backPence }) => stays >= 0 && backPence >= 0)).toBe(true);
        }
      }),
    );
  });
});

const pack = (
  quantity: number,
  pence: number,
  count: number,
  kind: 'pack' | 'cut' = 'pack',
): BoughtPacks => ({
  offer: {
    key: `${kind}-${quantity}`,
    kind,
    quantity,
    millipence: pence * 1e3,
    least: kind === 'cut' ? quantity : null,
  },
  count,
  pence: pence * count,
});

describe('the packs that are opened', () => {
  it('leave as much worth whole as any choice of them', () => {
    const anyPacks = fc.array(
      fc.tuple(
        fc.integer({ min: 1, max: 9 }),
        fc.integer({ min: 1, max: 99 }),
        fc.integer({ min: 1, max: 3 }),
      ),
      { minLength: 1, maxLength: 3 },
    );
    fc.assert(
      fc.property(anyPacks, fc.integer({ min: 0, max: 40 }), (of, needed) => {
        const packs = of.map(([quantity, pence, count]) => pack(quantity, pence, count));
        const all = packs.reduce<readonly (readonly number[])[]>(
          (before, { count }) =>
            before.flatMap((some) => Array.from({ length: count + 1 }, (_, n) => [...some, n])),
          [[]],
        );
        const held = (counts: readonly number[]) =>
          counts.reduce((sum, n, i) => sum + n * (packs[i]?.offer.quantity ?? 0), 0);
        const worth = (counts: readonly number[]) =>
          counts.reduce((sum, n, i) => sum + n * (packs[i]?.offer.millipence ?? 0), 0);
        const serving = all.filter((counts) => held(counts) >= needed);
        fc.pre(serving.length > 0);
        const opened = openedPacks(packs, needed);
        expect(held(opened)).toBeGreaterThanOrEqual(needed);
        expect(worth(opened)).toBe(Math.min(...serving.map(worth)));
      }),
    );
  });

  it('are none where what was cut off at the counter suffices', () => {
    expect(openedPacks([pack(10, 500, 1), pack(1, 60, 4, 'cut')], 4)).toEqual([0, 4]);
    expect(openedPacks([pack(10, 500, 1), pack(1, 60, 4, 'cut')], 5)).toEqual([1, 4]);
  });
});

describe('the lengths that are opened', () => {
  const held = (...lengthsM: readonly (readonly [number, number | null])[]): readonly HeldLength[] =>
    lengthsM.map(([metres, pence], i) => ({
      from: `l/${i}`,
      lengthMm: metres * 1e3,
      millipence: pence === null ? null : pence * 1e3,
    }));

  it('are the least worth from which everything can be cut, what cannot go back first', () => {
    const opened = openedLengths(piecesOf(4, 4, 3), held([5, null], [10, 300], [8, 200]));
    expect(opened.unopened.map(({ from }) => from)).toEqual(['l/1']);
    expect(opened.lacking).toEqual([]);
    expect(opened.cuts.map(({ from, leftMm }) => [from, leftMm])).toEqual([
      ['l/0', 1000],
      ['l/2', 1000],
    ]);
  });

  it('are all of them where they do not suffice, and what finds no place is named once', () => {
    const opened = openedLengths(piecesOf(4, 4, 30), held([5, null], [3, 100]));
    expect(opened.unopened).toEqual([]);
    expect(opened.lacking.map(({ lengthMm }) => lengthMm)).toEqual([30_000, 4000]);
    expect(opened.cuts.flatMap(({ cuts }) => cuts)).toHaveLength(1);
  });
});
