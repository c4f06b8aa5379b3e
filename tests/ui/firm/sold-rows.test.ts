import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { soldSizes } from '#model/library.ts';
import { boughtOf, boughtWith, isOnlyOne, soldRows } from '../../../ui/elements/firm/sold-rows.ts';

describe('the sizes of the firm’s page', () => {
  it('are every family that the library may hold, each once', () => {
    expect(soldRows.map(({ family }) => family).toSorted()).toEqual(Object.keys(soldSizes.shape).toSorted());
  });

  it('are what the library takes, whatever is ticked, and never none', () => {
    const clicks = fc.array(fc.tuple(fc.nat(), fc.nat(), fc.boolean()), { maxLength: 30 });
    fc.assert(
      fc.property(clicks, (list) => {
        let sold = {};
        for (const [a, b, isBought] of list) {
          const row = soldRows[a % soldRows.length];
          const size = row?.sizes[b % row.sizes.length];
          if (row === undefined || size === undefined) throw new Error('There are rows.');
          const sizes = boughtWith(row, sold, { size, isBought });
          const isOnly = isOnlyOne(row, sold, size);
          const { [row.family]: _, ...others } = sold as Record<string, readonly number[]>;
          sold = sizes === null ? others : { ...others, [row.family]: sizes };
          expect(soldSizes.safeParse(sold).success).toBe(true);
          expect(boughtOf(row, sold).includes(size)).toBe(isBought || isOnly);
        }
      }),
    );
  });
});
