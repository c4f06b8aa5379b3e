import { describe, expect, it } from 'vitest';
import { findList } from '#engine/price/list/find-columns.ts';
import { ownHeaders } from '#engine/price/list/own-list.ts';
import type { Sheet, SheetCell } from '#engine/price/list/sheet.ts';
import { plainMap } from './list-material.ts';

const sheetOf = (name: string, ...rows: readonly (readonly SheetCell[])[]): Sheet => ({
  name,
  rows: rows.map((cells, index) => ({ number: index + 1, cells })),
});

const guess = (...headings: readonly string[]) => {
  const found = findList([sheetOf('', headings, ['A', 'B', 'C', 'D'])], []);
  if (found === null) throw new Error('nothing found');
  return found;
};

describe('the columns of a list', () => {
  it.each<[readonly string[], object]>([
    [['Product Code', 'Description', 'Net Price'], { code: 0, description: 1, price: 2 }],
    [
      ['Description', 'Part No.', 'List Price', 'Disc %', 'Net Price'],
      { description: 0, code: 1, price: 4, discount: 3 },
    ],
    [
      ['SKU', 'Product name', 'Price', 'UOM', 'Pack Qty'],
      { code: 0, description: 1, price: 2, per: 3, pack: 4 },
    ],
    [['Item', 'Unit price £', 'Valid from'], { description: 0, price: 1, date: 2 }],
    [['Cat No', 'Details', '£ per 100m'], { code: 0, description: 1, price: 2 }],
  ])('%j are known by their headings', (headings, columns) => {
    expect(guess(...headings).map.columns).toEqual(columns);
  });

  it.each([
    ['Price per 100', 'per-100'],
    ['Price each', 'each'],
    ['£/m', 'per-metre'],
    ['Price per 100m (ex VAT)', 'per-100-m'],
    ['Price per 1000', 'per-1000'],
    ['Price per pack', 'per-pack'],
    ['Price', 'each'],
  ])('%j says what a price is for: %s', (heading, basis) => {
    expect(guess('Code', 'Description', heading).map.basis).toBe(basis);
  });

  it.each([
    ['Price inc VAT', 'included'],
    ['Price (incl. VAT)', 'included'],
    ['Price ex VAT', 'excluded'],
    ['Price', 'excluded'],
  ])('%j says whether VAT is in it: %s', (heading, vat) => {
    expect(guess('Code', 'Description', heading).map.vat).toBe(vat);
  });

  it('are looked for below notes, and not in rows of figures', () => {
    const found = findList(
      [
        sheetOf(
          '',
          ['Quarry Lane'],
          ['Price list of November'],
          ['Code', 'Description', 'Price'],
          ['A', 'B', '1.20'],
        ),
      ],
      [],
    );
    expect([found?.headings?.number, found?.rows.map(({ number }) => number), found?.how]).toEqual([
      3,
      [4],
      'guessed',
    ]);
  });

  it('are told by nobody where there are no headings', () => {
    const found = findList([sheetOf('', ['A1', 'Twin', '3.20'], ['B2', 'Single', '2.90'])], []);
    expect([found?.headings, found?.rows.length, found?.map.columns]).toEqual([null, 2, {}]);
  });

  it('are those that a person has set, once the headings are the same, wherever they stand and however they are written', () => {
    const map = plainMap();
    const sheets = [
      sheetOf('Notes', ['x']),
      sheetOf(
        'Prices',
        ['Quarry'],
        map.headers.map((heading) => ` ${heading.toUpperCase()}`),
      ),
    ];
    const found = findList(sheets, [plainMap({ headers: ['Other'] }), map]);
    expect([found?.how, found?.map, found?.sheet.name]).toEqual(['known', map, 'Prices']);
  });

  it('are our own where our own headings stand', () => {
    expect(guess(...ownHeaders).how).toBe('own');
  });

  it('are looked for on every sheet', () => {
    const found = findList(
      [sheetOf('Cover', ['Dear customer']), sheetOf('List', ['Code', 'Description', 'Price'])],
      [],
    );
    expect(found?.sheet.name).toBe('List');
    expect(findList([], [])).toBeNull();
  });
});
