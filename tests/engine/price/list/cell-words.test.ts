import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decimalOf } from '#engine/price/exact.ts';
import { basisOf } from '#engine/price/list/basis-words.ts';
import { dateOf } from '#engine/price/list/date-words.ts';
import type { DecimalSign } from '#engine/price/list/decimal-words.ts';
import { lessDiscount, priceOf } from '#engine/price/list/money-words.ts';
import type { SheetCell } from '#engine/price/list/sheet.ts';

const pence = (cell: SheetCell, sign: DecimalSign = '.'): number | string => {
  const read = priceOf(cell, sign);
  return read.ok ? decimalOf(read.value.pence, 4) : read.message;
};
const forWhat = (cell: string): unknown => {
  const read = priceOf(cell, '.');
  return read.ok ? read.value.basis : read.message;
};

describe('a price as it is written', () => {
  it.each<[SheetCell, number]>([
    ['£1,234.50', 123450],
    ['1234.5', 123450],
    ['1 234.50', 123450],
    ['GBP 12', 1200],
    ['£ 0.0425', 4.25],
    ['.95', 95],
    ['12.340000000000002', 1234],
    ['95p', 95],
    ['95.5 pence', 95.5],
    ['12.34 £', 1234],
    [12.34, 1234],
    [0.1, 10],
    ['0', 0],
  ])('%j is %d pence', (cell, expected) => {
    expect(pence(cell)).toBe(expected);
  });

  it('has a decimal comma where told, and is refused with that remedy where not', () => {
    expect(pence('1.234,50', ',')).toBe(123450);
    expect(pence('12,5', ',')).toBe(1250);
    const read = priceOf('12,50', '.');
    expect(read.ok ? '' : read.remedy).toContain('decimal comma');
    const other = priceOf('12.50', ',');
    expect(other.ok ? '' : other.remedy).toContain('decimal point');
  });

  it.each<[SheetCell, RegExp]>([
    ['POA', /no price in figures/],
    ['n/a', /no price in figures/],
    ['-5.00', /below nothing/],
    ['(5.00)', /below nothing/],
    [-1, /below nothing/],
    [Number.NaN, /below nothing/],
    ['€12.00', /another currency/],
    ['$3', /another currency/],
    ['12.34.56', /no figure/],
    ['1,23,456', /no figure/],
    ['99999999999999999999', /more than 15 digits/],
    ['12 bananas', /does not say what the price is for/],
    ['9999999', /more than anything/],
    ['=1+1', /no figure/],
  ])('%j is refused', (cell, message) => {
    expect(pence(cell)).toMatch(message);
  });

  it('may say itself what it is for', () => {
    expect(forWhat('12.34/100')).toEqual({ quantity: 100, unit: null, kind: null });
    expect(forWhat('£3.20 per 100')).toEqual({ quantity: 100, unit: null, kind: null });
    expect(forWhat('£62.00 per drum of 100m')).toEqual({ quantity: 100, unit: 'm', kind: 'drum' });
    expect(forWhat('24.50 per coil 50m')).toEqual({ quantity: 50, unit: 'm', kind: 'coil' });
    expect(forWhat('95p each')).toEqual({ quantity: 1, unit: 'each', kind: null });
    expect(forWhat('1.12')).toBeNull();
  });

  it('has its discount taken off exactly', () => {
    const read = priceOf('12.34', '.');
    expect(read.ok && decimalOf(lessDiscount(read.value.pence, 35), 6)).toBe(802.1);
    expect(read.ok && decimalOf(lessDiscount(read.value.pence, 17.35), 6)).toBe(1019.901);
  });
});

describe('what a price is for, in words', () => {
  it.each([
    ['each', 1, 'each', null],
    ['EA', 1, 'each', null],
    ['100', 100, null, null],
    ['per 100', 100, null, null],
    ['/C', 100, null, null],
    ['1,000', 1000, null, null],
    ['thousand', 1000, null, null],
    ['mtr', 1, 'm', null],
    ['per metre', 1, 'm', null],
    ['100m', 100, 'm', null],
    ['per 100 m', 100, 'm', null],
    ['hundred metres', 100, 'm', null],
    ['coil of 50 m', 50, 'm', 'coil'],
    ['50m coil', 50, 'm', 'coil'],
    ['Drum (100m)', 100, 'm', 'drum'],
    ['3m length', 3, 'm', 'length'],
    ['pk100', 100, null, 'pack'],
    ['box of 50', 50, null, 'pack'],
    ['25kg bag', 25, 'kg', 'pack'],
    ['pair', 2, null, null],
    ['dozen', 12, null, null],
    ['pack', null, null, 'pack'],
    ['cut', 1, null, 'cut'],
  ])('%j', (text, quantity, unit, kind) => {
    expect(basisOf(text)).toEqual({ ok: true, value: { quantity, unit, kind } });
  });

  it.each([
    '',
    '2 x 50',
    'constructor',
    '__proto__',
    'each metre',
    'coil drum',
    '0',
    'per',
    '½ m',
    'per litre',
  ])('%j is refused', (text) => {
    expect(basisOf(text).ok).toBe(false);
  });

  it('is never more than a fault, whatever stands there', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'binary', maxLength: 30 }),
        fc.constantFrom('.' as const, ',' as const),
        (text, sign) => {
          for (const read of [basisOf(text, sign), priceOf(text, sign), dateOf(text)])
            expect(read.ok || (read.message !== '' && read.remedy !== '')).toBe(true);
        },
      ),
      { numRuns: 500 },
    );
  });
});

describe('a day as it is written', () => {
  it.each([
    ['2026-11-25', '2026-11-25'],
    ['2026-11-25T00:00:00', '2026-11-25'],
    ['25/11/2026', '2026-11-25'],
    ['1.2.26', '2026-02-01'],
    ['05-06-2026', '2026-06-05'],
    ['25 Nov 2026', '2026-11-25'],
    ['25-November-26', '2026-11-25'],
  ])('%j is %s', (text, day) => {
    expect(dateOf(text)).toEqual({ ok: true, value: day });
  });

  it.each(['31/02/2026', '11/25/2026', 'soon', '2026', '25 Foo 2026'])('%j is none', (text) => {
    expect(dateOf(text).ok).toBe(false);
  });

  it('is none where a figure stands', () => {
    expect(dateOf(46351).ok).toBe(false);
  });
});
