import { describe, expect, it } from 'vitest';
import { type Offer, offerOf } from '#engine/price/list/row-offer.ts';
import type { SheetCell } from '#engine/price/list/sheet.ts';
import type { ColumnMap, Price, Prices } from '#model/library.ts';
import { plainReading, rowsOf } from './list-material.ts';

interface Case {
  readonly cells?: readonly SheetCell[];
  readonly map?: Partial<ColumnMap>;
  readonly unit?: Price['unit'];
  readonly listVat?: Prices['vat'];
}

function read({ cells = [], map = {}, unit = 'each', listVat = 'excluded' }: Case) {
  const [row] = rowsOf(['C1', 'Thing', ...cells]);
  if (row === undefined) throw new Error('no row');
  return offerOf(row, unit, plainReading(map), listVat);
}

function offered(one: Case): Offer {
  const answer = read(one);
  if (!answer.ok) throw new Error(`${answer.role}: ${answer.message}`);
  return answer.offer;
}

function refused(one: Case): string {
  const answer = read(one);
  return answer.ok ? 'not refused' : `${answer.role}: ${answer.message}`;
}

const sold = ({ pricePence, perQuantity, packQuantity, kind }: Offer) => [
  pricePence,
  perQuantity,
  packQuantity,
  kind,
];

describe('what a row offers', () => {
  it.each<[string, Case, ReturnType<typeof sold>]>([
    ['each, by the list', { cells: ['3.20'] }, [320, 1, null, null]],
    ['per 100, by the list', { cells: ['3.20'], map: { basis: 'per-100' } }, [320, 100, null, null]],
    ['per 1000, by the list', { cells: ['3.20'], map: { basis: 'per-1000' } }, [320, 1000, null, null]],
    ['per 100, by its column', { cells: ['3.20', '100'] }, [320, 100, null, null]],
    ['per 100, by a figure in its column', { cells: ['3.20', 100] }, [320, 100, null, null]],
    ['per 100 by the price itself, over the column', { cells: ['3.20/100', 'each'] }, [320, 100, null, null]],
    ['a pack of 50, priced each', { cells: ['0.10', 'each', '50'] }, [10, 1, 50, null]],
    ['a box with its content in its own column', { cells: ['3.20', 'box', '100'] }, [320, 100, 100, 'pack']],
    [
      'a whole pack, by the list',
      { cells: ['3.20', '', '100'], map: { basis: 'per-pack' } },
      [320, 100, 100, 'pack'],
    ],
    ['a metre', { cells: ['1.12', 'm'], unit: 'm' }, [112, 1, null, null]],
    ['100 m', { cells: ['62', '100m'], unit: 'm' }, [6200, 100, null, null]],
    ['a coil of 50 m', { cells: ['32.40', 'per coil of 50m'], unit: 'm' }, [3240, 50, 50, 'coil']],
    [
      'a tube sold singly, 3 m long',
      { cells: ['2.14', 'each', '3m length'], unit: 'm' },
      [214, 3, 3, 'length'],
    ],
    ['a bag of 25 kg', { cells: ['9.80', 'each', '25kg'], unit: 'kg' }, [980, 25, 25, null]],
    ['a set where it says each', { cells: ['9.80', 'each'], unit: 'set' }, [980, 1, null, null]],
  ])('%s', (_name, one, expected) => {
    expect(sold(offered(one))).toEqual(expected);
  });

  it.each<[string, Case, RegExp]>([
    ['no price', { cells: [''] }, /^price: it has no price/],
    ['a price of nothing', { cells: ['0.00'] }, /^price: its price is nothing/],
    ['nothing said of what for', { cells: ['3.20'], map: { basis: 'by-column' } }, /^per: it does not say/],
    ['a pack of unknown content', { cells: ['3.20', 'box'] }, /how much a pack holds/],
    [
      'a metre of what is counted singly',
      { cells: ['3.20', 'm'] },
      /by the metre, and the item is counted singly/,
    ],
    [
      'a coil of what is counted singly',
      { cells: ['3.20', 'coil of 50m'] },
      /by the metre, and the item is counted singly/,
    ],
    [
      'one of what is counted by the metre',
      { cells: ['3.20', 'each'], unit: 'm' },
      /singly, and the item is counted by the metre/,
    ],
    ['a pack by the kilogram', { cells: ['3.20', 'each', '25kg'] }, /a pack is told by the kilogram/],
    [
      'a discount that may be two',
      { cells: ['3.20', '', '', 0.35] },
      /^discount: a discount of 0.35 may be 0.35 % or 35 %/,
    ],
    ['a discount of all', { cells: ['3.20', '', '', '100%'] }, /^discount: /],
    ['two discounts', { cells: ['3.20', '', '', '35+10'] }, /^discount: /],
    ['no day', { cells: ['3.20', '', '', '', '31/02/2026'] }, /^date: /],
  ])('is refused for %s', (_name, one, message) => {
    expect(refused(one)).toMatch(message);
  });

  it('has the discount taken off, and keeps it as told; a row’s own before the list’s', () => {
    const own = offered({ cells: ['12.34', '100', '', '35%'], map: { discountPercent: 10 } });
    expect([own.pricePence, own.perQuantity, own.discountPercent]).toEqual([802, 100, 35]);
    const list = offered({ cells: ['10.00'], map: { discountPercent: 10 } });
    expect([list.pricePence, list.discountPercent]).toEqual([900, 10]);
    expect(offered({ cells: ['10.00', '', '', 35] }).pricePence).toBe(650);
    expect(offered({ cells: ['10.00', '', '', 0] }).discountPercent).toBeNull();
  });

  it('has VAT put on or taken off as the firm’s list has it, half up, and says so', () => {
    const without = offered({ cells: ['12.00'], map: { vat: 'included' } });
    expect([without.pricePence, without.isVatChanged, without.isRounded]).toEqual([1000, true, false]);
    const half = offered({ cells: ['10.05'], map: { vat: 'excluded' }, listVat: 'included' });
    expect([half.pricePence, half.isVatChanged]).toEqual([1206, true]);
    // 1000 ÷ 1.2 = 833.33…
    expect(offered({ cells: ['10.00'], map: { vat: 'included' } })).toMatchObject({
      pricePence: 833,
      isRounded: true,
    });
    // 1.25 × 1.2 = 1.50; 1.02 × 1.2 = 1.224.
    expect(offered({ cells: ['1.25'], listVat: 'included' })).toMatchObject({
      pricePence: 150,
      isRounded: false,
    });
    expect(offered({ cells: ['1.02'], listVat: 'included' })).toMatchObject({
      pricePence: 122,
      isRounded: true,
    });
  });

  it('holds a price of parts of a penny for more of it, and a coil’s for the coil', () => {
    expect(sold(offered({ cells: ['4.25p', 'each'] }))).toEqual([425, 100, null, null]);
    expect(sold(offered({ cells: ['0.0375', '10', '100'] }))).toEqual([375, 1000, 100, null]);
    expect(offered({ cells: ['0.005', 'pk 10'] })).toMatchObject({
      pricePence: 1,
      perQuantity: 10,
      isRounded: true,
    });
  });
});
