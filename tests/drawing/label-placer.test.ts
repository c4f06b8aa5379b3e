import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { labelPlacer, placesAround, type Rectangle, textBox } from '#drawing/label-placer.ts';
import { sheetPoint } from '#engine/plan/sheet-frame.ts';

const bounds: Rectangle = { leftMm: 0, topMm: 0, rightMm: 100, bottomMm: 100 };
const apart = (a: Rectangle, b: Rectangle): boolean =>
  a.rightMm <= b.leftMm || b.rightMm <= a.leftMm || a.bottomMm <= b.topMm || b.bottomMm <= a.topMm;

describe('label placer', () => {
  it('takes the first candidate that is free', () => {
    const free = labelPlacer(bounds);
    const here = sheetPoint(50, 50);
    expect(free.place('W1', 2.5, [here, sheetPoint(60, 60)])).toEqual(here);
    expect(free.place('W2', 2.5, [here, sheetPoint(60, 60)])).toEqual(sheetPoint(60, 60));
  });

  it('keeps labels apart wherever a free candidate exists', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 0, max: 8 }), { minLength: 1, maxLength: 9 }),
        (columns) => {
          const free = labelPlacer(bounds);
          const candidates = Array.from({ length: 9 }, (_, i) => sheetPoint(10 + i * 10, 50));
          const boxes = columns.map(() => textBox(free.place('W10', 2.5, candidates), 'W10', 2.5));
          for (let i = 0; i < boxes.length; i++) {
            for (let j = 0; j < i; j++) {
              const [a, b] = [boxes[i], boxes[j]];
              expect(a !== undefined && b !== undefined && apart(a, b)).toBe(true);
            }
          }
        },
      ),
    );
  });

  it('would sooner cover another label than leave the sheet', () => {
    const free = labelPlacer(bounds);
    const inside = sheetPoint(50, 50);
    free.place('W1', 2.5, [inside]);
    expect(free.place('W2', 2.5, [sheetPoint(130, 50), inside])).toEqual(inside);
  });

  it('offers places on every side of a spot, nearest first', () => {
    const places = placesAround(sheetPoint(0, 0), [0, 1], 4);
    const distances = places.map((at) => Math.hypot(at[0], at[1]));
    expect(distances).toEqual([...distances].sort((a, b) => a - b));
    expect(places[0]?.[1]).toBeCloseTo(4);
  });
});

describe("a cable's own label", () => {
  it('may stand on a cable, which others avoid', () => {
    const on = sheetPoint(50, 50);
    const beside = sheetPoint(50, 60);
    const free = labelPlacer(bounds);
    free.take({ leftMm: 0, rightMm: 100, topMm: 49.6, bottomMm: 50.4 }, 'cable');
    expect(free.place('W1', 2.5, [on, beside])).toEqual(beside);
    expect(free.placeOnCable('2.10 m', 2.5, [on, beside])).toEqual(on);
  });
});
