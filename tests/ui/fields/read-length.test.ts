import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readLengthMm } from '../../../ui/elements/fields/read-length.ts';
import { readNumber } from '../../../ui/elements/fields/read-number.ts';

describe('a length as people type it', () => {
  // The inch is 25.4 mm and the foot 304.8 mm exactly (international yard and pound agreement, 1959; BS 350).
  it.each([
    ['2.4 m', 2400],
    ['2.4m', 2400],
    ['3.612 M', 3612],
    ['240 cm', 2400],
    ['2400mm', 2400],
    ["8'", 2438.4],
    ['8ft', 2438.4],
    [`8'0"`, 2438.4],
    ['7’ 10”', 2387.6],
    [`7' 10 1/2"`, 2400.3],
    ['7 ft 10½ in', 2400.3],
    ['7ft10', 2387.6],
    ['94.5 in', 2400.3],
    ['1/2"', 12.7],
    ['6 feet 6 inches', 1981.2],
  ])('reads %s', (typed, mm) => {
    expect(readLengthMm(typed)).toBe(mm);
  });

  it.each(['', '2400', 'wide', '2,4 m', '-2 m', 'm', `7' 1/0"`, '2 m 40', "'''x"])(
    'leaves %j alone',
    (typed) => {
      expect(readLengthMm(typed)).toBeNull();
    },
  );

  it('is what feet and inches come to (random)', () => {
    fc.assert(
      fc.property(fc.nat(60), fc.nat(11), fc.nat(7), (feet, inches, eighths) => {
        const mm = feet * 304.8 + inches * 25.4 + eighths * 3.175;
        const isIt = (typed: string): boolean => Math.abs((readLengthMm(typed) ?? Number.NaN) - mm) < 0.0501;
        expect(isIt(`${feet}' ${inches} ${eighths}/8"`)).toBe(true);
        expect(isIt(`${feet} ft ${inches} ${eighths}/8 in`)).toBe(true);
      }),
    );
  });

  it('is taken by every field of millimetres, and by no other', () => {
    const bounds = { min: 1, max: 100_000, whole: false };
    expect(readNumber('2.4 m', { ...bounds, unit: 'mm' })).toEqual({ ok: true, value: 2400 });
    expect(readNumber('2400', { ...bounds, unit: 'mm' })).toEqual({ ok: true, value: 2400 });
    expect(readNumber('2.4 m', { ...bounds, unit: 'mm²' })).toMatchObject({ ok: false });
    expect(readNumber('2.4 m', { ...bounds, unit: 'W' })).toMatchObject({ ok: false });
  });

  it('is in metres without a unit where rooms are measured, if it is small', () => {
    const bounds = { min: 100, max: 100_000, whole: false, unit: 'mm', bareMetresBelow: 50 };
    expect(readNumber('3.612', bounds)).toEqual({ ok: true, value: 3612 });
    expect(readNumber('12', bounds)).toEqual({ ok: true, value: 12_000 });
    expect(readNumber('3612', bounds)).toEqual({ ok: true, value: 3612 });
    expect(readNumber('20 mm', bounds)).toMatchObject({ ok: false });
  });
});
