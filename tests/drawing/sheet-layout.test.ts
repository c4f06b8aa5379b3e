import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { layOut } from '#drawing/plan/sheet-layout.ts';
import { planPoint } from '#engine/plan/plane.ts';
import { toSheet } from '#engine/plan/sheet-frame.ts';

describe('sheet layout', () => {
  it('keeps any house inside the part of the sheet that is meant for it', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -50_000, max: 50_000 }),
        fc.integer({ min: -50_000, max: 50_000 }),
        fc.integer({ min: 500, max: 200_000 }),
        fc.integer({ min: 500, max: 200_000 }),
        (x, y, wide, deep) => {
          const extent = [planPoint(x, y), planPoint(x + wide, y + deep)] as const;
          const layout = layOut(extent);
          for (const corner of extent) {
            const at = toSheet(layout.frame, corner);
            expect(at[0]).toBeGreaterThanOrEqual(layout.plan.leftMm - 1e-6);
            expect(at[0]).toBeLessThanOrEqual(layout.plan.rightMm + 1e-6);
            expect(at[1]).toBeGreaterThanOrEqual(layout.plan.topMm - 1e-6);
            expect(at[1]).toBeLessThanOrEqual(layout.plan.bottomMm + 1e-6);
          }
        },
      ),
    );
  });

  it('draws a terraced house of 4.5 by 10.5 m at 1:50 on A4 upright', () => {
    const layout = layOut([planPoint(0, 0), planPoint(4500, 10_500)]);
    expect([layout.frame.scale, layout.sheetName, layout.widthMm]).toEqual([50, 'A4', 210]);
  });

  it('draws a room at 1:20, a house at 1:50, a large one at 1:100, and on the paper that is asked for', () => {
    const chosen = (wide: number, deep: number, asked?: 'A4' | 'A3') => {
      const { frame, sheetName } = layOut([planPoint(0, 0), planPoint(wide, deep)], asked ?? null);
      return `1:${frame.scale} ${sheetName}`;
    };
    expect(chosen(3400, 3300)).toBe('1:20 A4');
    expect(chosen(5000, 4900)).toBe('1:50 A4');
    expect(chosen(5000, 4900, 'A3')).toBe('1:20 A3');
    expect(chosen(12_000, 12_000)).toBe('1:50 A3');
    expect(chosen(12_000, 12_000, 'A4')).toBe('1:100 A4');
    expect(chosen(25_000, 20_000)).toBe('1:100 A3');
  });

  it('turns y over: what lies further up the plan lies higher on the paper', () => {
    const layout = layOut([planPoint(0, 0), planPoint(4000, 4000)]);
    const low = toSheet(layout.frame, planPoint(0, 0));
    const high = toSheet(layout.frame, planPoint(0, 1000));
    expect(low[1] - high[1]).toBeCloseTo(1000 / layout.frame.scale);
  });
});
