import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sideFigures } from '#drawing/plan/side-figures.ts';
import { planPoint } from '#engine/plan/plane.ts';
import { type SheetFrame, sheetPoint } from '#engine/plan/sheet-frame.ts';

const frame: SheetFrame = { scale: 50, origin: planPoint(0, 0), at: sheetPoint(0, 200) };
const SIZE = 3.2;

describe('lengths along the sides of a room', () => {
  it('stand in the room, are read from below or from the right, whichever way the side goes (random)', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 359 }), fc.integer({ min: 1500, max: 8000 }), (deg, lengthMm) => {
        const way = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)] as const;
        const side = { from: [0, 0], to: [way[0] * lengthMm, way[1] * lengthMm], lengthMm } as const;
        const [figure] = sideFigures(frame, [side], SIZE);
        if (figure?.kind !== 'text') throw new Error('No figure.');
        expect(figure.text).toBe(String(lengthMm));
        expect(figure.angleDeg).toBeGreaterThanOrEqual(-90.5);
        expect(figure.angleDeg).toBeLessThanOrEqual(90.5);
        // The middle of the lettering, back on plan: on the left hand of the side.
        const turned = (figure.angleDeg * Math.PI) / 180;
        const middle = [
          figure.at[0] + Math.sin(turned) * SIZE * 0.35,
          200 - (figure.at[1] - Math.cos(turned) * SIZE * 0.35),
        ] as const;
        const leftMm = (way[0] * middle[1] - way[1] * middle[0]) * frame.scale;
        expect(leftMm).toBeGreaterThan(SIZE * 0.5 * frame.scale);
        expect(leftMm).toBeLessThan(SIZE * 1.2 * frame.scale);
      }),
    );
  });

  it('are left out where a side is shorter than its figure', () => {
    expect(sideFigures(frame, [{ from: [0, 0], to: [120, 0], lengthMm: 120 }], SIZE)).toEqual([]);
  });
});
