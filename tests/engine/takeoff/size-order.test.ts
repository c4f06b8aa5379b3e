import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inSizeOrder } from '#engine/takeoff/size-order.ts';

describe('the order of items', () => {
  it('has cables by their size, not by their first digit', () => {
    const cables = [
      'cable-flat-10-4',
      'cable-flat-16-6',
      'cable-flat-2.5-1.5',
      'cable-flat-1-1',
      'cable-flat-1.5-1',
    ];
    expect(cables.toSorted(inSizeOrder)).toEqual([
      'cable-flat-1-1',
      'cable-flat-1.5-1',
      'cable-flat-2.5-1.5',
      'cable-flat-10-4',
      'cable-flat-16-6',
    ]);
    expect(['box-25', 'blank', 'box-25-twin', 'box-9'].toSorted(inSizeOrder)).toEqual([
      'blank',
      'box-9',
      'box-25',
      'box-25-twin',
    ]);
  });

  it('is an order: whoever is first stays first, in any company', () => {
    const id = fc.stringMatching(/^[a-c]{0,2}(-?[0-9]{1,2}(\.[0-9])?){0,2}[a-c]?$/);
    fc.assert(
      fc.property(id, id, id, (a, b, c) => {
        expect(Math.sign(inSizeOrder(a, b))).toBe(-Math.sign(inSizeOrder(b, a)) + 0);
        expect(inSizeOrder(a, b) === 0).toBe(a === b);
        if (inSizeOrder(a, b) < 0 && inSizeOrder(b, c) < 0) expect(inSizeOrder(a, c)).toBeLessThan(0);
      }),
    );
  });
});
