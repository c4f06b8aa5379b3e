import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readNumber } from '../../../ui/elements/fields/read-number.ts';

const open = { min: null, max: null, whole: false, unit: '' };

describe('readNumber', () => {
  it.each([
    ['2400', 2400],
    ['2,400', 2400],
    ['2 400', 2400],
    ['0.24', 0.24],
    ['.5', 0.5],
    ['-35', -35],
    ['1,234,567.5', 1234567.5],
    ['', null],
    ['   ', null],
  ])('reads "%s" as people mean it', (typed, value) => {
    expect(readNumber(typed, open)).toEqual({ ok: true, value });
  });

  it.each(['2,4', '0,24', 'two', '12mm', '1e9', '--3', '1.2.3', 'NaN', 'Infinity'])(
    'does not guess at "%s"',
    (typed) => {
      expect(readNumber(typed, open).ok).toBe(false);
    },
  );

  it.each([
    ['£0.95', 0.95],
    ['£ 1,234.50', 1234.5],
    ['0.95 £', null],
    ['95p', 0.95],
    ['1,050 p', 10.5],
    ['0.5p', 0.005],
    ['-£3', -3],
    ['£95p', null],
    ['0.95.1', null],
    ['95P', 0.95],
    ['1\u00a0200', 1200],
  ])('reads money "%s" as people write it', (typed, value) => {
    const read = readNumber(typed, { ...open, unit: '£' });
    expect(read).toMatchObject(value === null ? { ok: false } : { ok: true, value });
  });

  it('lets a field’s own unit pass, and no other', () => {
    expect(readNumber('20 %', { ...open, unit: '%' })).toEqual({ ok: true, value: 20 });
    expect(readNumber('35MM', { ...open, unit: 'mm' })).toEqual({ ok: true, value: 35 });
    for (const typed of ['3.5 kg', '£35', '35p', 'mm'])
      expect(readNumber(typed, { ...open, unit: 'mm' }), typed).toMatchObject({ ok: false });
  });

  it('takes nothing at all for not known, unless a number is needed', () => {
    expect(readNumber(' ', open)).toEqual({ ok: true, value: null });
    expect(readNumber(' ', { ...open, needed: true })).toMatchObject({ ok: false });
    expect(readNumber('0', { ...open, needed: true })).toEqual({ ok: true, value: 0 });
  });

  it('says that what it could not read is not saved, and how to write it', () => {
    const read = readNumber('abc', { ...open, unit: '£' });
    expect(read).toMatchObject({ ok: false, error: expect.stringMatching(/“abc”.*not saved.*£0\.95/) });
  });

  it('takes pounds in whole pence only, and rounds none in silence', () => {
    const pounds = { ...open, unit: '£', wholePence: true };
    for (const typed of ['0.955', '£0.955', '95.5p', '0.001'])
      expect(readNumber(typed, pounds)).toMatchObject({
        ok: false,
        error: expect.stringContaining('Pence are whole'),
      });
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1_000_000_000 }), (pence) => {
        expect(readNumber(String(pence / 100), pounds)).toEqual({ ok: true, value: pence / 100 });
      }),
    );
    expect(readNumber('0.955', open)).toEqual({ ok: true, value: 0.955 });
  });

  it('holds to its bounds at exactly the limit and just past it', () => {
    const bounds = { min: 0, max: 13, whole: false, unit: 'A' };
    expect(readNumber('13', bounds)).toEqual({ ok: true, value: 13 });
    expect(readNumber('0', bounds)).toEqual({ ok: true, value: 0 });
    expect(readNumber('13.01', bounds)).toMatchObject({ ok: false, error: expect.stringContaining('13 A') });
    expect(readNumber('-0.01', bounds)).toMatchObject({ ok: false, error: expect.stringContaining('0 A') });
    expect(readNumber('2.5', { ...bounds, whole: true }).ok).toBe(false);
  });

  it('reads back every number that it would show', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (value) => {
        const shown = String(Math.round(value * 1000) / 1000);
        expect(readNumber(shown, open)).toEqual({ ok: true, value: Number(shown) });
      }),
    );
  });
});
