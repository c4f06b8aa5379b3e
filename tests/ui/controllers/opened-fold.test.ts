import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { scrollToFold } from '../../../ui/controllers/opened-fold.ts';

const px = fc.integer({ min: 0, max: 2000 });

describe('a fold that was opened', () => {
  it('has its foot in sight then, or as much of it as leaves its heading there', () => {
    fc.assert(
      fc.property(px, px, px, px, (paneTop, paneHeight, foldTop, foldHeight) => {
        const pane = { top: paneTop, bottom: paneTop + paneHeight };
        const fold = { top: foldTop, bottom: foldTop + foldHeight };
        const by = scrollToFold(fold, pane);
        expect(by).toBeGreaterThanOrEqual(0);
        const isWholeInSight = fold.bottom - by <= pane.bottom;
        const isHeadAtTop = fold.top - by <= pane.top + 8;
        expect(isWholeInSight || isHeadAtTop).toBe(true);
        if (fold.bottom <= pane.bottom) expect(by).toBe(0);
        if (by > 0) expect(fold.top - by).toBeGreaterThanOrEqual(pane.top + 8);
      }),
    );
  });
});
