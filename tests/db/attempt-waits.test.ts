import { describe, expect, it } from 'vitest';
import { countedAt, FORGOTTEN_MS, waitLeftMs, waitMs } from '../../api/db/attempt-waits.ts';

const rule = { free: 3, firstMs: 1000, mostMs: 60_000 };
const now = new Date('2026-11-25T09:00:00Z');
const ago = (ms: number): string => new Date(now.getTime() - ms).toISOString();

describe('waits after guesses', () => {
  it('begin after the free ones, double, and have an end', () => {
    expect([0, 2, 3, 4, 5, 8, 9, 1e6].map((failures) => waitMs(failures, rule))).toEqual([
      0, 0, 1000, 2000, 4000, 32_000, 60_000, 60_000,
    ]);
  });

  it('go by the last failure', () => {
    expect(waitLeftMs({ failures: 3, lastAt: ago(400) }, rule, now)).toBe(600);
    expect(waitLeftMs({ failures: 3, lastAt: ago(1000) }, rule, now)).toBe(0);
    expect(waitLeftMs({ failures: 2, lastAt: ago(0) }, rule, now)).toBe(0);
  });

  it('are forgotten after a day, and begin anew from now where the clock was set back', () => {
    const old = { failures: 9, lastAt: ago(FORGOTTEN_MS) };
    expect(countedAt(old, now).failures).toBe(0);
    expect(countedAt({ ...old, lastAt: ago(FORGOTTEN_MS - 1) }, now).failures).toBe(9);
    const ahead = countedAt({ failures: 9, lastAt: ago(-1e9) }, now);
    expect(ahead).toEqual({ failures: 9, lastAt: now.toISOString() });
    expect(waitLeftMs(ahead, rule, now)).toBe(60_000);
    expect(countedAt(null, now).failures).toBe(0);
  });
});
