import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lengthsWritten, readLengths } from '../../../ui/elements/kit/van-lengths.ts';

describe('the lengths that the van holds, as typed', () => {
  it.each([
    ['', []],
    ['12', [12]],
    ['5.5, 3 and 2', [5.5, 3, 2]],
    ['6 m + 2.5m', [6, 2.5]],
    ['3 x 2.5; .5', [2.5, 2.5, 2.5, 0.5]],
    ['2×4', [4, 4]],
  ])('“%s”', (typed, lengthsM) => {
    expect(readLengths(typed)).toEqual({ ok: true, lengthsM });
  });

  it.each(['-3', '0', 'a bit', '3 4', '1200', '101 x 1', '5,5 m2'])(
    '“%s” is refused with the words and how to write it',
    (typed) => {
      const read = readLengths(typed);
      expect(read.ok).toBe(false);
      if (!read.ok) expect(read.error).toMatch(/is no length, so it is not saved.*like 5\.5, 3, 2 x 2\.5/);
    },
  );

  it('come back from how they are written', () => {
    const lengths = fc.array(
      fc.integer({ min: 1, max: 100_000 }).map((cm) => cm / 100),
      { maxLength: 30 },
    );
    fc.assert(
      fc.property(lengths, (lengthsM) => {
        const stock = lengthsM.length === 0 ? [] : [{ item: 'a', quantity: 1, lengthsM }];
        expect(readLengths(lengthsWritten(stock))).toEqual({ ok: true, lengthsM });
      }),
    );
    expect(lengthsWritten([{ item: 'a', quantity: 7.5 }])).toBe('7.5');
  });
});
