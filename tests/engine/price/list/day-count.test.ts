import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayAfter, dayCount, daysBetween } from '#engine/price/list/day-count.ts';

const DAY_MS = 86_400_000;
const isoOf = (date: Date): string => date.toISOString().slice(0, 10);
const days = fc.date({
  min: new Date('1900-01-01T00:00:00Z'),
  max: new Date('2200-12-31T00:00:00Z'),
  noInvalidDate: true,
});

describe('days by the calendar', () => {
  it('are those that the clock of this machine counts', () => {
    fc.assert(
      fc.property(days, days, (a, b) => {
        const [from, to] = [isoOf(a), isoOf(b)];
        expect(daysBetween(from, to)).toBe((Date.parse(to) - Date.parse(from)) / DAY_MS);
      }),
    );
  });

  it.each([
    ['2026-01-31', '2026-03-01', 29],
    ['2024-02-28', '2024-03-01', 2],
    ['1900-02-28', '1900-03-01', 1],
    ['2000-02-28', '2000-03-01', 2],
  ])('from %s to %s are %i', (from, to, count) => {
    expect(daysBetween(from, to)).toBe(count);
  });

  it('come after a day as the clock of this machine counts them, before it too', () => {
    fc.assert(
      fc.property(days, fc.integer({ min: -200_000, max: 200_000 }), (start, count) => {
        const from = isoOf(start);
        expect(dayAfter(from, count)).toBe(isoOf(new Date(Date.parse(from) + count * DAY_MS)));
      }),
    );
  });

  it.each([
    ['2024-02-28', 1, '2024-02-29'],
    ['2000-02-29', 366, '2001-03-01'],
    ['1999-12-31', 60, '2000-02-29'],
    ['2026-11-20', 30, '2026-12-20'],
    ['0000-03-01', 0, '0000-03-01'],
    ['0000-01-01', -1, null],
    ['9999-12-31', 1, null],
    ['2026-02-29', 1, null],
  ])('%s and %i more make %j', (from, count, day) => {
    expect(dayAfter(from, count)).toBe(day);
  });

  it.each(['2026-02-29', '2026-13-01', '2026-04-31', '2026-00-10', '25/11/2026', '', '2026-1-1'])(
    '%j is none',
    (text) => {
      expect(dayCount(text)).toBeNull();
      expect(daysBetween(text, '2026-01-01')).toBeNull();
    },
  );
});
