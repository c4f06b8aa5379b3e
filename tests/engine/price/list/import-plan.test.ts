import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { heldUp, type ImportPlan, importPlan } from '#engine/price/list/import-plan.ts';
import { likelyItems } from '#engine/price/list/match-items.ts';
import type { SheetCell } from '#engine/price/list/sheet.ts';
import { knownItems } from '#engine/takeoff/items.ts';
import type { ColumnMap, Price, Prices } from '#model/library.ts';
import { price as priceSchema } from '#model/library.ts';
import { listOf, plainReading, priceOfOne, rowsOf } from './list-material.ts';

const matches = [
  { row: 'S2', item: 'socket-twin' },
  { row: 'G', item: 'grommet-20' },
  { row: 'T25', item: 'cable-flat-2.5-1.5' },
  { row: 'T25-50', item: 'cable-flat-2.5-1.5' },
  { row: 'T25-100', item: 'cable-flat-2.5-1.5' },
  { row: 'O20', item: 'oval-20' },
];

function planOf(
  rows: readonly (readonly SheetCell[])[],
  prices: Prices,
  map: Partial<ColumnMap> = {},
  leftOut: readonly number[] = [],
): ImportPlan {
  const answers = { date: '2026-11-26', leftOut: new Set(leftOut) };
  return importPlan(rowsOf(...rows), prices, plainReading({ matches, ...map }), answers);
}

const nobody = new Set<number>();
const twin = priceOfOne('socket-twin', 436, { counter: 'accessories' });
const grommets: Price = {
  ...priceOfOne('grommet-20', 112),
  perQuantity: 10,
  packQuantity: 10,
  origin: 'demo',
};
const cable: Price = {
  item: 'cable-flat-2.5-1.5',
  unit: 'm',
  pricePence: 112,
  perQuantity: 1,
  packQuantity: 1,
  charge: 'packs',
  kind: 'cut',
  packs: [
    { kind: 'coil', quantity: 50, pricePence: 3240 },
    { kind: 'drum', quantity: 100, pricePence: 6200, origin: 'demo' },
  ],
};

describe('a merchant’s rows', () => {
  it('take the place of prices, say whose they are and of what day, and leave the rest as it was', () => {
    const plan = planOf([['S2', 'Twin skt', '3.95', 'each']], listOf([twin, grommets]));
    expect(plan.items).toEqual([
      {
        ...twin,
        pricePence: 395,
        supplier: 'Quarry Lane',
        code: 'S2',
        supplierWords: 'Twin skt',
        date: '2026-11-26',
      },
      grommets,
    ]);
    expect(plan.changes).toMatchObject([{ row: 2, place: 'priced-by', isAsked: false, isNewPrice: true }]);
  });

  it('are the firm’s own from then on, not the demo’s', () => {
    const [price] = planOf([['G', '', '4.20', '100']], listOf([grommets])).items;
    expect(price).not.toHaveProperty('origin');
    // What it is sold in was not said, and stays.
    expect(price).toMatchObject({ pricePence: 420, perQuantity: 100, packQuantity: 10 });
  });

  it('of a known size take its place, of another are added', () => {
    const plan = planOf(
      [
        ['T25', '', '0.99', 'm'],
        ['T25-50', '', '30.00', 'coil of 50m'],
        ['T25-100', '', '61.00', '100m'],
        ['T25', '', '14.00', '25m coil'],
      ],
      listOf([cable]),
    );
    expect(plan.faults).toEqual([]);
    expect(plan.changes.map(({ place }) => place)).toEqual([
      'priced-by',
      'also-sold',
      'also-sold',
      'also-sold',
    ]);
    expect(plan.items).toMatchObject([
      {
        pricePence: 99,
        kind: 'cut',
        packs: [
          { kind: 'coil', quantity: 50, pricePence: 3000, code: 'T25-50' },
          { kind: 'drum', quantity: 100, pricePence: 6100, code: 'T25-100' },
          { kind: 'coil', quantity: 25, pricePence: 1400 },
        ],
      },
    ]);
  });

  it('of one size that the list does not have take the place of the old one', () => {
    const plan = planOf([['G', '', '3.10', 'pk100']], listOf([grommets]));
    expect(plan.items).toMatchObject([
      { pricePence: 310, perQuantity: 100, packQuantity: 100, kind: 'pack' },
    ]);
  });

  it('of what has no price yet give it one, by the smallest size, others further', () => {
    const plan = planOf(
      [
        ['T25-100', '', '61.00', 'drum of 100m'],
        ['T25', '', '0.99', 'm'],
      ],
      listOf([twin]),
    );
    expect(plan.items.slice(1)).toMatchObject([
      { item: 'cable-flat-2.5-1.5', unit: 'm', pricePence: 99, packs: [{ kind: 'drum', quantity: 100 }] },
    ]);
  });

  it('that say the same again change nothing; with another day, the day', () => {
    const first = planOf([['S2', 'Twin', '3.95']], listOf([twin]));
    const again = planOf([['S2', 'Twin', '3.95']], listOf([...first.items]));
    expect([again.changes, again.same]).toEqual([[], 1]);
    const later = planOf([['S2', 'Twin', '3.95', '', '', '', '01/12/2026']], listOf([...first.items]));
    expect(later.changes).toMatchObject([{ isNewPrice: false }]);
    expect(later.items[0]?.date).toBe('2026-12-01');
  });

  it('twice with one size are named, the second after the first', () => {
    const plan = planOf(
      [
        ['S2', '', '3.95'],
        ['', '13 A twin socket-outlet', '4.10'],
      ],
      listOf([twin]),
    );
    expect(plan.faults).toMatchObject([{ row: 3, message: 'it gives the price of the same thing as row 2' }]);
    expect(heldUp(plan, nobody).faults).toHaveLength(1);
    expect(
      heldUp(
        planOf(
          [
            ['S2', '', '3.95'],
            ['', '13 A twin socket-outlet', '4.10'],
          ],
          listOf([twin]),
          {},
          [3],
        ),
        nobody,
      ).faults,
    ).toEqual([]);
  });

  it('are known by what was said of them, by the merchant’s number, by the very words', () => {
    const known = listOf([{ ...twin, code: 'Q-1', supplier: 'Quarry Lane' }, grommets]);
    const rows = [
      ['q-1', 'x', '4.00'],
      ['', 'OPEN  grommet 20 mm', '0.20'],
      ['Z', 'Nothing of ours', '1.00'],
    ];
    const plan = planOf(rows, known);
    expect(plan.changes.map(({ item }) => item.id)).toEqual(['socket-twin', 'grommet-20']);
    expect(plan.unmatched).toEqual([
      { row: 4, key: 'Z', code: 'Z', words: 'Nothing of ours', price: '1.00' },
    ]);
    // Another merchant's number for something else is not this one's.
    expect(planOf([['Q-1', 'x', '4.00']], known, { name: 'Other' }).changes).toEqual([]);
  });
});

