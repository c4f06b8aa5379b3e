import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sheetPoint } from '#engine/plan/sheet-frame.ts';
import { grown, meantAt, symbolExtent, type Target } from '../../../ui/elements/plan/group-extent.ts';

const target = (subject: string, x: number, reach: number): Target => ({
  subject,
  extent: { x, y: 0, width: 6, height: 4 },
  reach,
});

describe('the symbol that a finger means', () => {
  it('is the nearest of those within reach', () => {
    const targets = [target('r1', 0, 4), target('w1', 8, 4)];
    expect(meantAt(targets, sheetPoint(6.5, 2))).toBe('r1');
    expect(meantAt(targets, sheetPoint(7.5, 2))).toBe('w1');
    expect(meantAt(targets, sheetPoint(40, 2))).toBeNull();
  });

  it('is the one whose middle is nearer where two lie over each other', () => {
    const targets = [target('under', 0, 4), target('over', 2, 4)];
    expect(meantAt(targets, sheetPoint(2.5, 2))).toBe('under');
    expect(meantAt(targets, sheetPoint(5.5, 2))).toBe('over');
  });

  it('never depends on the order in which they are drawn', () => {
    const number = fc.integer({ min: -20, max: 20 });
    fc.assert(
      fc.property(fc.uniqueArray(number, { minLength: 1, maxLength: 6 }), number, number, (xs, x, y) => {
        const targets = xs.map((left) => target(String(left), left * 3, 4));
        const at = sheetPoint(x + 0.37, y + 0.21);
        expect(meantAt(targets.toReversed(), at)).toBe(meantAt(targets, at));
      }),
    );
  });

  it('has room for a finger about its drawn shapes', () => {
    const extent = symbolExtent([
      { kind: 'line', points: [sheetPoint(1, 1), sheetPoint(3, 2)], closed: false, ink: 'symbol' },
      { kind: 'line', points: [sheetPoint(-9, 1), sheetPoint(9, 2)], closed: true, ink: 'halo' },
    ]);
    expect(extent).toEqual({ x: 1, y: 1, width: 2, height: 1 });
    expect(extent && grown(extent, 0.5, 8.8)).toEqual({ x: 2 - 4.4, y: 1.5 - 4.4, width: 8.8, height: 8.8 });
    expect(symbolExtent([])).toBeNull();
  });
});
