import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { barAt } from '../../../ui/elements/plan/scale-bar.ts';

describe('the scale bar', () => {
  it('is true to the scale, round, and neither too long nor too short to be read', () => {
    fc.assert(
      fc.property(fc.integer({ min: 8, max: 1000 }), (scale) => {
        const { lengthMm, px } = barAt(scale);
        // A unit of the scene is 5 px and stands for `scale` mm.
        expect((px / 5) * scale).toBeCloseTo(lengthMm, 6);
        expect(px).toBeLessThanOrEqual(120);
        expect(px).toBeGreaterThan(45);
        expect([1, 2, 5]).toContain(lengthMm / 10 ** Math.floor(Math.log10(lengthMm)));
      }),
    );
  });
});