describe('a price that is far from what it was', () => {
  it('is asked about, past twenty times and not at twenty', () => {
    const at = (price: string): readonly boolean[] =>
      planOf([['S2', '', price]], listOf([twin])).changes.map(({ isAsked }) => isAsked);
    expect([at('87.20'), at('87.21'), at('0.22'), at('0.21')]).toEqual([[false], [true], [false], [true]]);
  });

  it('is what the price of a hundred is, read as the price of one', () => {
    const plan = planOf([['G', '', '9.80', 'each']], listOf([grommets]));
    expect(plan.changes).toMatchObject([{ isAsked: true }]);
    expect(heldUp(plan, nobody).asked).toHaveLength(1);
    expect(heldUp(plan, new Set([2])).asked).toEqual([]);
  });
});

describe('rows that cannot be read', () => {
  it('are named each by its number, with what to do, and hold up only where they are about our items', () => {
    const plan = planOf(
      [
        ['S2', 'Twin', 'POA'],
        ['LAMP', 'Lamp', 'on request'],
        ['G', 'Grommet', '4.20', 'per litre'],
        ['', 'CABLE', ''],
        ['O20', 'Tube', '2.60', 'each'],
      ],
      listOf([twin, grommets]),
    );
    expect(plan.faults.map(({ row, role }) => [row, role])).toEqual([
      [2, 'price'],
      [3, 'price'],
      [4, 'per'],
      [6, null],
    ]);
    expect(plan.faults.every(({ remedy }) => remedy.length > 5)).toBe(true);
    expect(heldUp(plan, nobody).faults.map(({ row }) => row)).toEqual([2, 4, 6]);
    expect([plan.headings, plan.changes]).toEqual([1, []]);
    expect(plan.items).toEqual([twin, grommets]);
  });

  it('change nothing, whatever they are: every row is a change, a fault, let be or named as unknown', () => {
    const { prices } = demoLibrary();
    const cell = fc.oneof(
      fc.constantFrom<SheetCell[]>(
        '',
        '3.20',
        '100',
        'each',
        'S2',
        'coil of 50m',
        '35%',
        '25/11/2026',
        '__proto__',
        'constructor',
        '=1+1',
        '\u202eabc',
        'שקע',
        -1,
        0,
        1e300,
        0.35,
        Number.NaN,
      ),
      fc.string({ unit: 'binary', maxLength: 12 }),
      fc.double(),
    );
    const head = fc.constantFrom(...matches.map(({ row }) => row), 'X', '', 'toString');
    const row = fc.tuple(head, fc.array(cell, { maxLength: 8 })).map(([code, cells]) => [code, ...cells]);
    fc.assert(
      fc.property(
        fc.array(row, { maxLength: 12 }),
        fc.constantFrom('.' as const, ',' as const),
        (rows, decimal) => {
          const plan = planOf(rows, prices, { decimal });
          const numbers = new Set(rows.map((_row, index) => index + 2));
          for (const { row: number, message, remedy } of plan.faults) {
            expect(numbers.has(number)).toBe(true);
            expect(message !== '' && remedy !== '').toBe(true);
          }
          const told =
            plan.changes.length + plan.faults.length + plan.unmatched.length + plan.headings + plan.same;
          expect(told).toBe(rows.length);
          for (const price of plan.items) expect(priceSchema.safeParse(price).success).toBe(true);
          const changed = new Set(plan.changes.map(({ item }) => item.id));
          expect(plan.items.filter(({ item }) => !changed.has(item))).toEqual(
            prices.items.filter(({ item }) => !changed.has(item)),
          );
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe('what a row may be about', () => {
  it.each([
    ['Twin skt 13A switched', 'socket-twin'],
    ['6242Y 2.5mm twin and earth cable', 'cable-flat-2.5-1.5'],
    ['Oval tube 20mm PVC', 'oval-20'],
    ['Maintenance free joint box 32A 3 terminal', 'joint-mf-32-3'],
  ])('%s: among the likeliest stands %s', (words, id) => {
    expect(likelyItems(words, 6).map(({ item }) => item.id)).toContain(id);
  });

  it('is first of all what has the very words, for every item', () => {
    for (const { description } of knownItems)
      expect(likelyItems(description, 1)[0]?.item.description).toBe(description);
  });

  it('is nothing where no word is shared', () => {
    expect(likelyItems('xylophone', 5)).toEqual([]);
  });
});
