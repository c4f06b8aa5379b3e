import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayAfter, daysBetween } from '#engine/price/list/day-count.ts';

describe('the day so many days after another', () => {
  it('crosses months, leap days and years', () => {
    expect(dayAfter('2026-11-25', 30)).toBe('2026-12-25');
    expect(dayAfter('2028-02-28', 1)).toBe('2028-02-29');
    expect(dayAfter('2100-02-28', 1)).toBe('2100-03-01');
    expect(dayAfter('2026-12-31', 1)).toBe('2027-01-01');
    expect(dayAfter('2026-02-30', 1)).toBeNull();
  });

  it('is the one that the platform’s calendar has, and as far away as asked', () => {
    fc.assert(
      fc.property(
        fc.date({ min: new Date('1900-01-01'), max: new Date('2400-01-01'), noInvalidDate: true }),
        fc.integer({ min: 0, max: 3650 }),
        (from, days) => {
          const iso = from.toISOString().slice(0, 10);
          const oracle = new Date(Date.parse(`${iso}T00:00:00Z`) + days * 86_400_000)
            .toISOString()
            .slice(0, 10);
          const after = dayAfter(iso, days);
          expect(after).toBe(oracle);
          expect(daysBetween(iso, after ?? '')).toBe(days);
        },
      ),
    );
  });
});
